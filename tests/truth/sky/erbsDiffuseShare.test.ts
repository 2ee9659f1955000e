import { expect, test } from "vitest";
import reference from "../data/decomposition.json" with { type: "json" };
import { record } from "../record.ts";
import { erbsDiffuseShare } from "./erbsDiffuseShare.ts";

const source = "Erbs, Klein & Duffie, Solar Energy 28 (1982) 293–302, eq. 1";

test("the diffuse share is the published correlation's", () => {
  let worst = 0;
  for (const [kt, share] of reference.diffuseFraction.rows as [number, number][]) {
    worst = Math.max(worst, Math.abs(erbsDiffuseShare(kt) - share));
  }
  const rows = reference.diffuseFraction.rows.length;
  const what = "diffuse share of GHI by clearness";
  const why = "a closed polynomial; the reference has six decimals";
  record({ what, source, tolerance: 1e-6, why, worst, unit: "", n: rows });
  expect(worst).toBeLessThan(1e-6);
});

test("an hour's beam and sky light follow from it", () => {
  let worst = 0;
  for (const row of reference.hourly.rows as number[][]) {
    const [zenith, , above, ghi, , , dni, dhi] = row as [
      number,
      number,
      number,
      number,
      number,
      number,
      number,
      number,
    ];
    const cosine = Math.cos((zenith * Math.PI) / 180);
    const share = erbsDiffuseShare(ghi / (above * cosine));
    worst = Math.max(worst, Math.abs(ghi * share - dhi), Math.abs((ghi * (1 - share)) / cosine - dni));
  }
  record({
    what: "DNI and DHI of an hour by the published correlation",
    source,
    tolerance: 0.001,
    why: "GHI in the reference has two decimals, divided by the sine of a low sun",
    worst,
    unit: "W/m²",
    n: reference.hourly.rows.length * 2,
  });
  expect(worst).toBeLessThan(0.001);
});
