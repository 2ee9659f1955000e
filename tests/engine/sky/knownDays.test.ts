import { expect, test } from "vitest";
import { prepareEnsemble } from "../../../engine/ensemble/prepareEnsemble.ts";
import { runMembers } from "../../../engine/odds/odds.ts";
import { loadClimateTables } from "../../../engine/place/loadClimateTables.ts";
import type { ScenarioInput } from "../../../engine/scenario/scenario.ts";
import { prepareDailyClearness } from "../../../engine/sky/dailyClearness.ts";
import { prepareKnownDays } from "../../../engine/sky/knownDays.ts";
import { plainInput, readPlain } from "../../truth/run/plainScenario.ts";

const monthly = (value: number) => Array.from({ length: 12 }, () => value);
const dates = ["2027-01-17", "2027-01-18", "2027-01-19", "2027-01-20"];
const clearness = prepareDailyClearness({ kt: monthly(0.4), sd: monthly(0.15), r1: monthly(0.3) }, dates);

test("a clear day at the edge of polar night, clearer than any by its H0, is the brightest there is", () => {
  const perKt = Float64Array.of(0, 0.2, 5, 8);
  const edge = prepareKnownDays(clearness, [null, { word: "clear", sureness: 1 }], perKt);
  expect(edge?.reading[0]).toBeCloseTo(3, 5);
});

test("a day without sun is read as the nearest with any, and says nothing where there is none", () => {
  const perKt = Float64Array.of(0, 0, 5, 8);
  const dark = prepareKnownDays(clearness, [null, { word: "clear", sureness: 1 }], perKt)!;
  const lit = prepareKnownDays(clearness, [null, null, { word: "clear", sureness: 1 }], perKt)!;
  expect(dark.reading[0]).toBeCloseTo(lit.reading[0]!, 3);
  expect(prepareKnownDays(clearness, [{ word: "clear", sureness: 1 }], new Float64Array(4))).toBeNull();
});

test("a stated clearness outside its range is still refused", () => {
  expect(() => prepareKnownDays(clearness, [{ kt: 1.6 }], Float64Array.of(2, 2, 2, 2))).toThrow("kt must lie in 0…1.5");
});

const climate = await loadClimateTables();
test.each([
  ["words", "clear"],
  ["words", "overcast"],
  ["known", "clear"],
] as const)("odds at 69.65° on 20 January are odds, with %s that say %s", (kind, sky) => {
  // In air this clean the cloudless day's light comes to four times its H0.
  for (const [longitudeDeg, stepMinutes] of [
    [18.96, 10],
    [30, 60],
    [5, 20],
  ] as const) {
    const words = kind === "words";
    const parts: Partial<ScenarioInput> = {
      place: { name: "Edge of night (invented)", latitudeDeg: 69.65, longitudeDeg, zone: "Europe/Oslo" },
      time: { start: "2027-01-18T12:00", end: "2027-01-21T12:00", stepMinutes },
      weather: words
        ? { kind: "words", days: Array.from({ length: 4 }, () => sky), linkeTurbidity: 2 }
        : { kind: "typical", linkeTurbidity: 2 },
      knownDays: words ? [] : dates.slice(1).map((date) => ({ date, sky })),
    };
    const ready = prepareEnsemble(readPlain(plainInput(parts)), { climate }, "edge");
    if (!ready.ok) throw new Error(ready.problems[0]!.message);
    expect(runMembers(ready.ensemble, 0, 8).outcomes.endShare.every(Number.isFinite)).toBe(true);
  }
});
