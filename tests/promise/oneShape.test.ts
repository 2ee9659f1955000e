import { setFlagsFromString } from "node:v8";
import { expect, test } from "vitest";
import type { PreparedGroup } from "../../engine/array/preparedGroup.ts";
import { withoutEachLoad } from "../../engine/drivers/driversShedding.ts";
import { prepareEnsemble } from "../../engine/ensemble/prepareEnsemble.ts";
import { replayMember } from "../../engine/odds/odds.ts";
import type { ClimateTables } from "../../engine/place/climateTables.ts";
import { loadClimateTables } from "../../engine/place/loadClimateTables.ts";
import { type Prepared, prepare, preparedOf } from "../../engine/run/prepare.ts";
import { prepareSizes } from "../../engine/size/sizeMap.ts";
import walnutGrove from "../../scenarios/walnut-grove.json";
import { bitScenarios } from "../bitScenarios.ts";

// What the compiler itself says, for all that is visible in an object is alike either way.
setFlagsFromString("--allow-natives-syntax");
const sameShape = new Function(
  "one",
  "other",
  // An object made before the first of its kind had a fraction in some field is brought up to date when it is next used.
  "%TryMigrateInstance(one); %TryMigrateInstance(other); return %HaveSameMap(one, other);",
) as (a: object, b: object) => boolean;
setFlagsFromString("--no-allow-natives-syntax");

/** Everything of the bit scenarios that the step loop may be handed. */
function everyPrepared(climate: ClimateTables): Prepared[] {
  return bitScenarios(climate).flatMap(({ scenario, surroundings }) => {
    const alone = prepare(scenario, surroundings);
    const ready = prepareEnsemble(scenario, surroundings, "shape");
    if (!alone.ok || !ready.ok) throw new Error("the examples prepare");
    const { ensemble } = ready;
    return [
      alone.prepared,
      ensemble.prepared,
      replayMember(ensemble, 0).prepared,
      ...withoutEachLoad(ensemble).map(({ prepared }) => prepared),
    ];
  });
}

/** Cells of a map, which share what they can. */
function cellsOf(climate: ClimateTables): Prepared[] {
  const [x, y] = [
    { at: "bank.blockAh", values: [60, 90] },
    { at: "panels.roof.count", values: [0, 2] },
  ] as const;
  const ready = prepareSizes(walnutGrove, x, y, { climate }, "shape");
  if (!ready.ok) throw new Error(ready.problems[0]!.message);
  return ready.map.cells.map(({ prepared }) => prepared);
}

const climate = await loadClimateTables();
const all = [...everyPrepared(climate), ...cellsOf(climate)];
const groups = all.flatMap((prepared) => prepared.groups).flatMap((of): PreparedGroup[] => [of, of.unshaded ?? of]);

test("a shape is told from another", () => {
  expect(sameShape({ a: 1, b: 2 }, { a: 3, b: 4 })).toBe(true);
  expect(sameShape({ a: 1, b: 2 }, { b: 2, a: 1 })).toBe(false);
  const [first] = all;
  expect(sameShape(first!, { ...first!, remarks: [], later: 1 })).toBe(false);
});

test("everything that is prepared has one shape in memory, whoever made it", () => {
  expect(all.length).toBeGreaterThan(10);
  expect(all.filter((prepared) => !sameShape(prepared, preparedOf({ ...prepared })))).toEqual([]);
  expect(all.filter((prepared) => !sameShape(prepared, all[0]!)).length).toBe(0);
});

test("so have all panel groups, with shade and without", () => {
  expect(groups.length).toBeGreaterThan(10);
  expect(groups.filter((group) => !sameShape(group, groups[0]!)).length).toBe(0);
});
