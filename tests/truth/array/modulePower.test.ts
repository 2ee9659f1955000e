import { expect, test } from "vitest";
import { groupDetail } from "../../../engine/array/groupDetail.ts";
import { heatKPerWm2 } from "../../../engine/array/heatKPerWm2.ts";
import { incidenceShare } from "../../../engine/array/incidenceShare.ts";
import { panelGroup, perfect, preparedAt, steadyLight } from "../../engine/array/oneGroup.ts";
import { groupBusW } from "../../groupBusW.ts";
import truth from "../data/module-power.json";
import { record } from "../record.ts";

test.each([
  { model: "ashrae", column: 1, source: "Souka & Safwat 1966, ASHRAE 93-77" },
  { model: "physical", column: 2, source: "De Soto et al. 2006" },
] as const)("light through the glass at a slant, $model", ({ model, column, source }) => {
  let worst = 0;
  for (const row of truth.iam.rows) {
    const cosIncidence = row[0] === 90 ? 0 : Math.cos((row[0]! * Math.PI) / 180);
    worst = Math.max(worst, Math.abs(incidenceShare(model, cosIncidence) - row[column]!));
  }
  const tolerance = 1e-6;
  const n = truth.iam.rows.length;
  record({ what: `light through glass, ${model}`, source, tolerance, why: "six decimals", worst, unit: "", n });
  expect(n).toBe(21);
  expect(worst).toBeLessThan(tolerance);
});

test("cells as warm and modules as strong as Faiman's formula makes them", () => {
  let worstTemp = 0;
  let worstW = 0;
  for (const row of truth.power.rows) {
    const [planeWm2, airTempC, windMs, , , ratedW, gamma, cellTempC] = row as number[];
    const powerW = row[10]!;
    const module = { ratedW: ratedW!, vmpV: 20, impA: ratedW! / 20, vocV: 24, powerTempCoeffPerK: gamma! };
    const prepared = preparedAt(
      panelGroup({ module, controller: perfect() }),
      [{ sunAzimuthDeg: 180, sunElevationDeg: 90, windMs: windMs! }],
      { models: { transposition: "isotropic" } },
    );
    const detail = groupDetail(1);
    groupBusW(prepared, 0, steadyLight(1, planeWm2!, planeWm2!, 0), Float64Array.of(airTempC!), 13, detail);
    worstTemp = Math.max(worstTemp, Math.abs(detail.cellTempC[0]! - cellTempC!));
    worstW = Math.max(worstW, Math.abs(detail.dcW[0]! - powerW));
  }
  const n = truth.power.rows.length;
  const why = "heating is prepared in steps of 1e-6 K m²/W";
  const tempRow = { what: "cell temperature, open rack", source: "Faiman 2008", tolerance: 0.001, why };
  record({ ...tempRow, worst: worstTemp, unit: "K", n });
  const source = "PVWatts v5 (Dobos 2014)";
  record({ what: "power by light and temperature", source, tolerance: 0.001, why, worst: worstW, unit: "W", n });
  expect(n).toBe(36);
  expect(worstTemp).toBeLessThan(0.001);
  expect(worstW).toBeLessThan(0.001);
});

test("King's three mountings at 1000 W/m², 30 °C and 1 m/s", () => {
  // Reproduced in the trade facts from Sandia SAND2004-3535; the temperatures and shares are its arithmetic.
  const rows = [
    { cooling: "openRack", cellTempC: 59.4, powerShare: 0.862 },
    { cooling: "closeRoof", cellTempC: 79.5, powerShare: 0.782 },
    { cooling: "onRoof", cellTempC: 87.5, powerShare: 0.75 },
  ] as const;
  let worst = 0;
  for (const row of rows) {
    const cellTempC = 30 + 1000 * heatKPerWm2("sandia", row.cooling, 1);
    worst = Math.max(worst, Math.abs(cellTempC - row.cellTempC));
    expect(1 - 0.004 * (cellTempC - 25)).toBeCloseTo(row.powerShare, 3);
  }
  const source = "King et al. 2004, SAND2004-3535 (coefficients from memory)";
  record({
    what: "cell temperature, three mountings",
    source,
    tolerance: 0.06,
    why: "one decimal",
    worst,
    unit: "K",
    n: 3,
  });
  expect(worst).toBeLessThan(0.06);
});

test("Faiman's form for panels on roofs keeps to King's curves", () => {
  let worst = 0;
  let n = 0;
  for (const cooling of ["closeRoof", "onRoof"] as const) {
    for (let windMs = 0; windMs <= 8; windMs += 0.5) {
      const off = 1000 * (heatKPerWm2("faiman", cooling, windMs) - heatKPerWm2("sandia", cooling, windMs));
      worst = Math.max(worst, Math.abs(off));
      n++;
    }
  }
  const source = "King et al. 2004, SAND2004-3535 (coefficients from memory)";
  const why = "two coefficients fitted to a curve of another shape, 0…8 m/s at 1000 W/m²";
  record({ what: "Faiman's form on roofs", source, tolerance: 0.6, why, worst, unit: "K", n });
  expect(worst).toBeLessThan(0.6);
  // An independent field figure for a panel with no air behind it: Ross k = 0.0563 K m²/W (Skoplaki & Palyvos 2009).
  const ross = Math.abs(heatKPerWm2("faiman", "onRoof", 1) - 0.0563) * 1000;
  record({
    what: "a panel with no air behind it, 1 m/s",
    source: "Ross's k after Skoplaki & Palyvos 2009",
    tolerance: 1.5,
    why: "two field studies of different roofs, at 1000 W/m²",
    worst: ross,
    unit: "K",
    n: 1,
  });
  expect(ross).toBeLessThan(1.5);
});
