import { readFileSync } from "node:fs";
import { expect, test } from "vitest";
import { fieldLabel } from "../../../engine/fields/fieldWords.ts";
import { changeAdd, changeAway, changeTo, valueAt } from "../../../engine/fields/formPath.ts";
import { formSchema, type SchemaNode } from "../../../engine/fields/formSchema.ts";
import { formGroups } from "../../../engine/fields/groups.ts";
import { applyChanges } from "../../../engine/scenario/applyChanges.ts";
import type { Change } from "../../../engine/scenario/change.ts";
import { readScenario } from "../../../engine/scenario/readScenario.ts";
import type { ScenarioInput } from "../../../engine/scenario/scenario.ts";
import { copyOfItem, newItem } from "../../../explorer/entries/scenario/newItem.ts";
import { referenceChanges } from "../../../explorer/entries/scenario/references.ts";
import { scalePlace } from "../../../explorer/entries/scenario/scalePlace.ts";
import { switchKind } from "../../../explorer/entries/scenario/switchKind.ts";
import { usualValues } from "../../../explorer/entries/scenario/usualValues.ts";
import { likelyMeant } from "../../../explorer/parts/likelyMeant.ts";
import { arrowStep, typedQuantity } from "../../../explorer/parts/typedQuantity.ts";
import { wrongInWords } from "../../../explorer/parts/wrongInWords.ts";

const read = (name: string) => JSON.parse(readFileSync(`scenarios/${name}.json`, "utf8")) as ScenarioInput;
const grove = read("walnut-grove");
const hut = read("polar-hut");

function filled(document: ScenarioInput): object {
  const result = readScenario(document);
  if (!result.ok) throw new Error(result.problems[0]!.message);
  return usualValues(result.scenario);
}

function changed(document: ScenarioInput, changes: (Change | null)[]): ScenarioInput {
  const applied = applyChanges(
    document,
    changes.filter((change) => change !== null),
  );
  if (!applied.ok) throw new Error(applied.problems[0]!.message);
  return applied.document as ScenarioInput;
}

const problemsOf = (document: ScenarioInput) => {
  const result = readScenario(document);
  return result.ok ? [] : result.problems.map((problem) => problem.message);
};

test("every field of the format is in a group, whether anybody has named it or not", () => {
  const keys = formGroups().flatMap((group) => group.keys);
  expect([...keys].sort()).toEqual(Object.keys(formSchema().properties!).sort());
  expect(new Set(keys).size).toBe(keys.length);
});

test("every field of the format has a name of its own on the page", () => {
  const unnamed: string[] = [];
  const visit = (node: SchemaNode, where: string) => {
    for (const [key, inner] of Object.entries(node.properties ?? {})) {
      const at = where === "" ? key : `${where}.${key}`;
      if (
        /[A-Z]/.test(
          fieldLabel(at)
            .slice(1)
            .replace(/AWG|SSB|DC|V\b|FM/g, ""),
        ) &&
        /[a-z][A-Z]/.test(fieldLabel(at))
      )
        unnamed.push(at);
      visit(inner, at);
    }
    for (const option of node.oneOf ?? []) visit(option, where);
    if (node.items !== undefined) visit(node.items, `${where}[]`);
  };
  visit(formSchema(), "");
  expect(unnamed).toEqual([]);
  expect(fieldLabel("gear[].maxSomethingA")).toBe("Max something");
});

test("a change names things by their id and leaves the rest of the document alone", () => {
  expect(changeTo(grove, ["stations", 0, "transmitW"], 100, null)).toEqual({
    at: "stations.hf-run.transmitW",
    to: 100,
  });
  expect(changeTo(grove, ["stations", 0, "modes", 1, "share"], 0.2, null)).toEqual({
    at: "stations.hf-run.modes.1.share",
    to: 0.2,
  });
  expect(changeAway(grove, ["gear", 3])).toEqual({ at: "gear.fridge", remove: true });
  expect(changeAway(grove, ["gear", 99])).toBeNull();
});

test("two entries of one name are told apart by their place in the list", () => {
  const twins = changed(grove, [{ at: "gear.fridge.id", to: "router" }]);
  const fixed = changed(twins, [changeTo(twins, ["gear", 3, "id"], "fridge", null)]);
  expect(fixed).toEqual(grove);
});

