import { describe, expect, test } from "vitest";
import { seedWords } from "../../engine/chance/stream.ts";
import { drivers } from "../../engine/drivers/drivers.ts";
import { type PreparedEnsemble, prepareEnsemble } from "../../engine/ensemble/prepareEnsemble.ts";
import { oddsReport, runMembers } from "../../engine/odds/odds.ts";
import { loadClimateTables } from "../../engine/place/loadClimateTables.ts";
import { readScenario } from "../../engine/scenario/readScenario.ts";
import type { ScenarioInput } from "../../engine/scenario/scenario.ts";
import { drawSky } from "../../engine/sky/skyEnsemble.ts";
import { makeSkyLight } from "../../engine/sky/splitDiffuse.ts";
import { plainInput, readPlain } from "../truth/run/plainScenario.ts";

const climate = await loadClimateTables();
const TYPED = {
  kind: "typical" as const,
  monthlyKt: Array.from({ length: 12 }, () => 0.5),
  air: { maxC: 5, minC: -5 },
};

function ensembleOf(parts: Partial<ScenarioInput>, seed = "bad odds"): PreparedEnsemble {
  const ready = prepareEnsemble(readPlain(plainInput(parts)), { climate }, seed);
  if (!ready.ok) throw new Error(ready.problems.map(({ message }) => message).join("\n"));
  return ready.ensemble;
}
const at = (latitudeDeg: number, longitudeDeg: number): Partial<ScenarioInput> => ({
  place: { name: "Somewhere", latitudeDeg, longitudeDeg, zone: "Etc/UTC" },
  weather: { kind: "typical" },
});

/** Every place in a report where a number is none. */
function wrongNumbers(value: unknown, path = ""): string[] {
  if (typeof value === "number") return Number.isFinite(value) ? [] : [`${path} is ${value}`];
  if (typeof value !== "object" || value === null) return [];
  return Object.entries(value).flatMap(([key, inner]) => wrongNumbers(inner, `${path}.${key}`));
}

test.each([
  [0, 0],
  [5, 5],
  [10, 3],
  [-1, 5],
  [0, 2.5],
  [0.5, 4],
  [0, 1_000_001],
  [0, 1e9],
  [0, Number.NaN],
  [Number.NaN, 4],
  [0, Number.POSITIVE_INFINITY],
])("members %s to %s are refused with both ends named", (from, to) => {
  const ensemble = ensembleOf({ weather: TYPED });
  expect(() => runMembers(ensemble, from, to)).toThrow(
    `members must be whole numbers with 0 <= from < to <= 1000000, got ${from} and ${to}`,
  );
});

describe("far from any station", () => {
  const near = ensembleOf(at(46.93, 15.62));
  const far = ensembleOf(at(-42, -115)); // in the South Pacific

  /** What the remark says of how sure a month's mean is. */
  const saidError = ({ remarks }: PreparedEnsemble) => Number(/±(0\.\d+)/.exec(remarks.join(" "))![1]);

  test("the odds say that the climate comes from the grid alone and how sure it is", () => {
    const sentence = far.remarks.find((remark) => remark.startsWith("Climate from"))!;
    expect(sentence).toContain("world grid of 3° cells alone, with no station within 1000 km");
    expect(sentence).toContain("±0.055");
    expect(saidError(near)).toBeLessThan(0.04);
  });

  test("members differ by that error on top of the weather, and no draw of the weather moves", () => {
    const words = seedWords("bad odds");
    /** Mean Kt of each member over the event's days. */
    const means = ({ skies, prepared }: PreparedEnsemble, isSure: boolean) => {
      const drawn = isSure ? { ...skies, climate: { ...skies.climate!, errorMoves: null } } : skies;
      const light = makeSkyLight(prepared.grid.steps);
      const air = new Float64Array(prepared.grid.steps);
      return Array.from({ length: 3000 }, (_, member) => {
        drawSky(drawn, words, member, light, air);
        return drawn.ktOfDay.reduce((sum, kt) => sum + kt, 0) / drawn.ktOfDay.length;
      });
    };
    const variance = (values: number[]) => {
      const mean = values.reduce((sum, value) => sum + value, 0) / values.length;
      return values.reduce((sum, value) => sum + (value - mean) ** 2, 0) / values.length;
    };
    for (const [ensemble, ktRms] of [
      [near, saidError(near)],
      [far, saidError(far)],
    ] as const) {
      const added = Math.sqrt(variance(means(ensemble, false)) - variance(means(ensemble, true)));
      // The same 3,000 skies with and without: what is left is the chance correlation of error and weather, 1/√3000 of
      // twice their product, and the bend of the table near its bright end.
      expect(Math.abs(added / ktRms - 1), `±${ktRms}`).toBeLessThan(0.22);
    }
  });

  test("clearness that is typed in carries no such error", () => {
    expect(ensembleOf({ ...at(-42, -115), weather: TYPED }).skies.climate!.errorMoves).toBeNull();
  });
});

