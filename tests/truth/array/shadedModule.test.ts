import { describe, expect, test } from "vitest";
import { groupDetail } from "../../../engine/array/groupDetail.ts";
import type { Models } from "../../../engine/scenario/models.ts";
import { panelGroup, perfect, preparedAt, shadeStep, steadyLight } from "../../engine/array/oneGroup.ts";
import { groupBusW } from "../../groupBusW.ts";
import truth from "../data/shaded-module.json";
import { record } from "../record.ts";
import { currentAt, oneDimCell, powerPoint } from "./singleDiodeString.ts";

const source = "single-diode cells, 45 °C, 0.5 V diodes (tests/truth/data/shaded-module.json)";
/** 36 cells at 45 °C stand at 17.4 V at the power point and 21.3 V open, as the single-diode string does. */
const WARM_K = 20;
const VMP_V = 17.4 / (1 - 0.0035 * WARM_K);
const VOC_V = 21.3 / (1 - 0.0028 * WARM_K);

interface Shade {
  cells: number;
  inSeries?: number;
  /** Light of each section, bright to dark. */
  sections: number[];
  meanShare: number;
  kind?: "mppt" | "pwm";
  stepDownOnly?: boolean;
  sectionRule?: Models["sectionRule"];
}

/** Runs one string with its sections in the given light, cells at 45 °C, full sun, bank at 13.2 V. */
function run(shade: Shade) {
  const { cells, inSeries = 1, sections, kind = "mppt", stepDownOnly = false, sectionRule = "kthBrightest" } = shade;
  const module = {
    ratedW: 100,
    vmpV: (VMP_V * cells) / 36,
    impA: (100 * 36) / cells / VMP_V,
    vocV: (VOC_V * cells) / 36,
    powerTempCoeffPerK: -0.0035,
    vocTempCoeffPerK: -0.0028,
    bypassSections: sections.length / inSeries,
    cells,
  };
  const group = panelGroup({ count: inSeries, inSeries, module, controller: perfect({ kind, stepDownOnly }) });
  const prepared = preparedAt(group, [{ sunAzimuthDeg: 180, sunElevationDeg: 90 }], {
    models: { transposition: "isotropic", sectionRule },
  });
  shadeStep(prepared, 0, sections, shade.meanShare);
  const heatedK = 1000 * shade.meanShare * (1 / (25 + 6.84));
  const detail = groupDetail(1);
  groupBusW(prepared, 0, steadyLight(1, 1000, 1000, 0), Float64Array.of(45 - heatedK), 13.2, detail);
  return { busW: detail.busW[0]!, mppV: detail.mppV[0]!, sectionsConducting: detail.sectionsConducting[0]! };
}

const rows = truth.rows.map((row) => ({
  cells: row[0]!,
  diodes: row[1]!,
  light: row[2]!,
  mpptShare: row[3]!,
  mpptV: row[4] ?? null,
  pwmShare: row[5] ?? null,
}));

function dimCell(row: { cells: number; diodes: number; light: number }) {
  const sections = [...Array.from({ length: row.diodes - 1 }, () => 1), row.light];
  return { cells: row.cells, sections, meanShare: 1 - (1 - row.light) / row.cells };
}
const even = (row: { cells: number; diodes: number }) => dimCell({ ...row, light: 1 });

describe("the printed table and the physics behind it", () => {
  test("single-diode cells give the table", () => {
    let worst = 0;
    let worstV = 0;
    for (const row of rows) {
      const full = powerPoint(oneDimCell(row.cells, row.diodes, 1));
      const shaded = powerPoint(oneDimCell(row.cells, row.diodes, row.light));
      worst = Math.max(worst, Math.abs(shaded.powerW / full.powerW - row.mpptShare));
      if (row.mpptV !== null) worstV = Math.max(worstV, Math.abs(shaded.voltV - row.mpptV));
    }
    expect(worst).toBeLessThan(0.006);
    expect(worstV).toBeLessThan(0.1);
  });
});

