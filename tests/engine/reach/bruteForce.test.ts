import { expect, test } from "vitest";
import { prepareEnsemble } from "../../../engine/ensemble/prepareEnsemble.ts";
import { poolOr } from "../../../engine/library/poolOr.ts";
import { failsFromStep } from "../../../engine/odds/fails.ts";
import { runMembers } from "../../../engine/odds/odds.ts";
import { goTogether, type Lever } from "../../../engine/reach/lever.ts";
import { type ReachPlan, reachPlan } from "../../../engine/reach/reachPlan.ts";
import type { ReachReport, ReachWay } from "../../../engine/reach/reachReport.ts";
import { makeReachMemory, runReach } from "../../../engine/reach/runReach.ts";
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

/** A day and a half at hourly steps, with few levers, so that everything can be run: a bank, a panel, a lamp, a fridge. */
const PLAN = {
  ...(oneMapTask(0, 1).document as ScenarioInput),
  stations: [],
  obstacles: [],
  sources: [],
  gear: [
    { id: "fridge", name: "Fridge", working: { drawW: 12 }, use: { when: "always" } },
    { id: "lamp", name: "Lamp", working: { drawW: 8 }, use: { when: "afterDark" } },
    { id: "router", name: "Router", working: { drawW: 6 }, use: { when: "always" } },
  ],
  panels: [
    {
      id: "field",
      name: "Field panels",
      count: 1,
      module: { ratedW: 40 },
      mount: { kind: "fixed", tiltDeg: 30, azimuthDeg: 180 },
      at: { eastM: 0, northM: 0, heightM: 0.5 },
    },
  ],
  bank: { chemistry: "lfp", blockAh: 30, startShare: 0.9, reserveShare: 0.2, bring: { cost: 200, massKg: 3 } },
} as unknown as ScenarioInput;

function planOf(document: ScenarioInput): ReachPlan {
  const ready = reachPlan(document);
  if (!ready.ok) throw new Error(ready.problems[0]!.message);
  return ready.plan;
}

/** Members that hold with some changes: by way of a document, read from scratch, and odds' own counting. */
function heldWith(document: ScenarioInput, changes: readonly Change[], members = MEMBERS): number {
  const changed = applyChanges(document, changes);
  if (!changed.ok) throw new Error(changed.problems[0]!.message);
  const read = readScenario(changed.document);
  if (!read.ok) throw new Error(read.problems[0]!.message);
  const ready = prepareEnsemble(read.scenario, {}, SEED, reuse);
  if (!ready.ok) throw new Error(ready.problems[0]!.message);
  const { outcomes } = runMembers(ready.ensemble, 0, members);
  return outcomes.lowestShare.filter((_, m) => failsFromStep(outcomes, m) < 0).length;
}

const ask = (plan: ReachPlan, targetShare: number, locked: readonly string[] = [], members = MEMBERS) =>
  runReach(
    plan,
    { targetShare, order: "money", locked },
    { pool: poolOr(undefined), surroundings: {}, seed: SEED, members, memory: makeReachMemory() },
  );

const changesOf = (lever: Lever, amount: number) => (amount === 0 ? [] : lever.amounts[amount - 1]!.changes);

/** Held with every amount of every lever, 0 first. */
function everyAmount(plan: ReachPlan): Map<string, number[]> {
  return new Map(
    plan.levers.map((lever) => [
      lever.id,
      [0, ...lever.amounts.keys()].map((_, amount) => heldWith(plan.document, changesOf(lever, amount))),
    ]),
  );
}

test("each lever's smallest amount is the first that reaches it, and the next smaller does not: every amount run", async () => {
  const plan = planOf(PLAN);
  const report = await ask(plan, 0.9);
  expect(report.reaches).toBe(false);
  const every = everyAmount(plan);
  const need = Math.ceil(0.9 * MEMBERS);
  let reaching = 0;
  for (const lever of plan.levers) {
    const held = every.get(lever.id)!;
    const first = held.findIndex((count) => count >= need);
    const row = report.alone.find(({ id }) => id === lever.id);
    if (first < 0) {
      const most = Math.max(...held.slice(1));
      // A lever that gains nothing has nothing to tell.
      if (most <= held[0]!) expect([lever.id, row]).toEqual([lever.id, undefined]);
      else expect([lever.id, row?.reaches, row?.holds.count]).toEqual([lever.id, false, most]);
      continue;
    }
    reaching++;
    expect([lever.id, row?.reaches, row?.words, row?.holds.count, row?.next.holds.count]).toEqual([
      lever.id,
      true,
      lever.amounts[first - 1]!.words,
      held[first],
      held[first - 1],
    ]);
    expect(row!.next.holds.count).toBeLessThan(need);
  }
  expect(reaching).toBeGreaterThan(2);
  expect(report.alone.some(({ reaches }) => !reaches)).toBe(true);
});

