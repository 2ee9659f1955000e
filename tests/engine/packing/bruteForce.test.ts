import { expect, test } from "vitest";
import { prepareEnsemble } from "../../../engine/ensemble/prepareEnsemble.ts";
import { poolOr } from "../../../engine/library/poolOr.ts";
import { failsFromStep } from "../../../engine/odds/fails.ts";
import { runMembers } from "../../../engine/odds/odds.ts";
import type { OwnedThing } from "../../../engine/packing/ownedThing.ts";
import { type PackingPlan, packingPlan } from "../../../engine/packing/packingPlan.ts";
import * as packingReport from "../../../engine/packing/packingReport.ts";
import { makePackingMemory, type PackingAims, runPacking } from "../../../engine/packing/runPacking.ts";
import { makeReuse } from "../../../engine/run/reuse.ts";
import { applyChanges } from "../../../engine/scenario/applyChanges.ts";
import type { Change } from "../../../engine/scenario/change.ts";
import { readScenario } from "../../../engine/scenario/readScenario.ts";
import type { ScenarioInput } from "../../../engine/scenario/scenario.ts";
import { oneMapTask } from "../pool/oneEnsemble.ts";

const SEED = "4127";
const MEMBERS = 60;
/** The sky is the same for all, and takes longer to prepare than all else. */
const reuse = makeReuse(2000);

/** A day and a half at hourly steps: a bank of two blocks, a roof, and folding panels that are carried out. */
const PLAN = {
  ...(oneMapTask(0, 1).document as ScenarioInput),
  stations: [],
  obstacles: [],
  sources: [],
  gear: [{ id: "fridge", name: "Fridge", working: { drawW: 26 }, use: { when: "always" } }],
  panels: [
    {
      id: "meadow",
      name: "Folding panels",
      count: 2,
      inSeries: 2,
      module: { ratedW: 40 },
      mount: { kind: "fixed", tiltDeg: 30, azimuthDeg: 180 },
      at: { eastM: 0, northM: 0, heightM: 0.5 },
      controller: { kind: "mppt", cable: { awg: "12", oneWayM: 10 } },
    },
    {
      id: "roof",
      name: "Roof",
      count: 1,
      module: { ratedW: 30 },
      mount: { kind: "flat" },
      at: { eastM: 3, northM: 0, heightM: 2 },
    },
  ],
  bank: {
    chemistry: "lfp",
    blockAh: 30,
    inParallel: 2,
    startShare: 0.9,
    reserveShare: 0.2,
    internalResistanceOhm: 0.02,
  },
} as unknown as ScenarioInput;

const THINGS: readonly OwnedThing[] = [
  {
    id: "b30",
    kind: "battery",
    name: "Block, 30 Ah",
    count: 2,
    chemistry: "lfp",
    blockAh: 30,
    massKg: 4,
    setupMinutes: 2,
  },
  {
    id: "b20",
    kind: "battery",
    name: "Block, 20 Ah",
    count: 1,
    chemistry: "lfp",
    blockAh: 20,
    massKg: 3,
    setupMinutes: 0,
  },
  {
    id: "lead-acid",
    kind: "battery",
    name: "Old AGM",
    count: 1,
    chemistry: "agm",
    blockAh: 60,
    massKg: 20,
    setupMinutes: 3,
  },
  { id: "fold", kind: "panel", name: "Folding panel", count: 3, ratedW: 40, as: "meadow", massKg: 3, setupMinutes: 5 },
  { id: "reel", kind: "lead", name: "Reel", count: 1, lengthM: 10, awg: "12", massKg: 2 },
  { id: "thick", kind: "lead", name: "Thick lead", count: 1, lengthM: 20, mm2: 10, massKg: 5, setupMinutes: 1 },
  {
    id: "gen",
    kind: "generator",
    name: "Generator",
    count: 1,
    chargerA: 8,
    fuelL: 1,
    get: "borrow",
    cost: 20,
    massKg: 13,
    setupMinutes: 10,
  },
];