test("a field in a part that is left out brings what the part cannot do without", () => {
  const { feed, ...station } = grove.stations![0]!;
  const bare = { ...grove, stations: [station] } as ScenarioInput;
  const after = changed(bare, [changeTo(bare, ["stations", 0, "feed", "contactsOhm"], 0.02, filled(bare))]);
  expect(after.stations![0]!.feed).toEqual({ contactsOhm: 0.02 }); // a lead can be left out
  expect(problemsOf(after)).toEqual([]);
  const sure = changed(grove, [changeTo(grove, ["sureness", "canopy"], "measured", filled(grove))]);
  expect(sure.sureness).toEqual({ canopy: "measured" });
});

test("a list that only stands there filled in is written out when it is changed", () => {
  const path = ["panels", 0, "losses"];
  const one = changed(grove, [changeTo(grove, [...path, 0, "share"], 0.05, filled(grove))]);
  expect(one.panels![0]!.losses).toHaveLength(5);
  expect(one.panels![0]!.losses![0]).toEqual({ name: "soiling", share: 0.05 });
  const more = changed(grove, [changeAdd(grove, path, { name: "pollen", share: 0.01 }, filled(grove))]);
  expect(more.panels![0]!.losses).toHaveLength(6);
  expect(problemsOf(more)).toEqual([]);
});

test.each(["gear", "stations", "panels", "variants", "knownDays"])(
  "what is added to %s reads at once, twice over",
  (key) => {
    let document = grove;
    for (let n = 0; n < 2; n++) {
      const list = (valueAt(document, [key]) ?? []) as unknown[];
      const item = newItem(document, key, formSchema().properties![key]!, list);
      document = changed(document, [changeAdd(document, [key], item, filled(document))]);
      expect(problemsOf(document)).toEqual([]);
    }
  },
);

test.each([
  ["sources", "mains"],
  ["sources", "generator"],
  ["sources", "vehicle"],
  ["obstacles", "tree"],
  ["obstacles", "box"],
  ["obstacles", "horizon"],
])("what is added to %s as %s reads at once", (key, kind) => {
  const list = (valueAt(grove, [key]) ?? []) as unknown[];
  const item = newItem(grove, key, formSchema().properties![key]!, list, kind);
  expect(problemsOf(changed(grove, [changeAdd(grove, [key], item, filled(grove))]))).toEqual([]);
});

test.each(["gear", "stations", "panels", "obstacles"])("a copy of what is in %s reads at once", (key) => {
  const list = valueAt(grove, [key]) as unknown[];
  const copy = copyOfItem(grove, key, list, list[0]);
  expect(problemsOf(changed(grove, [changeAdd(grove, [key], copy, filled(grove))]))).toEqual([]);
});

test("stretches of the clock follow one another", () => {
  const node = formSchema().properties!.gear!;
  expect(newItem(grove, "staffed", node, [])).toEqual({ from: "09:00", to: "22:00" });
  expect(newItem(grove, "staffed", node, [{ from: "09:00", to: "12:00" }])).toEqual({ from: "13:00", to: "14:00" });
});

test("each kind turns into each other kind and reads", () => {
  const cases: [ScenarioInput, (string | number)[]][] = [
    [grove, ["panels", 0, "mount"]],
    [grove, ["obstacles", 0]],
    [hut, ["sources", 0]],
    [grove, ["weather"]],
  ];
  for (const [document, path] of cases) {
    const node = path.reduce<SchemaNode>(
      (at, key) => (typeof key === "number" ? at.items! : at.properties![key]!),
      formSchema(),
    );
    const kinds = node.oneOf!.map((option) => String(option.properties!.kind!.const));
    for (const from of kinds) {
      for (const to of kinds) {
        const first = switchKind(node, valueAt(document, path), from, 4);
        const then = switchKind(node, first, to, 4);
        const after = changed(document, [changeTo(document, path, then, filled(document))]);
        expect(problemsOf(after), `${from} → ${to}`).toEqual([]);
      }
    }
  }
});

test("what fits another kind is kept", () => {
  const node = formSchema().properties!.sources!.items!;
  const vehicle = switchKind(node, hut.sources![0], "vehicle");
  expect(vehicle).toMatchObject({
    kind: "vehicle",
    id: "generator",
    outputA: 40,
    running: [
      { from: "10:00", to: "13:00" },
      { from: "16:00", to: "19:00" },
    ],
  });
  const sky = switchKind(formSchema().properties!.weather!, hut.weather, "typical");
  expect(sky).toEqual({ kind: "typical", air: hut.weather.air, linkeTurbidity: 2, windMs: 2 });
});