describe("a step-up controller", () => {
  // A section in hard shade is bypassed; how dark exactly no longer matters.
  const hard = rows.filter((row) => row.light < 0.5 || (row.light === 0.5 && row.diodes === 3));
  const mild = rows.filter((row) => !hard.includes(row));

  test("keeps of a module with a bypassed section what the table says", () => {
    let worst = 0;
    let worstV = 0;
    for (const row of hard) {
      const shaded = run(dimCell(row));
      worst = Math.max(worst, Math.abs(shaded.busW / run(even(row)).busW - row.mpptShare));
      if (row.mpptV !== null) worstV = Math.max(worstV, Math.abs(shaded.mppV - row.mpptV));
      expect(shaded.sectionsConducting).toBe(row.diodes - 1);
    }
    const n = hard.length;
    const why = "the table has two decimals";
    record({
      what: "module with a section in hard shade",
      source,
      tolerance: 0.005,
      why,
      worst,
      unit: "of unshaded",
      n,
    });
    record({ what: "its volts", source, tolerance: 0.1, why: "one decimal", worst: worstV, unit: "V", n });
    expect(n).toBe(8);
    expect(worst).toBeLessThan(0.003);
    expect(worstV).toBeLessThan(0.1);
  });

  test("gives less than the table in mild shade, never more", () => {
    let worst = 0;
    for (const row of mild) {
      const off = run(dimCell(row)).busW / run(even(row)).busW - row.mpptShare;
      expect(off).toBeLessThan(0);
      worst = Math.max(worst, -off);
    }
    const n = mild.length;
    const why = "the k-th brightest section sets the current: on the cautious side by up to this much";
    const what = "module with a cell in mild shade (always too low)";
    record({ what, source, tolerance: 0.135, why, worst, unit: "of unshaded", n });
    expect(worst).toBeLessThan(0.135);
  });

  test("the mild-shade rule gives the whole table", () => {
    let worst = 0;
    for (const row of rows) {
      const shaded = run({ ...dimCell(row), sectionRule: "mildShade" });
      worst = Math.max(worst, Math.abs(shaded.busW / run(even(row)).busW - row.mpptShare));
    }
    const why = "two constants fitted to curves of another shape";
    const n = rows.length;
    record({ what: "the same, mild-shade rule", source, tolerance: 0.006, why, worst, unit: "of unshaded", n });
    expect(worst).toBeLessThan(0.006);
  });

  test("the mild-shade rule stays near single-diode strings when a whole section is evenly dim", () => {
    let high = 0;
    let low = 0;
    let n = 0;
    for (const diodes of [2, 3, 6]) {
      const each = 36 / diodes;
      const full = powerPoint(oneDimCell(36, diodes, 1)).powerW;
      for (const light of [0.9, 0.75, 0.6, 0.45, 0.3]) {
        const bright = Array.from({ length: diodes - 1 }, () => [{ cells: each, light: 1 }]);
        const real = powerPoint([...bright, [{ cells: each, light }]]).powerW / full;
        const sections = [...bright.map(() => 1), light];
        const shaded = run({ cells: 36, sections, meanShare: 1 - (1 - light) / diodes, sectionRule: "mildShade" });
        const off = shaded.busW / run(even({ cells: 36, diodes })).busW - real;
        high = Math.max(high, off);
        low = Math.min(low, off);
        n++;
      }
    }
    const why = "the rule knows the mean light but not how it is spread over the cells";
    const worst = Math.max(high, -low);
    const what = "a section evenly dim, mild-shade rule";
    record({ what, source: "single-diode cells, 45 °C", tolerance: 0.056, why, worst, unit: "of unshaded", n });
    expect(high).toBeLessThan(0.056);
    expect(low).toBeGreaterThan(-0.02);
  });

  test("keeps 0.82 of two modules in series that lose one group of six", () => {
    const shade = { cells: 36, inSeries: 2, sections: [1, 1, 1, 1, 1, 0], meanShare: 5 / 6 };
    const share = run(shade).busW / run({ ...shade, sections: [1, 1, 1, 1, 1, 1], meanShare: 1 }).busW;
    const worst = Math.abs(share - 0.82);
    const why = "the figure has two decimals";
    record({
      what: "two modules, one group of six lost",
      source,
      tolerance: 0.005,
      why,
      worst,
      unit: "of unshaded",
      n: 1,
    });
    expect(worst).toBeLessThan(0.005);
  });
});

