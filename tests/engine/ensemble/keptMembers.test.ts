import { describe, expect, test } from "vitest";
import { makeKeptMembers } from "../../../engine/ensemble/keptMembers.ts";
import { makeMemberRoom } from "../../../engine/ensemble/makeMemberRoom.ts";
import { prepareEnsemble } from "../../../engine/ensemble/prepareEnsemble.ts";
import { runMembers } from "../../../engine/odds/odds.ts";
import { loadClimateTables } from "../../../engine/place/loadClimateTables.ts";
import { runTask } from "../../../engine/pool/task.ts";
import { makeReuse } from "../../../engine/run/reuse.ts";
import { runRecord } from "../../../engine/run/runRecord.ts";
import { readScenario } from "../../../engine/scenario/readScenario.ts";
import type { Scenario, ScenarioInput } from "../../../engine/scenario/scenario.ts";
import { makeTaskStore } from "../../../engine/task/taskStore.ts";
import { pairedCharge } from "../../../engine/versus/pairedCharge.ts";
import { benchScenario } from "../../bench/benchScenario.ts";
import { bitsOf } from "../../bitsOf.ts";
import { wholeOdds } from "../pool/wholeOdds.ts";

const surroundings = { climate: await loadClimateTables() };
const hooks = { progress: () => {}, pause: () => Promise.resolve(), isCancelled: () => false };

const base: ScenarioInput = { ...benchScenario, weather: { kind: "typical" } };
const [pwm, , ...others] = base.panels!;
const changes: Record<string, Partial<ScenarioInput>> = {
  nothing: {},
  "a bank of twice the ampere-hours": { bank: { ...base.bank, blockAh: 400 } },
  "a bank at 24 V": { bank: { ...base.bank, nominalV: 24 }, converter: { outputV: 13.8, efficiencyShare: 0.9 } },
  "a bank charged to more volts": { bank: { ...base.bank, absorptionV: 14.9 } },
  "a bank of lead": { bank: { ...base.bank, chemistry: "agm" } },
  "a start less sure": { sureness: { startCharge: "guess" } },
  "a yield less sure": { sureness: { panelYield: "guess" } },
  "an idle draw less sure": { sureness: { idleDraw: "guess" } },
  "crowns better known": { sureness: { canopy: "measured" } },
  "no crowns": { obstacles: [] },
  "one group less": { panels: base.panels!.slice(1) },
  "a group that depends on the bank's volts": {
    panels: [{ ...pwm!, controller: { kind: "pwm", maxChargeA: 20 } }, ...others],
  },
  "a converter": { converter: { efficiencyShare: 0.9 } },
  "another station": { stations: base.stations!.slice(1) },
  "keener operators": { operators: { betweenEventsShare: 0.6 } },
  "another load": { gear: [{ id: "light", name: "light", working: { drawW: 30 }, use: { when: "always" } }] },
  "other days": { time: { ...base.time, start: "2026-06-12T00:00" } },
  "known days": { knownDays: [{ date: "2026-06-12", sky: "clear" }] },
  "one input at a time": {
    sources: [
      {
        kind: "generator",
        id: "g",
        name: "g",
        continuousW: 900,
        chargerA: 40,
        allowed: [{ from: "10:00", to: "13:00" }],
        startShare: 0.5,
        stopShare: 0.9,
        burnIdleLPerH: 0.2,
        burnFullLPerH: 0.6,
        fuelL: 5,
      },
    ],
    selector: { mode: "either" },
  },
};

function scenarioWith(change: Partial<ScenarioInput>): Scenario {
  const read = readScenario({ ...base, ...change });
  if (!read.ok) throw new Error(read.problems[0]!.message);
  return read.scenario;
}

function ensembleWith(change: Partial<ScenarioInput>, seed = "kept") {
  const ready = prepareEnsemble(scenarioWith(change), surroundings, seed);
  if (!ready.ok) throw new Error(ready.problems[0]!.message);
  return ready.ensemble;
}

const TO = 9;
const plain = new Map(Object.entries(changes).map(([name, change]) => [name, runMembers(ensembleWith(change), 0, TO)]));

async function oddsOf(change: Partial<ScenarioInput>, store: ReturnType<typeof makeTaskStore>, seed = "kept") {
  const task = { kind: "odds", scenario: scenarioWith(change), surroundings, seed, from: 0, to: TO } as const;
  return runTask(task, hooks, store);
}

