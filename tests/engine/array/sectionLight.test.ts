import { describe, expect, test } from "vitest";
import { MEAN_SHARE, SECTION_SHARE } from "../../../engine/array/slots.ts";
import { panelGroup, preparedAt } from "./oneGroup.ts";

/** A narrow upright plate due south of a place, that hides whatever stands due north of it when the sun is low. */
const plate = (eastM: number, widthM: number) =>
  ({ kind: "box", id: "plate", eastM, northM: -4, heightM: 20, lengthM: widthM, widthM: 0.1, headingDeg: 90 }) as const;
const lowSouth = [{ sunAzimuthDeg: 180, sunElevationDeg: 20 }];
const module = { ratedW: 100, bypassSections: 3, lengthM: 1, widthM: 0.6 };
const facingSouth = { kind: "fixed", tiltDeg: 30, azimuthDeg: 180 } as const;

function shares(group: ReturnType<typeof panelGroup>, ...obstacles: ReturnType<typeof plate>[]) {
  const prepared = preparedAt(group, lowSouth, { obstacles });
  return {
    sections: [...prepared.perStep.subarray(SECTION_SHARE, SECTION_SHARE + prepared.sections)],
    mean: prepared.perStep[MEAN_SHARE]!,
  };
}

test("nothing in the way: every section has the whole beam", () => {
  expect(shares(panelGroup({ mount: facingSouth, module }), plate(50, 1))).toEqual({ sections: [1, 1, 1], mean: 1 });
});

test("a section is as dark as its darkest point", () => {
  // The plate hides 15 of the 20 cm of the module's easternmost stripe: one of its two columns of points.
  const { sections, mean } = shares(panelGroup({ mount: facingSouth, module }), plate(0.25, 0.12));
  expect(sections).toEqual([1, 1, 0]);
  expect(mean).toBeCloseTo(5 / 6, 5);
});

test("bright sections come first, however they stand", () => {
  expect(shares(panelGroup({ mount: facingSouth, module }), plate(0, 0.15)).sections).toEqual([1, 1, 0]);
});

test("wired for even output, the group is one section of the mean light", () => {
  const group = panelGroup({ mount: facingSouth, module: { ...module, wiring: "area" } });
  const { sections, mean } = shares(group, plate(0.25, 0.12));
  expect(sections).toEqual([expect.closeTo(5 / 6, 5)]);
  expect(mean).toBe(sections[0]);
});

describe("two modules, the eastern one wholly in shade", () => {
  const eastern = plate(0.31, 0.58);

  test("in series: six sections, three of them dark", () => {
    const group = panelGroup({ count: 2, inSeries: 2, mount: facingSouth, module });
    expect(shares(group, eastern).sections).toEqual([1, 1, 1, 0, 0, 0]);
  });

  test("side by side: three sections, each carrying half the current", () => {
    const group = panelGroup({ count: 2, inSeries: 1, mount: facingSouth, module });
    expect(shares(group, eastern).sections).toEqual([0.5, 0.5, 0.5]);
  });
});

test("strings side by side share one voltage, so their k-th brightest sections are averaged", () => {
  // One stripe dark in one of two strings.
  const group = panelGroup({ count: 2, inSeries: 1, mount: facingSouth, module });
  expect(shares(group, plate(0.51, 0.15)).sections).toEqual([1, 1, 0.5]);
});

test("modules that do not fill their strings are refused", () => {
  const group = { ...panelGroup({ count: 3 }), inSeries: 2 };
  expect(() => preparedAt(group, lowSouth)).toThrow(
    "count of panel group panels must be a multiple of inSeries (2), got 3",
  );
});
