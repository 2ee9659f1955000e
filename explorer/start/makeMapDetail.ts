import { type GeoProjection, geoPath } from "d3";
import { createEffect, createMemo, createSignal } from "solid-js";

/** What docs/fits/provinces.ts writes: lines in hundredths of a degree, each point as the step from the one before; nothing in the page that is one file. */
interface Detail {
  readonly borders: readonly (readonly number[])[];
  readonly lakes: readonly (readonly (readonly number[])[])[];
}

/** Borders of states and provinces, and lakes, as paths; fetched once one looks closer than the world, and empty until then. */
export function makeMapDetail(view: () => number, projection: () => GeoProjection) {
  const [detail, setDetail] = createSignal<ReturnType<typeof shapesOf> | null>(null);
  let isAsked = false;
  createEffect(() => {
    if (view() === 0 || isAsked) return;
    isAsked = true;
    import("../place/data/provinces.json").then(
      (file) => setDetail(shapesOf(file.default as unknown as Detail | "")),
      () => {}, // the map does without
    );
  });
  return createMemo(() => {
    const shapes = detail();
    if (view() === 0 || shapes === null) return { states: "", lakes: "" };
    const path = geoPath(projection()).digits(1);
    return { states: path(shapes.borders) ?? "", lakes: path(shapes.lakes) ?? "" };
  });
}

function shapesOf(detail: Detail | "") {
  const { borders, lakes } = detail === "" ? { borders: [], lakes: [] } : detail;
  return {
    borders: { type: "MultiLineString" as const, coordinates: borders.map(pointsOf) },
    lakes: { type: "MultiPolygon" as const, coordinates: lakes.map((rings) => rings.map(pointsOf)) },
  };
}

function pointsOf(steps: readonly number[]): [number, number][] {
  const points: [number, number][] = [];
  let [x, y] = [0, 0];
  for (let k = 0; k + 1 < steps.length; k += 2) {
    x += steps[k]!;
    y += steps[k + 1]!;
    points.push([x / 100, y / 100]);
  }
  return points;
}
