import { expect, test } from "vitest";
import { seedWords } from "../../../engine/chance/stream.ts";
import type { KnownDay } from "../../../engine/sky/knownDays.ts";
import { drawSky, prepareSkyEnsemble } from "../../../engine/sky/skyEnsemble.ts";
import { makeSkyLight } from "../../../engine/sky/splitDiffuse.ts";
import { CLIMATE, skyEvent } from "./skyEvent.ts";

const event = skyEvent({ start: "2026-06-01T00:00", end: "2026-07-01T00:00", stepMinutes: 60 });
const words = seedWords("climate");
const MEMBERS = 3000;
const mean = (values: readonly number[]) => values.reduce((sum, value) => sum + value, 0) / values.length;
const variance = (values: readonly number[]) => {
  const middle = mean(values);
  return mean(values.map((value) => (value - middle) ** 2));
};

function drawn(ktErrorRms: number, known: (KnownDay | null)[] = []) {
  const skies = prepareSkyEnsemble({ ...event, climate: CLIMATE, ktErrorRms, knownDays: known });
  const light = makeSkyLight(event.grid.steps);
  const airTempC = new Float64Array(event.grid.steps);
  return Array.from({ length: MEMBERS }, (_, member) => {
    drawSky(skies, words, member, light, airTempC);
    return { kt: [...skies.ktOfDay], normal: [...skies.normalOfDay], air: [...airTempC] };
  });
}
const sure = drawn(0);

test.each([0.035, 0.067])("a climate that is good to ±%s adds that to the spread of a whole month", (ktErrorRms) => {
  const months = (of: typeof sure) => of.map(({ kt }) => mean(kt));
  const unsure = months(drawn(ktErrorRms));
  const added = Math.sqrt(variance(unsure) - variance(months(sure)));
  // Both samples hold the same skies; what is left is the sampling error of a spread from 3000 draws, 1.3 %, and the bend of
  // the table.
  expect(Math.abs(added / ktErrorRms - 1)).toBeLessThan(0.08);
  // An error has no direction: the mean stays, except for the bend of the table and the sample.
  expect(Math.abs(mean(unsure) - mean(months(sure)))).toBeLessThan(4 * (ktErrorRms / Math.sqrt(MEMBERS)) + 0.003);
});

test("one error moves all days of a member together, and no other draw", () => {
  const unsure = drawn(0.05);
  for (let member = 0; member < 50; member++) {
    const moved = unsure[member]!.normal.map((normal, day) => normal - sure[member]!.normal[day]!);
    for (const move of moved) expect(Math.abs(move - moved[0]!)).toBeLessThan(1e-5);
    expect(Math.abs(moved[0]!)).toBeGreaterThan(0);
  }
});

test("what is known of a day for certain is known whatever the climate", () => {
  const told = drawn(0.067, [{ kt: 0.3, sureness: 1 }]);
  for (const { kt } of told.slice(0, 200)) expect(Math.abs(kt[0]! - 0.3)).toBeLessThan(1e-4);
});

test("an error that no table has is refused by name", () => {
  expect(() => prepareSkyEnsemble({ ...event, climate: CLIMATE, ktErrorRms: 0.3 })).toThrow("ktErrorRms");
});