/** Room for all that is kept, for some of it, and for next to none. */
const rooms = { plenty: 1e9, "some of it": 700_000, "next to none": 20_000 };

describe.each(Object.entries(rooms))("members that remember, with room for %s", (_, bytes) => {
  const store = makeTaskStore(bytes);

  test.each(Object.entries(changes))(
    "after everything before it, %s: the same bits as drawn again",
    async (name, change) => {
      for (let round = 0; round < 2; round++) {
        const end = await oddsOf(change, store);
        expect(bitsOf(wholeOdds(end))).toEqual(bitsOf(plain.get(name)!));
      }
      // Back to the plan: what was kept for it is still its own.
      const end = await oddsOf({}, store);
      expect(bitsOf(wholeOdds(end))).toEqual(bitsOf(plain.get("nothing")!));
    },
  );

  test("another seed is another weather", async () => {
    const end = await oddsOf({}, store, "another");
    expect(bitsOf(wholeOdds(end))).toEqual(bitsOf(runMembers(ensembleWith({}, "another"), 0, TO)));
  });

  test("pairs are the pairs drawn again", async () => {
    const [one, other] = [{}, { bank: { ...base.bank, blockAh: 100 } }].map(scenarioWith) as [Scenario, Scenario];
    const task = { kind: "pairs", scenario: one, other, surroundings, seed: "kept", from: 2, to: TO } as const;
    const end = await runTask(task, hooks, store);
    const fresh = pairedCharge(ensembleWith({}), ensembleWith({ bank: { ...base.bank, blockAh: 100 } }), 2, TO)!;
    expect(end.kind === "part" && bitsOf(end.part)).toEqual(bitsOf(fresh));
  });
});

/** Ensembles that share what they are prepared from and what is kept of their members. */
function sharing() {
  const run = makeKeptMembers(1e9);
  const parts = makeReuse(100);
  const shared = (change: Partial<ScenarioInput>) => {
    const ready = prepareEnsemble(scenarioWith(change), surroundings, "kept", parts);
    if (!ready.ok) throw new Error(ready.problems[0]!.message);
    return ready.ensemble;
  };
  const solarWh = (change: Partial<ScenarioInput>) => {
    const ensemble = shared(change);
    const room = makeMemberRoom(ensemble);
    run(ensemble, 3, 1, room);
    return runRecord(ensemble.prepared, room.run).solarW.reduce((sum, watts) => sum + watts, 0);
  };
  return { shared, solarWh };
}

test("a group that nobody changed is met again beside one that is new", () => {
  const changed = { panels: [{ ...pwm!, count: 2 * pwm!.count }, ...others] };
  const fresh = sharing().solarWh(changed);
  const { shared, solarWh } = sharing();
  solarWh({});
  const { prepared } = shared({});
  // Whoever works these groups out again finds them folded away.
  for (const { perStep, crowns } of prepared.groups) for (const rows of [perStep, crowns]) rows.fill(0);
  expect(fresh).toBeGreaterThan(0);
  expect(solarWh(changed)).toBe(fresh);
});

test("what is kept is met again and not drawn again, by scenarios that share it and no others", () => {
  const { shared, solarWh } = sharing();
  const before = solarWh({});
  expect(before).toBeGreaterThan(0);
  shared({}).skies.split.rows.fill(0); // whoever draws this sky again finds it dark
  expect(solarWh({})).toBe(before);
  // The same sun; only in the few steps that tie a shaded group to the bank does another bank's voltage matter.
  expect(solarWh({ bank: { ...base.bank, blockAh: 150 } }) / before).toBeCloseTo(1, 3);
  const fewer = solarWh({ panels: base.panels!.slice(1) });
  expect(fewer).toBeGreaterThan(0);
  expect(fewer).toBeLessThan(before);
  expect(solarWh({ sureness: { panelYield: "guess" } })).not.toBe(before);
  const another = shared({ knownDays: [{ date: "2026-06-12", sky: "clear" }] });
  another.skies.split.rows.fill(0);
  expect(solarWh({ knownDays: [{ date: "2026-06-12", sky: "clear" }] })).toBe(0);
});
