import { expect, test } from "vitest";
import { ledger } from "../../../engine/run/ledger.ts";
import { trace } from "../../../engine/run/trace.ts";
import { eventLeafShare } from "../../../engine/scenario/leafShareOf.ts";
import { readScenario, readVariant } from "../../../engine/scenario/readScenario.ts";
import { COMMON_GEAR } from "../../../engine/start/commonGear.ts";
import {
  BACKUP,
  CHEMISTRY,
  CONTROLLERS,
  defaultAnswers,
  HOURS,
  KEENNESS,
  MODES,
  PLACING,
  RADIOS,
  SHADE,
  type StartAnswers,
  startScenario,
} from "../../../engine/start/startScenario.ts";
import { notebookOf } from "../../../explorer/start/notebookOf.ts";

const FIRST = defaultAnswers("2026-10-05");

const problemsOf = (answers: StartAnswers) => {
  const result = readScenario(startScenario(answers));
  return result.ok ? [] : result.problems.map((problem) => problem.message);
};

const CHOICES = {
  radio: Object.keys(RADIOS),
  mode: Object.keys(MODES),
  hours: Object.keys(HOURS),
  keenness: Object.keys(KEENNESS),
  placing: Object.keys(PLACING),
  controller: Object.keys(CONTROLLERS),
  backup: Object.keys(BACKUP),
  chemistry: Object.keys(CHEMISTRY),
  shade: Object.keys(SHADE),
  stations: [0, 1, 10],
  panels: [0, 20],
  latitudeDeg: [-62, -34, 47],
};

/** Every combination of some of the choices, the rest as they were. */
function combinations(keys: readonly (keyof typeof CHOICES)[]): StartAnswers[] {
  return keys.reduce<StartAnswers[]>(
    (made, key) =>
      made.flatMap((answers) => CHOICES[key].map((value) => ({ ...answers, [key]: value }) as StartAnswers)),
    [FIRST],
  );
}

test("the first answers are next weekend's, and read as they are", () => {
  expect(FIRST.start).toBe("2026-10-09T14:00");
  expect(FIRST.end).toBe("2026-10-11T14:00");
  expect(defaultAnswers("2026-10-09").start).toBe("2026-10-16T14:00");
  expect(problemsOf(FIRST)).toEqual([]);
});

// No question's answer reaches into another's part of the scenario but through these groups: who operates, what charges, and where.
test.each<[string, (keyof typeof CHOICES)[]]>([
  ["who operates", ["radio", "mode", "hours", "keenness", "stations"]],
  ["what charges", ["placing", "controller", "backup", "chemistry", "panels", "shade"]],
  ["where and under what", ["latitudeDeg", "placing", "shade", "panels", "stations"]],
])("every combination of choices reads: %s", (_, keys) => {
  const all = combinations(keys);
  expect(all.length).toBeGreaterThan(100);
  for (const answers of all) expect(problemsOf(answers), JSON.stringify(answers)).toEqual([]);
});

test("every common load reads, alone and all together", () => {
  for (const { gear } of COMMON_GEAR) expect(problemsOf({ ...FIRST, gear: { [gear.id]: 3 } })).toEqual([]);
  expect(problemsOf({ ...FIRST, gear: Object.fromEntries(COMMON_GEAR.map(({ gear }) => [gear.id, 20])) })).toEqual([]);
});

test("the ends of every field read", () => {
  const ends = {
    latitudeDeg: [-90, 90],
    longitudeDeg: [-180, 180],
    elevationM: [-450, 6000],
    transmitW: [0.1, 100],
    panelW: [5, 600],
    blockAh: [5, 600],
    blocks: [1, 8],
  };
  for (const [key, values] of Object.entries(ends)) {
    for (const value of values) expect(problemsOf({ ...FIRST, [key]: value }), `${key} ${value}`).toEqual([]);
  }
  expect(problemsOf({ ...FIRST, end: "2026-12-07T14:00", latitudeDeg: -70 })).toEqual([]);
});

test("answers mean what they say", () => {
  const south = startScenario({
    ...FIRST,
    latitudeDeg: -34,
    shade: "some",
    start: "2026-07-10T12:00",
    end: "2026-07-12T12:00",
  });
  expect(south.panels![0]!.mount).toEqual({ kind: "fixed", tiltDeg: 34, azimuthDeg: 0 });
  // The tree that stands towards the noon sun stands north there; its leaf follows the plan's own date, and in July it is bare.
  const [, noon] = south.obstacles!;
  expect(noon).toMatchObject({ kind: "tree", northM: 16 });
  expect(noon).not.toHaveProperty("leafShare");
  expect(eventLeafShare({ place: { latitudeDeg: -34 }, time: south.time } as never)).toBe(0);
  expect(startScenario({ ...FIRST, transmitW: 100, radio: "hf10" }).stations![0]!.transmitW).toBe(10);
  expect(startScenario({ ...FIRST, radio: "fm50" }).stations![0]!.modes).toEqual([{ mode: "fm", share: 1 }]);
  expect(startScenario({ ...FIRST, chemistry: "agm" }).bank.reserveShare).toBe(0.5);
  expect(startScenario({ ...FIRST, latitudeDeg: -62 }).weather.kind).toBe("words");
});

test("what was measured goes before what is usual, in gear and in radios", () => {
  const measured = [
    { gear: "fridge", working: 3.6 },
    { gear: "hf-100", idle: 1.5 },
  ];
  const { gear, stations } = startScenario({ ...FIRST, gear: { fridge: 1 } }, measured);
  expect(gear).toMatchObject([{ id: "fridge", count: 1, working: { drawA: 3.6, atV: 13.8 } }]);
  expect(stations![0]!.radio).toMatchObject({ receive: { drawA: 1.5 }, fullPower: { drawA: 20 }, bias: { drawA: 3 } });
});

test("a new notebook opens on the decisions: does it hold, the extra panels, what it takes, the bank's size, and the site where there are trees", () => {
  const entriesOf = (answers: StartAnswers) => notebookOf(startScenario(answers), "probe").entries;
  const open = entriesOf(FIRST).map(({ kind }) => kind);
  expect(open.slice(0, 4)).toEqual(["forecast", "versus", "reach", "sizing"]);
  expect(open).not.toContain("shade");
  const under = entriesOf({ ...FIRST, shade: "under" });
  expect(under.map(({ kind }) => kind).slice(0, 5)).toEqual(["forecast", "versus", "reach", "sizing", "shade"]);
  expect(under.find(({ kind }) => kind === "versus")!.doc).toEqual({ scenarios: ["plan", "folding"] });
});

test.each([
  ["under trees", 47, "under"],
  ["under trees in the south", -34, "under"],
  ["with some trees", 55, "some"],
] as const)("the folding pair stands in the sun: %s", (_, latitudeDeg, shade) => {
  const document = startScenario({ ...FIRST, latitudeDeg, shade });
  const sunny = { ...document, weather: { kind: "clear" as const, air: { maxC: 20, minC: 10 } } };
  const read = readVariant(sunny, "folding");
  if (!read.ok) throw new Error(read.problems[0]!.message);
  const ran = trace(read.scenario);
  if (!ran.ok) throw new Error(ran.problems[0]!.message);
  const { harvest } = ledger(ran.trace);
  const share = (id: string) => {
    const line = harvest.find((each) => each.id === id)!;
    return line.shadeLossWh / line.unshadedWh;
  };
  expect(share("folding")).toBeLessThan(0.1);
  expect(share("panels")).toBeGreaterThan(share("folding"));
});