/** How far each lever may be pulled in a way of several: below what it takes alone. */
function usable(plan: ReachPlan, every: Map<string, number[]>, need: number, free: readonly string[]) {
  return plan.levers.flatMap((lever) => {
    const held = every.get(lever.id)!;
    const first = held.findIndex((count) => count >= need);
    const most = first < 0 ? lever.amounts.length : first - 1;
    return free.includes(lever.id) && most > 0 && held[most]! > held[0]! ? [{ lever, most }] : [];
  });
}

const FREE = ["bank", "panels-field", "home-fridge", "home-lamp", "home-router", "clock-fridge"];

function lockedBut(plan: ReachPlan, free: readonly string[]): string[] {
  return plan.levers.map(({ id }) => id).filter((id) => !free.includes(id));
}

interface Picked {
  readonly lever: Lever;
  readonly amount: number;
}

const amountsOf = (way: ReachWay, plan: ReachPlan): Picked[] =>
  way.parts.map(({ id, words }) => {
    const lever = plan.levers.find((each) => each.id === id)!;
    return { lever, amount: lever.amounts.findIndex((amount) => amount.words === words) + 1 };
  });

test("the pairs are those that reach it, none of whose levers can be one amount smaller: every combination run", async () => {
  const plan = planOf(PLAN);
  const target = 0.9;
  const need = Math.ceil(target * MEMBERS);
  const report = await ask(plan, target, lockedBut(plan, FREE));
  const open = usable(plan, everyAmount(plan), need, FREE);
  const reached = new Map<string, Map<string, number>>();
  for (const [i, one] of open.entries()) {
    for (const other of open.slice(i + 1)) {
      if (!goTogether(one.lever, other.lever)) continue;
      const found = new Map<string, number>();
      for (let a = 1; a <= one.most; a++) {
        for (let b = 1; b <= other.most; b++) {
          const changes = [...changesOf(one.lever, a), ...changesOf(other.lever, b)];
          found.set(`${a} ${b}`, heldWith(PLAN, changes));
        }
      }
      if ([...found.values()].some((count) => count >= need)) reached.set(`${one.lever.id} + ${other.lever.id}`, found);
    }
  }
  const told = report.pairs.map(({ parts }) => parts.map(({ id }) => id).join(" + "));
  expect(reached.size).toBeGreaterThan(3);
  expect(told).toHaveLength(Math.min(6, reached.size));
  for (const name of told) expect([...reached.keys()]).toContain(name);
  if (reached.size <= 6) expect([...told].sort()).toEqual([...reached.keys()].sort());
  for (const way of report.pairs) {
    const [one, other] = amountsOf(way, plan) as [Picked, Picked];
    const found = reached.get(way.parts.map(({ id }) => id).join(" + "))!;
    const at = (a: number, b: number) => found.get(`${a} ${b}`) ?? 0;
    expect(way.holds.count).toBe(at(one.amount, other.amount));
    expect(way.holds.count).toBeGreaterThanOrEqual(need);
    expect(at(one.amount - 1, other.amount)).toBeLessThan(need);
    expect(at(one.amount, other.amount - 1)).toBeLessThan(need);
  }
});

