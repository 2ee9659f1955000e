import fc from "fast-check";
import { expect, test } from "vitest";
import { makeRunRows, ROW_SLOTS, ROW_SOLAR_W } from "../../engine/run/runRows.ts";
import { stepRun } from "../../engine/run/stepRun.ts";
import { traceInput } from "../truth/run/plainScenario.ts";
import { arbitraryScenario } from "./arbitraryScenario.ts";

test("an ensemble's short way round the panels gives the numbers of a trace", () => {
  fc.assert(
    fc.property(arbitraryScenario, (input) => {
      const { prepared, record } = traceInput(input);
      const run = makeRunRows(prepared);
      // Twice, because rows are written over: what the first run left must not matter.
      for (let k = 0; k < 2; k++) stepRun(prepared, prepared.light, prepared.airTempC, prepared.inputs, run);
      for (let i = 0; i < prepared.grid.steps; i++) {
        expect(run.rows[i * ROW_SLOTS + ROW_SOLAR_W]).toBe(record.solarW[i]);
      }
    }),
    { numRuns: 100, seed: 20261011 },
  );
});
