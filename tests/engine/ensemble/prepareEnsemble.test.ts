import { expect, test } from "vitest";
import { type PreparedGroup, underCrowns } from "../../../engine/array/preparedGroup.ts";
import { SKY_SHARE } from "../../../engine/array/slots.ts";
import { type PreparedEnsemble, prepareEnsemble } from "../../../engine/ensemble/prepareEnsemble.ts";
import { CANOPY_REACH, FIGURE_CANOPY_NORMAL, SURENESS_SPREAD } from "../../../engine/run/memberFigures.ts";
import { ownInputs } from "../../../engine/run/memberInputs.ts";
import { runRecord } from "../../../engine/run/runRecord.ts";
import { makeRunRows } from "../../../engine/run/runRows.ts";
import { stepRun } from "../../../engine/run/stepRun.ts";
import type { Scenario } from "../../../engine/scenario/scenario.ts";
import { exampleEnsemble, variantChanges } from "./exampleEnsemble.ts";

const example = exampleEnsemble("walnut-grove", variantChanges("walnut-grove", "meadow"));

function prepared(changes: Partial<Scenario>): PreparedEnsemble {
  const ready = prepareEnsemble({ ...example.prepared.scenario, ...changes }, example.surroundings, "x");
  if (!ready.ok) throw new Error(ready.problems[0]!.message);
  return ready.ensemble;
}

/** All values on which crowns have a say, under crowns so much lighter. */
function shadeOf(groups: readonly PreparedGroup[], lean: number): number[] {
  return groups.flatMap((group) => {
    const steps = group.perStep.length / group.stride;
    return Array.from({ length: steps * group.crownStride }, (_, k) =>
      underCrowns(group, Math.floor(k / group.crownStride), SKY_SHARE + (k % group.crownStride), lean),
    );
  });
}

/** The rest of the rows. */
function lightOf(groups: readonly PreparedGroup[]): number[] {
  return groups.flatMap(({ perStep, stride }) => Array.from(perStep).filter((_, k) => k % stride < SKY_SHARE));
}

/** What the panels offer in each step, crowns so much lighter. */
function givenW({ prepared: ready }: PreparedEnsemble, lean: number): Float64Array {
  const inputs = ownInputs(ready.inputs, ready.inputs.wantedW);
  inputs.figures[FIGURE_CANOPY_NORMAL] = lean * CANOPY_REACH;
  const run = makeRunRows(ready);
  stepRun(ready, ready.light, ready.airTempC, inputs, run);
  return runRecord(ready, run).solarW;
}

const tilted = (scenario: Scenario, models: Partial<Scenario["models"]>): Partial<Scenario> => ({
  models: { ...scenario.models, ...models },
  panels: scenario.panels.map((panel) => ({ ...panel, mount: { kind: "fixed", tiltDeg: 40, azimuthDeg: 170 } })),
});

test.each(["hayDavies", "perez"] as const)(
  "panels under denser and thinner crowns are those of a scenario that plans such crowns, %s",
  (transposition) => {
    const { sureness: usual, obstacles: planned } = example.prepared.scenario;
    const under = tilted(example.prepared.scenario, { transposition });
    const sureness = { ...usual, canopy: "measured" as const };
    const { groups } = prepared({ ...under, sureness }).prepared;
    const asPlanned = shadeOf(groups, 0);
    const reach = CANOPY_REACH * SURENESS_SPREAD.canopy.measured;
    for (const lean of [-1, 1]) {
      const factor = 1 + lean * reach;
      const obstacles = planned.map((each) => {
        if (each.kind !== "tree") return each;
        const { transmittanceInLeafShare, transmittanceBareShare } = each;
        return {
          ...each,
          transmittanceInLeafShare: transmittanceInLeafShare * factor,
          transmittanceBareShare: transmittanceBareShare * factor,
        };
      });
      const stated = prepared({ ...under, sureness, obstacles }).prepared.groups;
      const found = shadeOf(groups, lean);
      expect(found).toEqual(shadeOf(stated, 0));
      expect(lightOf(groups)).toEqual(lightOf(stated));
      expect(found).not.toEqual(asPlanned);
      // And stepped, they give what that scenario's panels give.
      const given = givenW(prepared({ ...under, sureness }), lean);
      const wanted = givenW(prepared({ ...under, sureness, obstacles }), 0);
      expect(Math.max(...wanted)).toBeGreaterThan(10);
      expect(Math.max(...given.map((watts, k) => Math.abs(watts - wanted[k]!)))).toBeLessThan(1e-9);
      // Halfway there, every value is halfway.
      shadeOf(groups, lean / 2).forEach((value, k) => {
        expect(value).toBeCloseTo((found[k]! + asPlanned[k]!) / 2, 12);
      });
    }
  },
);

test("with nothing about, crowns have no say", () => {
  const { groups } = prepared({}).prepared;
  const free = groups.map(({ unshaded }) => unshaded!);
  expect(shadeOf(free, 1)).toEqual(shadeOf(free, 0));
  expect(shadeOf(free, -1)).toEqual(shadeOf(free, 0));
  expect(prepared({ obstacles: [] }).hasCrowns).toBe(false);
  expect(prepared({}).hasCrowns).toBe(true);
});