function planOf(document: ScenarioInput, things: readonly OwnedThing[] = THINGS): PackingPlan {
  const ready = packingPlan(document, [], things);
  if (!ready.ok) throw new Error(ready.problems[0]!.message);
  return ready.plan;
}

/** Members that hold with some changes: by way of a document, read from scratch, and odds' own counting. */
function heldWith(document: ScenarioInput, changes: readonly Change[]): number {
  const changed = applyChanges(document, changes);
  if (!changed.ok) throw new Error(changed.problems[0]!.message);
  const read = readScenario(changed.document);
  if (!read.ok) throw new Error(read.problems[0]!.message);
  const ready = prepareEnsemble(read.scenario, {}, SEED, reuse);
  if (!ready.ok) throw new Error(ready.problems[0]!.message);
  const { outcomes } = runMembers(ready.ensemble, 0, MEMBERS);
  return outcomes.lowestShare.filter((_, m) => failsFromStep(outcomes, m) < 0).length;
}

const NO_LIMITS = { mass: null, minutes: null, money: null };
const AIMS: PackingAims = { targetShare: 0.8, order: "mass", limits: NO_LIMITS };
/** All ask about one plan: what was counted once is met again. */
const memory = makePackingMemory();
const ask = (plan: PackingPlan, aims: PackingAims = AIMS) =>
  runPacking(plan, aims, {
    pool: poolOr(undefined),
    surroundings: {},
    seed: SEED,
    members: MEMBERS,
    memory,
  });

/** What a set takes, added up by hand from the list. */
function pricesOf(take: readonly number[]) {
  const sum = (of: (thing: OwnedThing) => number | undefined) =>
    THINGS.reduce((all, thing, t) => all + take[t]! * (of(thing) ?? 0), 0);
  return [sum((thing) => thing.massKg), sum((thing) => thing.setupMinutes), sum((thing) => thing.cost)] as const;
}

/** Every set that the list allows, put together by hand: so many of each battery of one chemistry, panels with one lead, the generator. */
function everyTake(): number[][] {
  const banks = [];
  for (let b30 = 0; b30 <= 2; b30++) for (let b20 = 0; b20 <= 1; b20++) if (b30 + b20 > 0) banks.push([b30, b20, 0]);
  banks.push([0, 0, 1]);
  const sun = [[0, 0, 0]];
  for (let panels = 1; panels <= 3; panels++) sun.push([panels, 1, 0], [panels, 0, 1]);
  return banks.flatMap((bank) => sun.flatMap((panels) => [0, 1].map((gen) => [...bank, ...panels, gen])));
}

test("every set that there is was run, and holds as often as the scenario made of it", async () => {
  const plan = planOf(PLAN);
  const { sets, all } = await ask(plan);
  const takes = sets!.map(({ take }) => take.join(" "));
  expect(takes.toSorted()).toEqual(
    everyTake()
      .map((take) => take.join(" "))
      .toSorted(),
  );
  expect(all).toBe(takes.length);
  for (const { key, take, holds, outcome } of sets!) {
    expect([take, holds!.count]).toEqual([take, heldWith(PLAN, plan.changesOf(key))]);
    expect(outcome).toBe(holds!.count >= Math.ceil(0.8 * MEMBERS) ? "reaches" : "fails");
  }
  expect(new Set(sets!.map(({ outcome }) => outcome))).toEqual(new Set(["reaches", "fails"]));
});

test("the set that is the plan holds as often as the plan, without a change to it", async () => {
  const plan = planOf(PLAN);
  const { sets } = await ask(plan);
  const same = sets!.find(({ take }) => take.join(" ") === "2 0 0 2 1 0 0")!;
  expect(plan.changesOf(same.key).filter(({ at }) => at === "bank")).toEqual([]);
  expect(same.holds!.count).toBe(heldWith(PLAN, []));
});

