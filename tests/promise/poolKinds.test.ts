import { expect, test } from "vitest";
import { type EngineModule, engineModules, parseModule } from "./engineModules.ts";

/** The one file of the pool that lists the kinds of tasks. */
const LIST = "engine/pool/taskKinds.ts";
/** What the loop itself is made of; the pool knows nothing else of the engine. */
const LOOP = /^engine\/(pool\/|task\/|fault\.ts$|scenario\/problem\.ts$)/;

const strays = (modules: Iterable<EngineModule>) =>
  [...modules]
    .filter(({ folder, path }) => folder === "pool" && path !== LIST)
    .flatMap(({ path, imports }) => imports.filter((target) => !LOOP.test(target)).map((to) => `${path}: ${to}`));

test("the pool is a loop that knows no kind of task, but for its list", () => {
  expect(strays(engineModules().values())).toEqual([]);
});

test("a pool that merges odds by itself would be found", () => {
  const text = 'import { mergePackedOdds } from "../odds/packedOdds.ts";';
  expect(strays([parseModule("engine/pool/taskPool.ts", text)])).toHaveLength(1);
});
