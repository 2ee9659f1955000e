import { beforeAll, describe, expect, test } from "vitest";
import { makeNodePool } from "../../../engine/cli/nodePool.ts";
import {
  actual,
  drivers,
  learn,
  limits,
  odds,
  type Scenario,
  type Surroundings,
  size,
  TaskCancelled,
  trace,
  versus,
} from "../../../engine/index.ts";
import { loadClimateTables } from "../../../engine/place/loadClimateTables.ts";
import { exampleScenario } from "./exampleScenario.ts";

const scenario = exampleScenario();
let surroundings: Surroundings = {};
beforeAll(async () => {
  surroundings = { climate: await loadClimateTables() };
});

test("what is no checked scenario is a TypeError that says what to look at", async () => {
  const read = { ok: false, problems: [] } as unknown as Scenario;
  const sentence = /must be the scenario that readScenario gives, got fields ok, problems; look at ok/;
  expect(() => trace(read, surroundings)).toThrow(TypeError);
  expect(() => limits(read, surroundings)).toThrow(sentence);
  expect(() => actual(read, "", surroundings)).toThrow(sentence);
  for (const asked of [
    odds(read, surroundings),
    size(read, surroundings),
    drivers(read, surroundings),
    learn(read, [], surroundings),
  ]) {
    await expect(asked).rejects.toThrow(sentence);
  }
  await expect(versus([scenario, undefined as unknown as Scenario], surroundings)).rejects.toThrow(
    /scenarios\[1\] must be .* got undefined/,
  );
});

test("numbers out of their range are RangeErrors before any work", async () => {
  expect(() => trace(scenario, surroundings, { member: -1 })).toThrow(
    /member must be a whole number in 0…999999, got -1/,
  );
  await expect(odds(scenario, surroundings, { members: 0 })).rejects.toThrow(RangeError);
  await expect(versus([scenario], surroundings)).rejects.toThrow(/scenarios must be 2 or more, got 1/);
  await expect(size(scenario, surroundings, { targetShare: 95 })).rejects.toThrow(
    /targetShare must lie in 0…1, got 95/,
  );
  await expect(size(scenario, surroundings, { autonomyDays: 0 })).rejects.toThrow(/autonomyDays/);
  await expect(drivers(scenario, surroundings, { members: 5 })).rejects.toThrow(RangeError);
  await expect(
    learn(scenario, { format: "duskline-readings", version: 1, readings: [] }, surroundings, { members: 5 }),
  ).rejects.toThrow(RangeError);
  expect(() => limits(scenario, surroundings, { coldestC: -200 })).toThrow(RangeError);
  for (const workers of [-1, 1.5, 1000])
    expect(() => makeNodePool(workers)).toThrow(/workers must be a whole number in 0…256/);
});

test("what the surroundings lack comes back as problems from every call", async () => {
  const answers = [
    trace(scenario),
    limits(scenario),
    await odds(scenario),
    await versus([scenario, scenario]),
    await size(scenario),
    await drivers(scenario),
    await learn(scenario, {}),
  ];
  for (const answer of answers)
    expect(answer).toMatchObject({ ok: false, problems: [{ message: expect.stringMatching(/climate/i) }] });
});

describe("odds", () => {
  test("are the same bits in this thread, on one worker and on two", async () => {
    const asked = { members: 24, seed: "bits" };
    const here = await odds(scenario, surroundings, asked);
    for (const workers of [1, 2]) {
      const pool = makeNodePool(workers);
      expect(await odds(scenario, surroundings, { ...asked, pool })).toEqual(here);
      pool.close();
    }
  });

  test("stop when the signal is given, and say so as platforms do", async () => {
    const cancel = new AbortController();
    const told: number[] = [];
    const asked = odds(scenario, surroundings, {
      members: 5000,
      signal: cancel.signal,
      onProgress: (done) => {
        told.push(done);
        cancel.abort();
      },
    });
    await expect(asked).rejects.toThrow(TaskCancelled);
    await expect(asked).rejects.toMatchObject({ name: "AbortError" });
    expect(told.at(-1)).toBeLessThan(5000);
  });

  test("a member that is replayed goes as low as the ensemble says", async () => {
    const answer = await odds(scenario, surroundings, { members: 20, seed: "tail" });
    if (!answer.ok) throw new Error("no odds");
    const lows = Array.from({ length: 20 }, (_, member) => {
      const run = trace(scenario, surroundings, { member, seed: "tail" });
      if (!run.ok) throw new Error("no trace");
      return Math.min(...run.trace.chargeShare);
    }).sort((a, b) => a - b);
    // Halfway between the tenth and the eleventh of twenty.
    expect(answer.report.lowestShare.p50).toBeCloseTo((lows[9]! + lows[10]!) / 2, 12);
  });
});

test("versus counts how far all of them are, and the same plan twice makes no difference", async () => {
  const told: [number, number][] = [];
  const onProgress = (done: number, of: number) => void told.push([done, of]);
  const answer = await versus([scenario, scenario], surroundings, { members: 10, onProgress });
  expect(told.at(-1)).toEqual([20, 20]);
  expect(answer).toMatchObject({ ok: true, report: { others: [{ holds: { mean: 0 }, margin: { mean: 0 } }] } });
});

test("a log or a mapping that cannot be read comes back as problems", () => {
  expect(actual(scenario, "", surroundings)).toMatchObject({ ok: false, problems: [{ code: "empty-log" }] });
  const mapping = { stamp: "middle" } as never;
  expect(actual(scenario, "time\n", surroundings, { mapping })).toMatchObject({
    ok: false,
    problems: [{ code: "bad-mapping" }],
  });
});
