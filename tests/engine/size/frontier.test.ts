/**
 * Where more only helps, a map runs each member's frontier and says the rest. Truth: brute force, every member through every cell of plans
 * made at random. Of 280 plans tried so, held and dark were the same in every cell; in one, members that go without and keep their reserve
 * were not.
 */
import fc from "fast-check";
import { expect, test } from "vitest";
import { readScenario } from "../../../engine/scenario/readScenario.ts";
import type { ScenarioInput } from "../../../engine/scenario/scenario.ts";
import { makeSizeStretch } from "../../../engine/size/makeSizeStretch.ts";
import { prepareSizes, type SizeMap } from "../../../engine/size/sizeMap.ts";
import { type SizePart, sizeMembers } from "../../../engine/size/sizeMembers.ts";
import { arbitraryScenario } from "../../promise/arbitraryScenario.ts";

/** Plans to try; hundreds were: DUSKLINE_PLANS=400 npx vitest run tests/engine/size/frontier.test.ts */
const PLANS = Number(process.env.DUSKLINE_PLANS ?? 30);
const MEMBERS = 16;

function mapOf(plan: ScenarioInput): SizeMap | null {
  const read = readScenario(plan);
  const group = read.ok ? read.scenario.panels[0] : undefined;
  if (group === undefined) return null;
  const strings = [1, 2, 3, 5, 8].map((count) => count * group.inSeries);
  const lowAh = plan.bank.blockAh / 4;
  const x = { at: "bank.blockAh", values: { from: lowAh, to: 8 * lowAh, steps: 8 } };
  const ready = prepareSizes(plan, x, { at: `panels.${group.id}.count`, values: strings }, {}, "frontier");
  return ready.ok ? ready.map : null;
}

/** Every member through every cell. */
function bruteForce(map: SizeMap): SizePart {
  const whole = { ...map, grows: false };
  return sizeMembers({ ...whole, stretch: makeSizeStretch(whole, map.lanes) }, 0, MEMBERS);
}

const arbitraryPlan = fc
  .record({ input: arbitraryScenario, kt: fc.integer({ min: 5, max: 60 }), start: fc.integer({ min: 45, max: 100 }) })
  .map(({ input, kt, start }): ScenarioInput => {
    const { box: _, ...bank } = input.bank;
    return {
      ...input,
      sources: [],
      selector: { mode: "both" },
      weather: {
        kind: "typical",
        monthlyKt: Array.from({ length: 12 }, () => kt / 100),
        air: { maxC: 15, minC: 5 },
      },
      panels: (input.panels ?? []).map((group) => ({ ...group, controller: { ...group.controller, kind: "mppt" } })),
      bank: { ...bank, reserveShare: 0.2, startShare: start / 100 },
    };
  });

test("frontiers say of every cell what running every member through it says", () => {
  let varied = 0;
  fc.assert(
    fc.property(arbitraryPlan, (plan) => {
      const map = mapOf(plan);
      if (map === null) return;
      expect(map.grows).toBe(true);
      const truth = bruteForce(map);
      expect(sizeMembers(map, 0, MEMBERS)).toEqual(truth);
      if (new Set(truth.held).size > 2) varied++;
    }),
    { numRuns: PLANS, seed: 4127 },
  );
  // A map that holds everywhere or nowhere says nothing of frontiers.
  expect(varied).toBeGreaterThan(PLANS / 10);
});

test("where more may not help, every cell is run", () => {
  const [plan] = fc.sample(
    arbitraryPlan.filter((each) => (each.panels ?? []).length > 0 && mapOf(each) !== null),
    {
      numRuns: 1,
      seed: 7,
    },
  );
  const [group, ...others] = plan!.panels!;
  const pwm = { ...group!, controller: { ...group!.controller, kind: "pwm" as const } };
  const generator = {
    kind: "generator" as const,
    id: "gen",
    name: "Generator",
    continuousW: 900,
    chargerA: 40,
    startShare: 0.5,
    stopShare: 0.9,
    burnIdleLPerH: 0.25,
    burnFullLPerH: 0.65,
    fuelL: 12,
    allowed: [{ from: "10:00", to: "13:00" }],
  };
  const changes: Record<string, Partial<ScenarioInput>> = {
    pwm: { panels: [pwm, ...others] },
    engine: { sources: [generator] },
    low: { bank: { ...plan!.bank, startShare: 0.3 } },
  };
  for (const [name, change] of Object.entries(changes)) {
    const map = mapOf({ ...plan!, ...change });
    if (map === null) throw new Error(`${name} has no map`);
    expect(map.grows, name).toBe(false);
    expect(sizeMembers(map, 0, 4).held, name).toHaveLength(map.cells.length);
  }
  const hours = { at: "bank.startShare", values: [0.6, 0.8, 1] };
  const ready = prepareSizes(plan, hours, null, {}, "frontier");
  expect(ready.ok && ready.map.grows).toBe(false);
});
