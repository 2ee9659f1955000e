import { existsSync, readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { expect, test } from "vitest";
import { panelGroup, perfect, preparedAt, steadyLight } from "../../engine/array/oneGroup.ts";
import { groupBusW } from "../../groupBusW.ts";
import { record, recordSkipped } from "../record.ts";

const folder = fileURLToPath(new URL("../../../../shared/data/power/", import.meta.url));

interface Row {
  readonly day: string;
  readonly planeWm2: number;
  readonly airC: number;
  readonly powerW: number;
}

function rowsOf(file: string, powerColumn: string): Row[] {
  const lines = readFileSync(folder + file, "utf8")
    .trim()
    .split("\n");
  const columns = lines[0]!.split(",");
  const at = (name: string) => columns.indexOf(name);
  return lines
    .slice(1)
    .map((line) => line.split(","))
    .map((cells) => ({
      day: cells[0]!.slice(0, 10),
      planeWm2: Number(cells[at("poa")] || Number.NaN),
      airC: Number(cells[at("t_amb")] || Number.NaN),
      powerW: Number(cells[at(powerColumn)] || Number.NaN),
    }))
    .filter((row) => [row.planeWm2, row.airC, row.powerW].every(Number.isFinite));
}

/** What our chain makes of light measured on the plane: air to cells to watts, for one rated watt with air all round and 1 m/s of wind. */
function modelledW(rows: readonly Row[]): Float64Array {
  const group = panelGroup({
    module: { ratedW: 100, vmpV: 20, impA: 5, vocV: 24 },
    controller: perfect(),
  });
  const prepared = preparedAt(group, [{ sunAzimuthDeg: 180, sunElevationDeg: 90 }], {
    models: { transposition: "isotropic" },
  });
  return Float64Array.from(rows, ({ planeWm2, airC }) => {
    if (planeWm2 <= 0) return 0;
    const light = steadyLight(1, planeWm2, 0, planeWm2);
    return groupBusW(prepared, 0, light, Float64Array.of(airC), 13) / 100;
  });
}

/** Energy of each day, modelled for one rated watt and measured. */
function dayPairs(rows: readonly Row[]): [modelled: number, measured: number][] {
  const modelled = modelledW(rows);
  const days = new Map<string, [number, number]>();
  rows.forEach((row, k) => {
    const pair = days.get(row.day) ?? [0, 0];
    days.set(row.day, [pair[0] + modelled[k]! / 4, pair[1] + row.powerW / 4]);
  });
  return [...days.values()];
}

/** The rated watts of an array that nobody published: what its days say together. */
const ratedBy = (pairs: readonly (readonly [number, number])[]) =>
  pairs.reduce((sum, [, measured]) => sum + measured, 0) / pairs.reduce((sum, [modelled]) => sum + modelled, 0);

/** Records and asserts how the days' energy compares; a bias says nothing where the rating is that of the same days. */
function compare(
  what: string,
  source: string,
  pairs: readonly (readonly [number, number])[],
  ratedW: number,
  isOwnRating = false,
): void {
  const total = pairs.reduce((sum, [, measured]) => sum + measured, 0);
  const bias = (ratedW * pairs.reduce((sum, [modelled]) => sum + modelled, 0)) / total - 1;
  const squares = pairs.reduce((sum, [modelled, measured]) => sum + ((ratedW * modelled) / measured - 1) ** 2, 0);
  const rms = Math.sqrt(squares / pairs.length);
  const n = pairs.length;
  const row = { source, unit: "%", n };
  if (!isOwnRating)
    record({
      ...row,
      what: `${what}: bias`,
      tolerance: 3,
      why: "what a season's wind and dirt move",
      worst: Math.abs(100 * bias),
    });
  record({
    ...row,
    what: `${what}: rms of days`,
    tolerance: 6,
    why: "wind is 1 m/s all the time, and dim light sags",
    worst: 100 * rms,
  });
  expect(Math.abs(bias)).toBeLessThan(0.03);
  expect(rms).toBeLessThan(0.06);
}

const CWRU = "Case Western Reserve University, sample of one monitored system, 2016, 15-minute (MIT licence)";
const NREL = "NREL, roof array at Golden, 4 and 5 January 2022, 15-minute (MIT-licensed sample)";

test("an array's days in July are foretold by its days in January, and the other way about", () => {
  const what = "a measured array's daily energy from light on its plane and air";
  if (!existsSync(folder)) {
    recordSkipped({ what, source: CWRU, skipped: "no ../shared/data/power beside this checkout" });
    return;
  }
  const january = dayPairs(rowsOf("pv-sample-3kw-2016-01.csv", "p_w"));
  const july = dayPairs(rowsOf("pv-sample-3kw-2016-07.csv", "p_w"));
  expect(january.length).toBe(31);
  expect(july.length).toBe(31);
  // Its rated watts are not published: each month is held to what the other says of them.
  compare(`${what}, July by January's rating`, CWRU, july, ratedBy(january));
  compare(`${what}, January by July's rating`, CWRU, january, ratedBy(july));
});

test("two snowless winter days on a roof, and what snow takes", () => {
  const what = "a roof array's daily energy in winter, rating by the two days";
  if (!existsSync(folder)) {
    recordSkipped({ what, source: NREL, skipped: "no ../shared/data/power beside this checkout" });
    return;
  }
  const rows = rowsOf("golden-co-serf-west-2022-01.csv", "dc_w");
  const on = (...days: string[]) => dayPairs(rows.filter(({ day }) => days.includes(day)));
  const bare = on("2022-01-04", "2022-01-05");
  const ratedW = ratedBy(bare);
  compare(what, NREL, bare, ratedW, true);
  // The source says: partly under snow on the 2nd, wholly on the 6th. As a share of the light: what snowShare is for.
  const lost = (day: string) => {
    const [pair] = on(day);
    return 1 - pair![1] / (ratedW * pair![0]);
  };
  expect(lost("2022-01-06")).toBeGreaterThan(0.9);
  expect(lost("2022-01-02")).toBeGreaterThan(0.1);
  expect(lost("2022-01-02")).toBeLessThan(0.5);
});