test("threes are told where no two of them do it, and none can be one amount smaller", async () => {
  const free = ["clock-fridge", "home-lamp", "home-router", "panels-field"];
  const panels = PLAN.panels!.map((group) => ({ ...group, module: { ratedW: 60 } }));
  const document = { ...PLAN, panels, bank: { ...PLAN.bank, blockAh: 20 } } as ScenarioInput;
  const plan = planOf(document);
  const report = await ask(plan, 0.95, lockedBut(plan, free));
  const need = Math.ceil(0.95 * MEMBERS);
  const open = usable(plan, new Map(plan.levers.map((lever) => [lever.id, heldEach(document, lever)])), need, free);
  const all = (picked: readonly { lever: Lever; amount: number }[]) =>
    heldWith(
      document,
      picked.flatMap(({ lever, amount }) => changesOf(lever, amount)),
    );
  const wanted: string[] = [];
  for (const [i, a] of open.entries())
    for (const [j, b] of open.slice(i + 1).entries())
      for (const c of open.slice(i + j + 2)) {
        const top = [a, b, c].map(({ lever, most }) => ({ lever, amount: most }));
        const isPair = top.some((one) => all(top.filter((other) => other !== one)) >= need);
        if (!isPair && all(top) >= need) wanted.push(top.map(({ lever }) => lever.id).join(" + "));
      }
  expect(wanted.length).toBeGreaterThan(0);
  expect(report.threes.map(({ parts }) => parts.map(({ id }) => id).join(" + ")).sort()).toEqual(wanted.sort());
  for (const way of report.threes) {
    const picked = amountsOf(way, plan);
    expect(way.holds.count).toBe(all(picked));
    for (const one of picked) {
      const less = picked.map((each) => (each === one ? { ...each, amount: each.amount - 1 } : each));
      expect(all(less)).toBeLessThan(need);
    }
  }
});

const heldEach = (document: ScenarioInput, lever: Lever) =>
  [0, ...lever.amounts.keys()].map((_, amount) => heldWith(document, changesOf(lever, amount)));

test("what can stay at home is as much as can, and one further may not", async () => {
  const document = { ...PLAN, bank: { ...PLAN.bank, blockAh: 75 } } as ScenarioInput;
  const plan = planOf(document);
  const report = await ask(plan, 0.9);
  const need = Math.ceil(0.9 * MEMBERS);
  expect(report.reaches).toBe(true);
  expect([report.alone, report.pairs, report.threes]).toEqual([[], [], []]);
  expect(report.spare.map(({ id }) => id).sort()).toEqual(plan.spares.map(({ id }) => id).sort());
  for (const lever of plan.spares) {
    const held = heldEach(document, lever);
    const kept = held.findIndex((count) => count < need) - 1;
    const row = report.spare.find(({ id }) => id === lever.id)!;
    if (kept === 0) expect([lever.id, row.reaches, row.holds.count]).toEqual([lever.id, false, held[1]]);
    else if (kept > 0)
      expect([lever.id, row.reaches, row.holds.count, row.next.holds.count]).toEqual([
        lever.id,
        true,
        held[kept],
        held[kept + 1],
      ]);
    else expect([lever.id, row.reaches, row.holds.count]).toEqual([lever.id, true, held.at(-1)]);
  }
});

test("with more members than the first look has, each row still holds as often as it says and the next smaller too seldom", async () => {
  const plan = planOf(PLAN);
  const members = 240;
  const report: ReachReport = await ask(plan, 0.9, lockedBut(plan, FREE), members);
  const need = Math.ceil(0.9 * members);
  for (const row of report.alone)
    expect([row.id, heldWith(PLAN, row.changes, members)]).toEqual([row.id, row.holds.count]);
  for (const row of report.alone.filter(({ reaches }) => reaches)) expect(row.next.holds.count).toBeLessThan(need);
  expect(report.pairs.length).toBeGreaterThan(0);
  for (const way of report.pairs) {
    expect(heldWith(PLAN, way.changes, members)).toBe(way.holds.count);
    for (const { lever, amount } of amountsOf(way, plan)) {
      const less = amountsOf(way, plan).flatMap((each) =>
        changesOf(each.lever, each.lever === lever ? amount - 1 : each.amount),
      );
      expect(heldWith(PLAN, less, members)).toBeLessThan(need);
    }
  }
});

test("a locked lever is told by itself and goes into nothing else", async () => {
  const plan = planOf(PLAN);
  const free = await ask(plan, 0.9, lockedBut(plan, FREE));
  const used = free.pairs[0]!.parts[0]!.id;
  const locked = await ask(plan, 0.9, [...lockedBut(plan, FREE), used]);
  expect(locked.alone.map(({ id, holds }) => [id, holds.count])).toEqual(
    free.alone.map(({ id, holds }) => [id, holds.count]),
  );
  expect(locked.alone.find(({ id }) => id === used)!.isLocked).toBe(true);
  expect(locked.pairs.flatMap(({ parts }) => parts.map(({ id }) => id))).not.toContain(used);
});
