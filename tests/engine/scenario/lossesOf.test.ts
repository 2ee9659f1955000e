import { expect, test } from "vitest";
import { lossesOf } from "../../../engine/scenario/lossesOf.ts";
import { PanelGroup } from "../../../engine/scenario/panelGroup.ts";

const kept = (parts: object, module: object = {}) =>
  lossesOf(
    PanelGroup.parse({
      ...{ id: "p", name: "P", count: 1, module: { ratedW: 100, ...module } },
      ...{ mount: { kind: "flat" }, at: { eastM: 0, northM: 0, heightM: 1 } },
      ...parts,
    }),
  ).reduce((left, { share }) => left * (1 - share), 1);

test("dirt stands for soiling, snow and age come on top", () => {
  // NREL/TP-6A20-62641 without shading, availability and wiring: 6.8 %.
  const usual = 0.98 * 0.98 * 0.995 * 0.985 * 0.99;
  expect(kept({})).toBeCloseTo(usual, 12);
  expect(kept({ dirtShare: 0.05 })).toBeCloseTo((usual / 0.98) * 0.95, 12);
  expect(kept({ snowShare: 0.3 })).toBeCloseTo(usual * 0.7, 12);
  expect(kept({ losses: [{ name: "dust", share: 0.03 }], dirtShare: 0.05 })).toBeCloseTo(0.97 * 0.95, 12);
  expect(kept({ losses: [] })).toBe(1);
  // 0.6 % a year, by hand: 0.994² = 0.988036.
  expect(kept({ losses: [] }, { ageYears: 2 })).toBeCloseTo(0.988036, 12);
});

test("kinds of cells take heat as their data sheets have it, and a typed figure goes before", () => {
  const module = (parts: object) =>
    PanelGroup.shape.module.parse({ ratedW: 100, ...parts }) as {
      powerTempCoeffPerK: number;
      vocTempCoeffPerK: number;
    };
  expect(module({}).powerTempCoeffPerK).toBe(-0.0037);
  // Data sheets' ranges, from memory: mono −0.0034 to −0.0037, older poly −0.0040 to −0.0045, heterojunction −0.0026 to −0.0030.
  for (const [cellKind, low, high] of [
    ["mono", -0.0037, -0.0034],
    ["poly", -0.0045, -0.004],
    ["heterojunction", -0.003, -0.0026],
  ] as const) {
    expect(module({ cellKind }).powerTempCoeffPerK).toBeGreaterThanOrEqual(low);
    expect(module({ cellKind }).powerTempCoeffPerK).toBeLessThanOrEqual(high);
  }
  expect(module({ cellKind: "poly", powerTempCoeffPerK: -0.003 }).powerTempCoeffPerK).toBe(-0.003);
});