test("what names a thing follows when it is renamed, and lets go when it is taken out", () => {
  const document = changed(grove, [
    { at: "shedding", to: ["vhf", "fridge"] },
    { at: "gear.logger.use.station", to: "vhf" },
  ]);
  const renamed = changed(document, [
    ...referenceChanges(document, "stations", "vhf", "talk"),
    { at: "stations.vhf.id", to: "talk" },
  ]);
  expect(renamed.shedding).toEqual(["talk", "fridge"]);
  expect(problemsOf(renamed)).toEqual([]);
  const gone = changed(document, [
    { at: "stations.vhf", remove: true },
    ...referenceChanges(document, "stations", "vhf", null),
  ]);
  expect(problemsOf(gone)).toEqual([]);
  const data = changed(grove, [
    ...referenceChanges(grove, "stations", "hf-data", "digi"),
    { at: "stations.hf-data.id", to: "digi" },
  ]);
  expect(data.variants!.find((each) => each.id === "one-station")!.changes[0]!.at).toBe("stations.digi");
});

const facts = (low: number, high: number, typical?: [number, number]) => ({
  unit: "W",
  low,
  high,
  what: "it",
  ...(typical === undefined ? {} : { typical }),
});

test.each([
  ["a lost point, near what stood there", 122, facts(0, 100), 12.2, 12.2],
  ["kilowatts for watts", 0.9, facts(100, 20_000, [800, 1800]), 800, 900],
  ["a sign", -15, facts(0, 90), 20, 15],
  ["nothing near what stood there", 5000, facts(0, 100), 0.5, null],
  ["the usual, where nothing stood", 2000, facts(1, 800, [50, 400]), null, 200],
  ["in range already", 50, facts(0, 100), 5, null],
  ["no number", Number.NaN, facts(0, 100), 5, null],
])("%s", (_, value, limits, usual, meant) => {
  expect(likelyMeant(value, limits, usual)).toBe(meant);
});

test.each([
  ["280", "Ah", 280],
  ["27,5", "W", 27.5],
  ["100 W", "W", 100],
  ["1.5 kW", "W", 1500],
  ["−3", "°C", -3],
  ["1\u202f280", "Ah", 1280],
  ["a lot", "W", "a lot"],
  ["10 Ah", "W", "10 Ah"],
])("%s in a field for %s", (text, unit, value) => {
  expect(typedQuantity(text, unit)).toBe(value);
});

test("an arrow key moves a number by a step of its size", () => {
  const w = { unit: "W", low: 0, high: 1500 };
  expect(arrowStep(100, w, false)).toBe(10);
  expect(arrowStep(50, w, false)).toBe(5);
  expect(arrowStep(12, w, false)).toBe(1);
  expect(arrowStep(4, w, true)).toBe(1);
});

test("the scale runs from end to end, and gives the usual some room", () => {
  expect(scalePlace(0, 100, 20).at(50)).toBe(0.5);
  expect(scalePlace(0, 100, undefined).at(200)).toBe(1);
  const wide = scalePlace(1, 3000, 300);
  expect(wide.at(1)).toBe(0);
  expect(wide.at(3000)).toBe(1);
  expect(wide.at(300)).toBeGreaterThan(0.35);
});

test("a wrong value is said in the words of the page", () => {
  const wrong = changed(grove, [{ at: "stations.hf-run.sendingShare", to: 1.22 }]);
  const result = readScenario(wrong);
  if (result.ok) throw new Error("1.22 is no share");
  const node = formSchema().properties!.stations!.items!.properties!.sendingShare!;
  expect(wrongInWords(result.problems[0]!, 1.22, node, 0.122)).toEqual({
    sentence: "A share here stops at 100\u202f%. Did you mean 12.2\u202f%?",
    meant: 0.122,
  });
  const strong = readScenario(changed(grove, [{ at: "stations.hf-run.transmitW", to: 150 }]));
  if (strong.ok) throw new Error("the radio has 100 W");
  expect(wrongInWords(strong.problems[0]!, 150, undefined, 50).sentence).toBe(
    "150 W is more than the radio's 100 W; turn it down or change “Radio, full power”.",
  );
});
