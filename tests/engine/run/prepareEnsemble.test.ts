import { expect, test } from "vitest";
import { SURENESS_SPREAD } from "../../../engine/run/memberFigures.ts";
import { CANOPY_REACH, type PreparedEnsemble, prepareEnsemble } from "../../../engine/run/prepareEnsemble.ts";
import type { Scenario } from "../../../engine/scenario/scenario.ts";
import { exampleEnsemble, variantChanges } from "./exampleEnsemble.ts";

const example = exampleEnsemble("walnut-grove", variantChanges("walnut-grove", "meadow"));
const rows = (groups: PreparedEnsemble["prepared"]["groups"]) => groups.map(({ perStep }) => perStep);

function prepared(changes: Partial<Scenario>): PreparedEnsemble {
  const ready = prepareEnsemble({ ...example.prepared.scenario, ...changes }, example.surroundings, "x");
  if (!ready.ok) throw new Error(ready.problems[0]!.message);
  return ready.ensemble;
}

test("panels under denser and thinner crowns are those of a scenario that plans such crowns", () => {
  const { sureness: usual, obstacles: planned } = example.prepared.scenario;
  const sureness = { ...usual, canopy: "measured" as const };
  const { canopy, prepared: asPlanned } = prepared({ sureness });
  const { darker, lighter } = canopy!;
  expect(darker).toHaveLength(asPlanned.groups.length);
  const reach = CANOPY_REACH * SURENESS_SPREAD.canopy.measured;
  for (const [found, factor] of [
    [darker, 1 - reach],
    [lighter, 1 + reach],
  ] as const) {
    const obstacles = planned.map((each) => {
      if (each.kind !== "tree") return each;
      const { transmittanceInLeafShare, transmittanceBareShare } = each;
      return {
        ...each,
        transmittanceInLeafShare: transmittanceInLeafShare * factor,
        transmittanceBareShare: transmittanceBareShare * factor,
      };
    });
    const { groups } = prepared({ sureness, obstacles }).prepared;
    expect(rows(found)).toEqual(rows(groups));
    expect(rows(found)).not.toEqual(rows(asPlanned.groups));
    // With nothing about, they are the same group.
    expect(found.map(({ unshaded }) => unshaded)).toEqual(asPlanned.groups.map(({ unshaded }) => unshaded));
  }
});

test("a member's own rows are nobody else's", () => {
  const { prepared: asPlanned, canopy } = prepared({});
  const before = rows(asPlanned.groups).map((row) => row.slice());
  for (const { perStep } of canopy!.member) perStep.fill(0.5);
  expect(rows(asPlanned.groups)).toEqual(before);
});