describe("a controller that only steps down to a 12 V bank", () => {
  test("gets of a lone 36-cell module with a section bypassed what a tied one gives, for its power point lies below the bank", () => {
    const passed = run({ ...dimCell({ cells: 36, diodes: 3, light: 0 }), stepDownOnly: true });
    expect(passed.sectionsConducting).toBe(2);
    // The table's module tied to 13.2 V keeps 0.40 of its current; it falls steeply from there.
    const keptShare = passed.busW / run(even({ cells: 36, diodes: 3 })).busW;
    expect(keptShare).toBeGreaterThan(0.05);
    expect(keptShare).toBeLessThan(0.45);
    expect(run({ ...even({ cells: 36, diodes: 3 }), stepDownOnly: true }).busW).toBeGreaterThan(90);
  });

  test("gets what all sections carry together while the shade is thin enough", () => {
    const shaded = run({ ...dimCell({ cells: 36, diodes: 3, light: 0.5 }), stepDownOnly: true });
    expect(shaded.busW / run(even({ cells: 36, diodes: 3 })).busW).toBeCloseTo(0.5, 4);
    expect(shaded.sectionsConducting).toBe(3);
  });

  test("keeps 0.82 of two such modules in series", () => {
    const shade = { cells: 36, inSeries: 2, sections: [1, 1, 1, 1, 1, 0], meanShare: 5 / 6, stepDownOnly: true };
    expect(run(shade).sectionsConducting).toBe(5);
  });
});

describe("a PWM controller", () => {
  test("brings a 120 W module of 17 V and 7 A to 84 W at 12 V", () => {
    // A trade explainer's example: the panel runs at the battery's volts.
    const module = { ratedW: 120, vmpV: 17, impA: 7, vocV: 21, bypassSections: 1 };
    const group = panelGroup({ module, controller: perfect({ kind: "pwm" }) });
    const prepared = preparedAt(group, [{ sunAzimuthDeg: 180, sunElevationDeg: 90 }], {
      models: { transposition: "isotropic" },
    });
    const worst = Math.abs(groupBusW(prepared, 0, steadyLight(1, 1000, 1000, 0), Float64Array.of(20), 12) - 84);
    const why = "the same arithmetic";
    record({
      what: "120 W module by PWM at 12 V",
      source: "trade explainer",
      tolerance: 0.001,
      why,
      worst,
      unit: "W",
      n: 1,
    });
    expect(worst).toBeLessThan(0.001);
  });

  test("keeps of a shaded module's current what the table says", () => {
    let worst = 0;
    let n = 0;
    for (const row of rows) {
      if (row.pwmShare === null) continue;
      const share = run({ ...dimCell(row), kind: "pwm" }).busW / run({ ...even(row), kind: "pwm" }).busW;
      worst = Math.max(worst, Math.abs(share - row.pwmShare));
      n++;
    }
    const why = "near a section's open voltage the current depends on tenths of a volt; elsewhere within 0.001";
    record({ what: "shaded module by PWM at 13.2 V", source, tolerance: 0.053, why, worst, unit: "of unshaded", n });
    expect(n).toBe(8);
    expect(worst).toBeLessThan(0.053);
  });

  test("falls past the power point as single-diode cells do", () => {
    const sections = oneDimCell(36, 1, 1);
    const { powerW, voltV } = powerPoint(sections);
    const impA = powerW / voltV;
    let worst = 0;
    let n = 0;
    for (let busV = 8; busV < 21.5; busV += 0.5) {
      const prepared = preparedAt(
        panelGroup({
          module: {
            ratedW: 100,
            vmpV: VMP_V,
            vocV: VOC_V,
            powerTempCoeffPerK: -0.0035,
            vocTempCoeffPerK: -0.0028,
            bypassSections: 1,
          },
          controller: perfect({ kind: "pwm" }),
        }),
        [{ sunAzimuthDeg: 180, sunElevationDeg: 90 }],
        { models: { transposition: "isotropic" } },
      );
      const air = Float64Array.of(45 - 1000 / (25 + 6.84));
      const share = groupBusW(prepared, 0, steadyLight(1, 1000, 1000, 0), air, busV) / busV / (100 / VMP_V);
      worst = Math.max(worst, Math.abs(share - currentAt(sections, busV) / impA));
      n++;
    }
    const why = "1 up to the power point and 1 − x² past it, for a curve that starts at 1.07";
    const what = "current of a PWM panel by volts";
    record({ what, source: "single-diode cells, 45 °C", tolerance: 0.072, why, worst, unit: "of Imp", n });
    expect(worst).toBeLessThan(0.072);
  });
});