describe("south of where the tables end", () => {
  test("typical weather is refused, with what to do instead", () => {
    for (const weather of [{ kind: "typical" as const }, { kind: "clear" as const, air: { maxC: 0, minC: -9 } }]) {
      const ready = prepareEnsemble(readPlain(plainInput({ ...at(-75, 0), weather })), { climate }, "x");
      expect(ready.ok).toBe(false);
      if (ready.ok) continue;
      expect(ready.problems[0]!.message).toBe(
        "The latitude is -75°, and the climate tables end at 58.5° south; type in monthly clearness or load a weather file.",
      );
    }
  });

  test("with clearness and air typed in it runs, through polar day and polar night", () => {
    for (const month of ["01", "06"]) {
      const ensemble = ensembleOf({
        ...at(-75, 0),
        weather: TYPED,
        time: { start: `2026-${month}-12T00:00`, end: `2026-${month}-13T00:00`, stepMinutes: 60 },
      });
      const report = oddsReport(ensemble, runMembers(ensemble, 0, 30));
      expect(wrongNumbers(report)).toEqual([]);
    }
  });
});

test("without tables, weather that needs them is refused in a sentence", () => {
  for (const weather of [{ kind: "typical" as const }, { ...TYPED, air: undefined }] as ScenarioInput["weather"][]) {
    const ready = prepareEnsemble(readPlain(plainInput({ weather })), {}, "x");
    expect(ready.ok).toBe(false);
    if (!ready.ok) expect(ready.problems[0]!.message).toMatch(/climate tables.*type in/);
  }
});

describe("what a scenario says of chance is read with care", () => {
  const problem = (parts: object): string => {
    const read = readScenario({ ...plainInput(), ...parts });
    expect(read.ok).toBe(false);
    return read.ok ? "" : read.problems.map(({ message }) => message).join("\n");
  };
  test.each([
    [{ sureness: { idleDraw: "datasheet" } }, /sureness\.idleDraw.*datasheet.*measured, dataSheet/],
    [{ sureness: { canopie: "guess" } }, /canopie/],
    [{ sureness: "guess" }, /sureness/],
    [{ operators: { betweenEventsShare: -0.1 } }, /operators\.betweenEventsShare.*-0\.1/],
    [{ operators: { byHourShare: 1.2 } }, /operators\.byHourShare.*1\.2/],
    [{ operators: { byHourShare: "half" } }, /operators\.byHourShare/],
    [{ knownDays: [{ date: "2026-06-12", sky: "rainy" }] }, /knownDays.*sky.*rainy/],
    [{ knownDays: [{ date: "tomorrow", sky: "clear" }] }, /knownDays.*date.*tomorrow/],
    [{ knownDays: [{ date: "2026-06-12", sky: "clear", sureness: 2 }] }, /knownDays.*sureness.*2/],
    [{ shedding: ["nothing-of-that-name"] }, /shedding.*nothing-of-that-name/],
  ])("%j", (parts, words) => {
    const said = problem(parts);
    expect(said).toMatch(words);
    expect(said).not.toMatch(/undefined|\[object|NaN|Invalid/);
  });
});

test("a scenario with nothing in it has odds and drivers, all of them numbers", () => {
  const bare = ensembleOf({ weather: TYPED });
  const report = oddsReport(bare, runMembers(bare, 0, 40));
  expect(wrongNumbers(report)).toEqual([]);
  expect(report.holds.share).toBe(1);
  const found = drivers(bare, 40)!;
  expect(wrongNumbers(found)).toEqual([]);
  expect(found.shedding).toEqual([]);
  expect(found.sentences.at(-1)).toMatch(/all hold/);
});

test("members at the far end of what can be numbered run as others do", () => {
  const ensemble = ensembleOf({ weather: TYPED });
  const part = runMembers(ensemble, 999_990, 1_000_000);
  expect(wrongNumbers(oddsReport(ensemble, part))).toEqual([]);
});
