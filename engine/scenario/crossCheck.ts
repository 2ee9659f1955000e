import type { Problem } from "./problem.ts";
import type { Scenario } from "./scenario.ts";
import { strangePresence } from "./strangePresence.ts";
import type { TimeGrid } from "./timeGrid.ts";

/** Checks that reach from one part of the scenario to another. Each returns what it finds wrong. */
export function crossCheck(scenario: Scenario, grid: TimeGrid): Problem[] {
  return [
    ...repeatedIds(scenario),
    ...unknownStations(scenario),
    ...unknownInputs(scenario),
    ...missingConverter(scenario),
    ...buriedPanels(scenario),
    ...tooFewWords(scenario, grid),
    ...strangeDays(scenario, grid),
    ...unknownShedding(scenario),
    ...strangePresence(scenario),
  ];
}

function repeatedIds(scenario: Scenario): Problem[] {
  const lists = ["gear", "stations", "panels", "obstacles", "sources", "variants"] as const;
  const problems = lists.flatMap((list) => repeatedIn(scenario[list], list));
  // A selector names panel groups and sources in one breath, so they share one list of names.
  const shared = scenario.sources.filter(
    (source) => source.id === "solar" || scenario.panels.some((panel) => panel.id === source.id),
  );
  return [
    ...problems,
    ...shared.map((source): Problem => {
      const message = `sources.${source.id} has the id of a panel group or the word "solar"; give it another id.`;
      return { code: "repeated-id", path: ["sources", scenario.sources.indexOf(source), "id"], message };
    }),
  ];
}

function repeatedIn(items: readonly { id: string }[], list: string): Problem[] {
  return items.flatMap((item, index): Problem[] => {
    if (items.findIndex((other) => other.id === item.id) === index) return [];
    const message = `${list} has two entries with the id "${item.id}"; give one of them another id.`;
    return [{ code: "repeated-id", path: [list, index, "id"], message }];
  });
}

function unknownStations(scenario: Scenario): Problem[] {
  return scenario.gear.flatMap((gear, index): Problem[] => {
    const station = gear.use.station;
    if (station === undefined || scenario.stations.some((known) => known.id === station)) return [];
    const known = scenario.stations.map((each) => each.id).join(", ") || "none";
    const message = `gear.${gear.id}.use.station is "${station}", which is no station of this scenario (${known}); correct it or leave it out.`;
    return [{ code: "no-such-station", path: ["gear", index, "use", "station"], message }];
  });
}

function unknownInputs(scenario: Scenario): Problem[] {
  const inputs = ["solar", ...scenario.panels.map((panel) => panel.id), ...scenario.sources.map((source) => source.id)];
  return (scenario.selector.inputs ?? []).flatMap((input, index): Problem[] => {
    if (inputs.includes(input)) return [];
    const message = `selector.inputs names "${input}", which is neither a panel group nor a source (${inputs.join(", ")}); correct it.`;
    return [{ code: "no-such-input", path: ["selector", "inputs", index], message }];
  });
}

function missingConverter(scenario: Scenario): Problem[] {
  if (scenario.bank.nominalV === 12 || scenario.converter !== undefined || scenario.stations.length === 0) return [];
  const message = `bank.nominalV is ${scenario.bank.nominalV} V but the radios want 13.8 V; add a converter, such as { "outputV": 13.8 }, or use a 12 V bank.`;
  return [{ code: "no-converter", path: ["converter"], message }];
}

/** A panel's middle inside a trunk or a box means that the sketch of the site is wrong. */
function buriedPanels(scenario: Scenario): Problem[] {
  return scenario.panels.flatMap((panel, index) =>
    scenario.obstacles.flatMap((obstacle): Problem[] => {
      if (obstacle.kind === "horizon") return [];
      const east = panel.at.eastM - obstacle.eastM;
      const north = panel.at.northM - obstacle.northM;
      if (
        !(obstacle.kind === "tree"
          ? insideTrunk(obstacle, east, north, panel.at.heightM)
          : insideBox(obstacle, east, north, panel.at.heightM))
      )
        return [];
      const what = obstacle.kind === "tree" ? "the trunk of" : "the box";
      const message = `panels.${panel.id}.at puts the panel inside ${what} ${obstacle.name ?? obstacle.id}; move one of them.`;
      return [{ code: "panel-inside", path: ["panels", index, "at"], message }];
    }),
  );
}

type Tree = Extract<Scenario["obstacles"][number], { kind: "tree" }>;
type Box = Extract<Scenario["obstacles"][number], { kind: "box" }>;

function insideTrunk(tree: Tree, east: number, north: number, height: number): boolean {
  return Math.hypot(east, north) < tree.trunkRadiusM && height < (tree.crownBaseM + tree.heightM) / 2;
}

function insideBox(box: Box, east: number, north: number, height: number): boolean {
  const heading = (box.headingDeg * Math.PI) / 180;
  const along = east * Math.sin(heading) + north * Math.cos(heading);
  const across = east * Math.cos(heading) - north * Math.sin(heading);
  const within = Math.abs(along) < box.lengthM / 2 && Math.abs(across) < box.widthM / 2;
  return within && height > box.baseM && height < box.heightM;
}

function tooFewWords(scenario: Scenario, grid: TimeGrid): Problem[] {
  const { weather } = scenario;
  if (weather.kind !== "words" || weather.days.length >= grid.dates.length) return [];
  const message = `weather.days has ${weather.days.length} words but the event touches ${grid.dates.length} days (${grid.dates[0]} to ${grid.dates.at(-1)}); give one word for each.`;
  return [{ code: "too-few-days", path: ["weather", "days"], message }];
}

function strangeDays(scenario: Scenario, grid: TimeGrid): Problem[] {
  if (scenario.weather.kind === "file" && scenario.knownDays.length > 0) {
    const message =
      "knownDays is given, but the skies come from weather.file as it has them and cannot lean on a forecast; take knownDays out or take weather of another kind.";
    return [{ code: "known-days-of-file", path: ["knownDays"], message }];
  }
  return scenario.knownDays.flatMap((known, index): Problem[] => {
    const isTwice = scenario.knownDays.findIndex((other) => other.date === known.date) < index;
    if (grid.dates.includes(known.date) && !isTwice) return [];
    const wrong = isTwice
      ? "which stands there twice"
      : `no day of the event (${grid.dates[0]} to ${grid.dates.at(-1)})`;
    const message = `knownDays.${index + 1}.date is "${known.date}", ${wrong}; correct it or take it out.`;
    return [{ code: "strange-day", path: ["knownDays", index, "date"], message }];
  });
}

function unknownShedding(scenario: Scenario): Problem[] {
  const known = [...scenario.gear, ...scenario.stations].map((each) => each.id);
  return scenario.shedding.flatMap((name, index): Problem[] => {
    const isTwice = scenario.shedding.indexOf(name) < index;
    if (known.includes(name) && !isTwice) return [];
    const wrong = isTwice ? "twice" : `, which is neither gear nor a station (${known.join(", ") || "there are none"})`;
    const message = `shedding names "${name}"${isTwice ? " " : ""}${wrong}; correct it or take it out.`;
    return [{ code: "strange-shedding", path: ["shedding", index], message }];
  });
}
