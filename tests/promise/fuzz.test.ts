import fc from "fast-check";
import { test } from "vitest";
import { PROMISES } from "./fuzz/properties.ts";

/** The same cases every time; `npm run fuzz` goes on from where these end. */
const SEED = 20261130;

test.each(PROMISES.map((promise) => [promise.name, promise] as const))("%s", async (_, { property, cases }) => {
  await fc.assert(property, { seed: SEED, numRuns: cases });
});
