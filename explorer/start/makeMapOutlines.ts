import { type GeoProjection, geoGraticule10, geoPath } from "d3";
import { createEffect, createMemo, createSignal } from "solid-js";
import { feature, mesh } from "topojson-client";
import { MAP_PX, VIEWS } from "./mapView.ts";

type Atlas = NonNullable<Parameters<typeof mesh>[0]>;

/** Natural Earth, public domain, as packed by world-atlas: coarse for the world, finer once one looks closer. */
const ATLASES = {
  coarse: async () => (await import("world-atlas/countries-110m.json")).default as unknown as Atlas,
  fine: async () => (await import("world-atlas/countries-50m.json")).default as unknown as Atlas,
};

/** Coasts and borders of a view as paths; the coarse ones until the finer ones have come. */
export function makeMapOutlines(view: () => number, projection: () => GeoProjection) {
  // Signals and not resources: a map that is waiting for finer outlines stays where it is, with the focus on it.
  const coarse = makeLoaded(ATLASES.coarse);
  const fine = makeLoaded(ATLASES.fine);
  coarse.load();
  createEffect(() => view() > 0 && fine.load());
  const atlas = () => (view() > 0 ? fine.value() : undefined) ?? coarse.value();
  return createMemo(() => {
    const path = geoPath(projection()).digits(1);
    const { width, height } = MAP_PX;
    const edge = VIEWS[view()]!.acrossKm === null ? path({ type: "Sphere" }) : `M0 0H${width}V${height}H0Z`;
    const world = atlas();
    const lines = path(geoGraticule10()) ?? "";
    if (world === undefined) return { edge: edge ?? "", lines, land: "", borders: "" };
    const borders = mesh(world, world.objects.countries as never, (a, b) => a !== b);
    return {
      edge: edge ?? "",
      lines,
      land: path(feature(world, world.objects.land!)) ?? "",
      borders: path(borders) ?? "",
    };
  });
}

/** Something that is fetched once, when it is first asked for; what cannot be fetched is not there. */
function makeLoaded<T>(fetch: () => Promise<T>) {
  const [value, setValue] = createSignal<T>();
  let isAsked = false;
  const load = () => {
    if (isAsked) return;
    isAsked = true;
    fetch().then(
      (loaded) => setValue(() => loaded),
      () => {},
    );
  };
  return { value, load };
}
