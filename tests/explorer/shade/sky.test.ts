import { expect, test } from "vitest";
import { DARK, OPEN, sunKind } from "../../../engine/answers/shade/sunKind.ts";
import { lightThrough, prepareObstacles } from "../../../engine/shade/index.ts";
import { compassMarks, compassPoint, nearBearing, skyView, spanPath } from "../../../explorer/entries/shade/skyView.ts";
import { pathStretches, sunPath } from "../../../explorer/entries/shade/sunPath.ts";

const DAY_MS = Date.UTC(2026, 2, 20);

test("at the equinox the sun rises in the east, stands as high as the latitude leaves, and sets in the west", () => {
  const path = sunPath(46.93, 0, DAY_MS, DAY_MS + 86_400_000);
  const highest = Math.max(...path.elevationDeg);
  expect(Math.abs(highest - (90 - 46.93))).toBeLessThan(0.5); // declination within half a degree of 0 all day
  expect(Math.abs(path.bearingDeg[0]! - 90)).toBeLessThan(2);
  expect(Math.abs(path.bearingDeg.at(-1)! - 270)).toBeLessThan(2);
});

test("the window holds the sun's way: about the south in the north, about the north in the south", () => {
  for (const [latitudeDeg, centreDeg] of [
    [46.93, 180],
    [-33.9, 0],
  ] as const) {
    const path = sunPath(latitudeDeg, 0, DAY_MS, DAY_MS + 86_400_000);
    const view = skyView([path], 480, 320);
    expect(Math.abs(nearBearing(view.centreDeg, centreDeg) - centreDeg)).toBeLessThanOrEqual(5);
    path.bearingDeg.forEach((bearingDeg, i) => {
      const x = view.x(nearBearing(bearingDeg, view.centreDeg));
      const y = view.y(path.elevationDeg[i]!);
      expect(x > 0 && x < 480 && y > 0 && y <= 320).toBe(true);
    });
    expect(compassMarks(view).map((mark) => mark.name)).toContain(latitudeDeg > 0 ? "S" : "N");
  }
});

test("an outline over the window's seam is drawn on both sides; what is elsewhere is not drawn", () => {
  const view = { ...skyView([], 400, 300), centreDeg: 180, halfDeg: 180, x: (deg: number) => (deg / 360) * 400 };
  const over = [-10, 10].map((bearingDeg) => ({ bearingDeg, lowDeg: 0, highDeg: 10 }));
  expect(spanPath(view, over).match(/M/g)).toHaveLength(2);
  const narrow = skyView([], 400, 300);
  expect(spanPath(narrow, over)).toBe("");
});

test("a way is cut where the light changes, and every stretch is of one kind", () => {
  const path = sunPath(46.93, 0, DAY_MS, DAY_MS + 86_400_000);
  const wall = prepareObstacles([
    { kind: "box", id: "b", eastM: 0, northM: -10, baseM: 0, heightM: 40, lengthM: 2, widthM: 6, headingDeg: 0 },
  ]);
  const eye = { eastM: 0, northM: 0, upM: 1 };
  const stretches = pathStretches(path, wall, eye);
  expect(stretches.map((stretch) => stretch.kind)).toEqual([OPEN, DARK, OPEN]);
  for (const { kind, from, to } of stretches) {
    for (let i = from; i < to; i++) {
      expect(sunKind(lightThrough(wall, eye, path.bearingDeg[i]!, path.elevationDeg[i]!))).toBe(kind);
    }
  }
  expect(stretches[0]!.from).toBe(0);
  expect(stretches.at(-1)!.to).toBe(path.ms.length - 1);
});

test("bearings are named by the nearest of eight points", () => {
  expect([0, 22, 23, 180, 337, 338, -90].map(compassPoint)).toEqual(["N", "N", "NE", "S", "NW", "N", "W"]);
});