test("the frontier is what no reaching set beats in kg, minutes and money: every pair compared", async () => {
  const plan = planOf(PLAN);
  const { sets, frontier, proposed } = await ask(plan);
  const reaching = sets!.filter(({ outcome }) => outcome === "reaches");
  const isBeaten = (take: readonly number[]) =>
    reaching.some((other) => {
      const [a, b] = [pricesOf(other.take), pricesOf(take)];
      // The reel's minutes are not stated: a set with it beats only sets that have it too.
      if (other.take[4]! > take[4]!) return false;
      return (
        a.every((value, k) => value <= b[k]!) && (a.some((value, k) => value < b[k]!) || other.take[4]! < take[4]!)
      );
    });
  const wanted = reaching.filter(({ take }) => !isBeaten(take)).map(({ take }) => take.join(" "));
  expect(frontier.map(({ take }) => take.join(" ")).toSorted()).toEqual(wanted.toSorted());
  expect(wanted.length).toBeGreaterThan(1);
  expect(proposed).toBe(frontier[0]);
  expect(pricesOf(proposed!.take)[0]).toBe(Math.min(...frontier.map(({ take }) => pricesOf(take)[0])));
  for (const order of ["minutes", "money"] as const) {
    const found = await ask(plan, { ...AIMS, order });
    const stated = found.frontier.filter(({ totals }) => totals[order].notStated === 0);
    expect(found.proposed!.totals[order].sum).toBe(Math.min(...stated.map(({ totals }) => totals[order].sum)));
  }
});

test("within limits, nothing over them is proposed; where nothing within them is enough, what is beyond is said to be", async () => {
  const plan = planOf(PLAN);
  const free = await ask(plan);
  const limits = { mass: free.proposed!.totals.mass.sum, minutes: null, money: 0 };
  const within = await ask(plan, { ...AIMS, limits });
  for (const set of within.frontier) {
    expect(set.totals.mass.sum).toBeLessThanOrEqual(limits.mass);
    expect(set.totals.money.sum).toBe(0);
  }
  const tight = await ask(plan, { ...AIMS, limits: { mass: 3, minutes: null, money: null } });
  expect([tight.isWithin, tight.proposed!.isWithin]).toEqual([false, false]);
  expect(tight.nearest!.isWithin).toBe(true);
  const best = Math.max(...tight.sets!.filter((set) => set.isWithin).map(({ holds }) => holds!.count));
  expect(tight.nearest!.holds!.count).toBe(best);
});

test("what the proposal cannot do without is that set without the thing, all else as it is", async () => {
  const plan = planOf(PLAN);
  const { proposed, without, sets } = await ask(plan);
  expect(without.length).toBeGreaterThan(0);
  for (const { thing, holds } of without) {
    const others = sets!.find(({ take }) =>
      take.every((count, t) =>
        t === thing ? count === 0 : ["lead", "controller"].includes(THINGS[t]!.kind) || count === proposed!.take[t],
      ),
    )!;
    expect([thing, holds.count]).toEqual([thing, others.holds!.count]);
    expect(holds.count).toBeLessThan(Math.ceil(0.8 * MEMBERS));
  }
});

test("of sets that are too many to be told, the same are proposed, with some of them never run", async () => {
  const plan = planOf(PLAN);
  const whole = await ask(plan);
  // The same list with sets run only as far as it takes: what is sure to be beaten is left out.
  const found = await runAsMany(plan);
  const told = (report: typeof whole) => report.frontier.map(({ take, holds }) => [take.join(" "), holds!.count]);
  expect(told(found)).toEqual(told(whole));
  expect(found.without).toEqual(whole.without);
  expect(found.run).toBeLessThan(found.all);
  expect(found.sets).toBeNull();
  expect(found.dots.reduce((sum, { sets }) => sum + sets, 0)).toBe(found.all);
  expect(packingReport.MOST_TOLD).toBeGreaterThan(whole.all);
});

const runAsMany = (plan: PackingPlan) =>
  runPacking(
    plan,
    AIMS,
    { pool: poolOr(undefined), surroundings: {}, seed: SEED, members: MEMBERS, memory: makePackingMemory() },
    { told: 10, wave: 16 },
  );
