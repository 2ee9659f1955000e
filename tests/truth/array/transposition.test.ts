import { expect, test } from "vitest";
import { makeDomeLight, SUN_WM2 } from "../../../engine/array/domeLight.ts";
import { groupDetail } from "../../../engine/array/groupDetail.ts";
import { COS_INCIDENCE } from "../../../engine/array/slots.ts";
import { stepDome } from "../../../engine/array/stepDome.ts";
import { panelGroup, preparedAt, steadyLight } from "../../engine/array/oneGroup.ts";
import { groupBusW } from "../../groupBusW.ts";
import truth from "../data/transposition.json";
import { record } from "../record.ts";

const columns = truth.rows.columns;
const rows = truth.rows.rows.map((row) => Object.fromEntries(columns.map((name, c) => [name, row[c]!])));

const models = [
  { transposition: "isotropic", sky: "skyIsotropic", source: "Liu & Jordan 1963", tolerance: 0.002 },
  { transposition: "hayDavies", sky: "skyHayDavies", source: "Hay & Davies 1980", tolerance: 0.002 },
  { transposition: "perez", sky: "skyPerez", source: "Perez et al. 1990, all sites", tolerance: 0.002 },
] as const;

/** Light on the plane of one row, as the step function has it. */
function planeOf(row: Record<string, number>, transposition: (typeof models)[number]["transposition"]) {
  const group = panelGroup({
    mount: { kind: "fixed", tiltDeg: row.tilt!, azimuthDeg: row.surfaceAzimuth! },
  });
  const prepared = preparedAt(
    group,
    [
      {
        sunAzimuthDeg: row.sunAzimuth!,
        sunElevationDeg: 90 - row.zenith!,
        extraterrestrialWm2: row.extraterrestrial!,
      },
    ],
    { models: { transposition, albedoShare: row.albedo! } },
  );
  const detail = groupDetail(1);
  groupBusW(prepared, 0, steadyLight(1, row.ghi!, row.dni!, row.dhi!), new Float64Array(1), 13, detail);
  return { planeWm2: detail.planeWm2[0]!, prepared };
}

test.each(models)("light on a tilted plane, $transposition", ({ transposition, sky, source, tolerance }) => {
  let worst = 0;
  for (const row of rows) {
    const wantedWm2 = row.beam! + row[sky]! + row.ground!;
    worst = Math.max(worst, Math.abs(planeOf(row, transposition).planeWm2 - wantedWm2));
  }
  const n = rows.length;
  const why = "beam, sky and ground together; the table has three decimals, angles four, prepared values steps of 1e-6";
  record({ what: `light on a tilted plane, ${transposition}`, source, tolerance, why, worst, unit: "W/m²", n });
  expect(n).toBe(117);
  expect(worst).toBeLessThan(tolerance);
});

test.each([
  { transposition: "hayDavies", column: "hdCircumsolar", source: "Hay & Davies 1980" },
  { transposition: "perez", column: "pzCircumsolar", source: "Perez et al. 1990, all sites" },
] as const)("the part of the sky beside the sun, $transposition", ({ transposition, column, source }) => {
  let worst = 0;
  for (const row of rows) {
    const { prepared } = planeOf(row, transposition);
    const sorted = makeDomeLight(transposition, 1, 1);
    stepDome(prepared.dome, steadyLight(1, row.ghi!, row.dni!, row.dhi!), new Float64Array(1), sorted, 0);
    const besideSunWm2 = (sorted.rows[SUN_WM2]! - row.dni!) * prepared.perStep[COS_INCIDENCE]!;
    worst = Math.max(worst, Math.abs(besideSunWm2 - row[column]!));
  }
  const tolerance = 0.001;
  const why = "the table has three decimals, prepared values steps of 1e-6";
  const what = `sky light from beside the sun, ${transposition}`;
  record({ what, source, tolerance, why, worst, unit: "W/m²", n: rows.length });
  expect(worst).toBeLessThan(tolerance);
});

test("the textbook's hour on a steep slope over bright ground", () => {
  // Duffie & Beckman, Example 2.15.1: 40° N, 20 Feb, 9–10 h, slope 60° south, ground 0.6. Declination and hour angle
  // as the book has them give zenith 61.9° and Rb 1.71; here Rb 1.7133 and the light are the file's.
  const { recomputed } = truth.textbookCheck;
  const mjToWm2 = 1e6 / 3600;
  const ghiWm2 = 1.04 * mjToWm2;
  const dhiWm2 = ghiWm2 * recomputed.diffuseFraction;
  const cosZenith = 0.47;
  const dniWm2 = (ghiWm2 - dhiWm2) / cosZenith;
  const sky = { isotropic: recomputed.isotropicTotalMJ, hayDavies: recomputed.hayDaviesTotalMJ };
  const sunElevationDeg = (Math.asin(cosZenith) * 180) / Math.PI;
  // The bearing at which the plane's Rb is the book's.
  const cosIncidence = recomputed.Rb * cosZenith;
  const level = Math.sqrt(1 - cosZenith * cosZenith);
  const bearing = Math.acos((cosIncidence - 0.5 * cosZenith) / (Math.sqrt(0.75) * level));
  let worst = 0;
  for (const transposition of ["isotropic", "hayDavies"] as const) {
    const prepared = preparedAt(
      panelGroup({ mount: { kind: "fixed", tiltDeg: 60, azimuthDeg: 180 } }),
      [
        {
          sunAzimuthDeg: 180 - (bearing * 180) / Math.PI,
          sunElevationDeg,
          extraterrestrialWm2: dniWm2 / recomputed.anisotropyIndex,
        },
      ],
      { models: { transposition, albedoShare: 0.6 } },
    );
    const detail = groupDetail(1);
    groupBusW(prepared, 0, steadyLight(1, ghiWm2, dniWm2, dhiWm2), new Float64Array(1), 13, detail);
    worst = Math.max(worst, Math.abs(detail.planeWm2[0]! / mjToWm2 - sky[transposition]));
  }
  const tolerance = 0.001;
  const source = "Duffie & Beckman, Solar Engineering of Thermal Processes, Example 2.15.1 (from memory, recomputed)";
  const why = "the book's four digits";
  record({ what: "a textbook hour on a slope", source, tolerance, why, worst, unit: "MJ/m²", n: 2 });
  expect(worst).toBeLessThan(tolerance);
});
