import { readFileSync } from "node:fs";
import { expect, test, vi } from "vitest";

const described = vi.hoisted(() => ({ times: 0 }));
vi.mock("zod", async (original) => {
  const real = await original<typeof import("zod")>();
  const toJSONSchema = (...given: unknown[]) => {
    described.times++;
    return (real.toJSONSchema as (...all: unknown[]) => unknown)(...given);
  };
  return { ...real, toJSONSchema };
});
const { readScenario } = await import("../../../engine/scenario/readScenario.ts");

const base = JSON.parse(readFileSync("scenarios/walnut-grove.json", "utf8")) as { gear: object[]; bank: object };

function messages(change: object): string[] {
  const read = readScenario({ ...base, ...change });
  return read.ok ? [] : read.problems.map(({ message }) => message);
}

test("what the format knows is described once, however many fields it does not know", () => {
  const gear = base.gear.map((each) => ({ ...each, watts: 1, wats: 2, use: 1 }));
  expect(messages({ gear, bank: { ...base.bank, volts: 12 } }).length).toBeGreaterThan(3 * gear.length);
  expect(messages({ nme: "x" })).toEqual(['There is no field "nme" (here "x") in the document; did you mean name?']);
  expect(described.times).toBe(1);
});

test("a contradiction with a value that is refused anyway is not said besides", () => {
  const bank = { ...base.bank, disconnectV: 99, reconnectV: 12 };
  expect(messages({ bank })).toEqual([expect.stringMatching(/^bank\.disconnectV is 99 but must be/)]);
});

test("long names and values are cut short in sentences", () => {
  const long = "x".repeat(5000);
  for (const message of messages({ [long]: long, gear: [{ id: long }] })) expect(message.length).toBeLessThan(800);
});
