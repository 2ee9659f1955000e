import fc from "fast-check";
import { afterEach, beforeEach, describe, expect, test } from "vitest";
import { prepareEnsemble } from "../../engine/ensemble/prepareEnsemble.ts";
import { runMembers } from "../../engine/odds/odds.ts";
import type { ScenarioInput } from "../../engine/scenario/scenario.ts";
import { readPlain } from "../truth/run/plainScenario.ts";
import { arbitraryScenario } from "./arbitraryScenario.ts";
import { withOnePanelMore } from "./withOnePanelMore.ts";
import { SLACK_SHARE, withoutSwitches } from "./withoutSwitches.ts";

// Member by member, under the same sky and with the same operators, more is never worse. What is left out and why stands
// in `withoutSwitches`, and beside each promise that needs more.

const RUNS = { numRuns: 16, seed: 20261010 };
const MEMBERS = 8;

/** Whole numbers are drawn evenly; doubles mostly close to nothing. */
const share = (lowPercent: number, highPercent: number) =>
  fc.integer({ min: lowPercent, max: highPercent }).map((percent) => percent / 100);

/**
 * Under a climate that is typed in, so that no tables are needed, and without the switches. Banks are large and full enough that
 * many members hold: of those that fail anyway there is less to promise.
 */
const arbitraryPlan = fc
  .record({
    input: arbitraryScenario,
    kt: share(5, 70),
    meanC: fc.integer({ min: -10, max: 25 }),
    startShare: share(40, 100),
    blockAh: fc.integer({ min: 50, max: 600 }),
    alwaysW: fc.integer({ min: 0, max: 40 }),
  })
  .map(({ input, kt, meanC, startShare, blockAh, alwaysW }): ScenarioInput => {
    const { bank, gear = [], ...rest } = withoutSwitches(input);
    return {
      ...rest,
      weather: {
        kind: "typical",
        monthlyKt: Array.from({ length: 12 }, () => kt),
        air: { maxC: meanC + 5, minC: meanC - 5 },
      },
      gear: [...gear, { id: "base", name: "base load", working: { drawW: alwaysW }, use: { when: "always" } }],
      bank: { ...bank, blockAh, startShare },
    };
  });

interface Lowest {
  /** Lowest charge of each member, Ah, and above the reserve. */
  readonly lowestAh: Float64Array;
  readonly aboveAh: Float64Array;
  readonly holds: readonly boolean[];
  readonly fullAh: number;
}

function run(input: ScenarioInput): Lowest {
  const ready = prepareEnsemble(readPlain(input), {}, "paired");
  if (!ready.ok) throw new Error(ready.problems.map(({ message }) => message).join("\n"));
  const { fullAh, reserveAh } = ready.ensemble.prepared.bank;
  const { outcomes } = runMembers(ready.ensemble, 0, MEMBERS);
  return {
    lowestAh: outcomes.lowestShare.map((share) => share * fullAh),
    aboveAh: outcomes.lowestShare.map((share) => share * fullAh - reserveAh),
    holds: Array.from(outcomes.belowFromStep, (step) => step < 0),
    fullAh,
  };
}

/** No member's lowest charge falls, beyond what finite steps can do. */
function expectNoWorse(plain: Lowest, better: Lowest): void {
  const slackAh = SLACK_SHARE * plain.fullAh;
  for (let m = 0; m < MEMBERS; m++) {
    expect(better.lowestAh[m]!, `member ${m}`).toBeGreaterThan(plain.lowestAh[m]! - slackAh);
  }
  expectHolding(plain, better, slackAh);
}

let holding = 0;
/** Members that hold with more than some ampere-hours to spare hold in the better plan. */
function expectHolding(plain: Lowest, better: Lowest, spareAh: number): void {
  for (let m = 0; m < MEMBERS; m++) {
    if (!plain.holds[m] || plain.aboveAh[m]! <= spareAh) continue;
    expect(better.holds[m], `member ${m}`).toBe(true);
    holding++;
  }
}
beforeEach(() => {
  holding = 0;
});
// A promise about members that hold says nothing where none does; of 128 members more than half do.
afterEach(() => expect(holding).toBeGreaterThan(30));

describe("no member that holds fails, and no member's lowest charge falls, with", () => {
  test("one panel group more", () => {
    fc.assert(
      fc.property(arbitraryPlan, fc.integer({ min: 20, max: 300 }), (input, ratedW) => {
        const more = withOnePanelMore(input, ratedW);
        expectNoWorse(run(input), run(more));
      }),
      RUNS,
    );
  });

  test("one load less", () => {
    fc.assert(
      fc.property(arbitraryPlan, fc.integer({ min: 0, max: 3 }), (input, at) => {
        const less = {
          ...input,
          gear: (input.gear ?? []).map((thing, k) => (k === at ? { ...thing, count: 0 } : thing)),
        };
        expectNoWorse(run(input), run(less));
      }),
      RUNS,
    );
  });

  test("one station less, unless it shared an interlock: then the others need no longer wait for it", () => {
    fc.assert(
      fc.property(arbitraryPlan, (raw) => {
        const input = { ...raw, stations: (raw.stations ?? []).map(({ interlock: _, ...station }) => station) };
        expectNoWorse(run(input), run({ ...input, stations: input.stations.slice(0, -1) }));
      }),
      RUNS,
    );
  });

  test("nothing that casts shade", () => {
    fc.assert(
      fc.property(arbitraryPlan, (input) => {
        expectNoWorse(run(input), run({ ...input, obstacles: [] }));
      }),
      RUNS,
    );
  });

  test("a higher charge at the start", () => {
    fc.assert(
      fc.property(arbitraryPlan, share(1, 50), (input, more) => {
        const startShare = Math.min(1, input.bank.startShare + more);
        expectNoWorse(run(input), run({ ...input, bank: { ...input.bank, startShare } }));
      }),
      RUNS,
    );
  });
});

test("a larger bank that starts at the same share fails no member that holds", () => {
  // The same share of a larger bank is more watt-hours; charged by the same sun it may yet stand at a lower share, so what must
  // not fall are the ampere-hours above the reserve. A fuller bank has more volts and gets fewer ampere-hours for the same
  // watts: at most the difference between its volts when full and at the reserve, a tenth. Members nearer than that to the
  // reserve are left out.
  const VOLTS_SHARE = 0.1;
  fc.assert(
    fc.property(arbitraryPlan, share(105, 300), (input, by) => {
      const plain = run(input);
      const larger = run({ ...input, bank: { ...input.bank, blockAh: input.bank.blockAh * by } });
      expectHolding(plain, larger, VOLTS_SHARE * plain.fullAh);
    }),
    RUNS,
  );
});
