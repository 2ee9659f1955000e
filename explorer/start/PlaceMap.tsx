import "../../engine/scenario/zonesHere.ts";
import { geoAzimuthalEquidistant, geoGraticule10, geoNaturalEarth1, geoPath } from "d3";
import { createEffect, createMemo, createSignal, createUniqueId, For, Show } from "solid-js";
import { feature, mesh } from "topojson-client";
import { CLIMATE_WORLD, type ClimateTables, climateAt, loadClimateNear } from "../../engine/place/index.ts";
import { zoneOf } from "../../engine/scenario/zoneOf.ts";
import "./map.css";

type Atlas = NonNullable<Parameters<typeof mesh>[0]>;

/** Natural Earth, public domain, as packed by world-atlas: coarse for the world, finer once one looks closer. */
const ATLASES = {
  coarse: () => import("world-atlas/countries-110m.json"),
  fine: () => import("world-atlas/countries-50m.json"),
};

const WIDTH = 640;
const HEIGHT = 330;
/** Kilometres across the drawing; null for the whole world. */
const VIEWS = [
  { name: "world", acrossKm: null, stepDeg: 2 },
  { name: "region", acrossKm: 5000, stepDeg: 0.5 },
  { name: "nearby", acrossKm: 1200, stepDeg: 0.1 },
] as const;
const EARTH_KM = 6371;

const rounded = (value: number) => Math.round(value * 100) / 100;
const wrapped = (degrees: number) => ((((degrees + 180) % 360) + 360) % 360) - 180;

/** A map of outlines on which a cross picks the place: by click, or with the arrow keys. Loaded when it is first needed. */
export default function PlaceMap(props: {
  latitudeDeg: number;
  longitudeDeg: number;
  elevationM: number;
  onMove(latitudeDeg: number, longitudeDeg: number): void;
}) {
  const id = createUniqueId();
  const [view, setView] = createSignal(0);
  const [centre, setCentre] = createSignal<readonly [number, number]>([props.longitudeDeg, props.latitudeDeg]);
  // Signals and not resources: a map that is waiting for finer outlines stays where it is, with the focus on it.
  const coarse = makeLoaded(async () => (await ATLASES.coarse()).default as unknown as Atlas);
  const fine = makeLoaded(async () => (await ATLASES.fine()).default as unknown as Atlas);
  coarse.load();
  createEffect(() => view() > 0 && fine.load());
  const atlas = () => (view() > 0 ? fine.value() : undefined) ?? coarse.value();

  const projection = createMemo(() => {
    const { acrossKm } = VIEWS[view()]!;
    if (acrossKm === null)
      return geoNaturalEarth1().fitExtent(
        [
          [2, 2],
          [WIDTH - 2, HEIGHT - 2],
        ],
        { type: "Sphere" },
      );
    const [lon, lat] = centre();
    return geoAzimuthalEquidistant()
      .rotate([-lon, -lat])
      .translate([WIDTH / 2, HEIGHT / 2])
      .scale((WIDTH / acrossKm) * EARTH_KM)
      .clipExtent([
        [0, 0],
        [WIDTH, HEIGHT],
      ]);
  });
  const drawn = createMemo(() => {
    const path = geoPath(projection()).digits(1);
    const world = atlas();
    return {
      sphere: VIEWS[view()]!.acrossKm === null ? (path({ type: "Sphere" }) ?? "") : `M0 0H${WIDTH}V${HEIGHT}H0Z`,
      lines: path(geoGraticule10()) ?? "",
      land: world === undefined ? "" : (path(feature(world, world.objects.land!)) ?? ""),
      borders:
        world === undefined ? "" : (path(mesh(world, world.objects.countries as never, (a, b) => a !== b)) ?? ""),
    };
  });
  const stations = createMemo(() =>
    CLIMATE_WORLD.stationPlaces.flatMap(([lat, lon]) => {
      const at = projection()([lon, lat]);
      if (at === null || at[0] < 0 || at[0] > WIDTH || at[1] < 0 || at[1] > HEIGHT) return [];
      return [{ key: `${lat} ${lon}`, x: at[0], y: at[1] }];
    }),
  );
  const cross = () => projection()([wrapped(props.longitudeDeg), props.latitudeDeg]) ?? [WIDTH / 2, HEIGHT / 2];
  const place = createMemo(
    () => {
      const isHere = Math.abs(props.latitudeDeg) <= 90 && Math.abs(props.longitudeDeg) <= 360;
      return isHere ? { lat: props.latitudeDeg, lon: wrapped(props.longitudeDeg) } : null;
    },
    undefined,
    { equals: (a, b) => a?.lat === b?.lat && a?.lon === b?.lon },
  );
  /** The tables of the place that they were fetched for; "failed" where they could not be. */
  const [tables, setTables] = createSignal<{ at: ReturnType<typeof place>; found: ClimateTables | "failed" }>();
  createEffect(() => {
    const at = place();
    if (at === null) return;
    const take = (found: ClimateTables | "failed") => at === place() && setTables({ at, found });
    loadClimateNear([at]).then(take, () => take("failed"));
  });
  const here = () => (tables()?.at === place() ? tables()?.found : undefined);
  const climate = createMemo(() => {
    const at = place();
    const found = here();
    if (at === null || found === undefined || found === "failed") return null;
    return { ...climateAt(found, at.lat, at.lon, props.elevationM), stations: found.stations };
  });
  const heard = createMemo(() => {
    const found = climate();
    if (!found?.ok) return [];
    const names = found.climate.provenance.nearestStations.map((station) => station.name);
    return found.stations.filter(({ name }) => names.includes(name)).map(({ lat, lon }) => `${lat} ${lon}`);
  });
  const source = () => {
    const found = climate();
    if (here() === "failed") return "The climate tables could not be loaded; the place can be picked all the same.";
    if (found === null) return "The climate of the place is on its way.";
    return found.ok ? found.climate.provenance.sentence : found.problems[0]!.message;
  };
  const position = () => {
    const lat = `${rounded(Math.abs(props.latitudeDeg))}° ${props.latitudeDeg < 0 ? "S" : "N"}`;
    const lon = wrapped(props.longitudeDeg);
    return `${lat}, ${rounded(Math.abs(lon))}° ${lon < 0 ? "W" : "E"}`;
  };
  const zone = () =>
    zoneOf({ name: "here", latitudeDeg: props.latitudeDeg, longitudeDeg: props.longitudeDeg, elevationM: 0 });

  const moveTo = (longitudeDeg: number, latitudeDeg: number) => {
    const lon = rounded(wrapped(longitudeDeg));
    const lat = rounded(Math.max(-90, Math.min(90, latitudeDeg)));
    props.onMove(lat, lon);
    const at = projection()([lon, lat]);
    const isNear = at !== null && at[0] > 40 && at[0] < WIDTH - 40 && at[1] > 40 && at[1] < HEIGHT - 40;
    if (!isNear) setCentre([lon, lat]);
  };
  const look = (to: number) => {
    setCentre([wrapped(props.longitudeDeg), props.latitudeDeg]);
    setView(Math.max(0, Math.min(VIEWS.length - 1, to)));
  };
  const onKeyDown = (event: KeyboardEvent) => {
    const by = VIEWS[view()]!.stepDeg * (event.shiftKey ? 5 : 1);
    const ways: Record<string, readonly [number, number]> = {
      ArrowUp: [0, by],
      ArrowDown: [0, -by],
      ArrowLeft: [-by, 0],
      ArrowRight: [by, 0],
    };
    const way = ways[event.key];
    if (way !== undefined) moveTo(props.longitudeDeg + way[0], props.latitudeDeg + way[1]);
    else if (event.key === "+" || event.key === "=") look(view() + 1);
    else if (event.key === "-") look(view() - 1);
    else return;
    event.preventDefault();
  };
  const onClick = (event: MouseEvent & { currentTarget: SVGSVGElement }) => {
    const box = event.currentTarget.getBoundingClientRect();
    const at = projection().invert?.([
      ((event.clientX - box.left) / box.width) * WIDTH,
      ((event.clientY - box.top) / box.height) * HEIGHT,
    ]);
    if (at != null && Number.isFinite(at[0]) && Math.abs(at[1]) <= 90) moveTo(at[0], at[1]);
  };

  return (
    <div class="place-map">
      <div
        class="map-view"
        role="application"
        tabindex="0"
        aria-label="Map; arrow keys move the cross, plus and minus look closer and farther"
        aria-describedby={`${id}-readout`}
        onKeyDown={onKeyDown}
      >
        <svg viewBox={`0 0 ${WIDTH} ${HEIGHT}`} aria-hidden="true" onClick={onClick}>
          <path class="map-sea" d={drawn().sphere} />
          <path class="map-lines" d={drawn().lines} />
          <path class="map-land" d={drawn().land} />
          <path class="map-borders" d={drawn().borders} />
          <For each={stations()}>
            {(station) => (
              <circle
                class="map-station"
                classList={{ "map-heard": heard().includes(station.key) }}
                cx={station.x}
                cy={station.y}
                r={view() === 0 ? 2.6 : 4}
              />
            )}
          </For>
          <path class="map-edge" d={drawn().sphere} />
          <g transform={`translate(${cross()[0]} ${cross()[1]})`}>
            <path class="map-halo" d="M-14 0h10M4 0h10M0-14v10M0 4v10" />
            <path class="map-cross" d="M-14 0h10M4 0h10M0-14v10M0 4v10" />
          </g>
        </svg>
      </div>
      <div class="map-acts">
        <For each={VIEWS}>
          {(each, index) => (
            <button
              type="button"
              class="act"
              aria-pressed={view() === index()}
              aria-label={`Show ${each.name === "nearby" ? "what is nearby" : `the ${each.name}`}`}
              onClick={() => look(index())}
            >
              {each.name}
            </button>
          )}
        </For>
        <span class="map-key">
          <svg width="12" height="12" aria-hidden="true">
            <circle class="map-station" cx="6" cy="6" r="4" />
          </svg>{" "}
          climate station
          <Show when={heard().length > 0}>
            {", "}
            <svg width="12" height="12" aria-hidden="true">
              <circle class="map-station map-heard" cx="6" cy="6" r="4" />
            </svg>{" "}
            used here
          </Show>
        </span>
      </div>
      <p class="map-readout" id={`${id}-readout`} aria-live="polite">
        <strong>{position()}</strong>, clocks of {zone()}. <span class="map-source">{source()}</span>
      </p>
    </div>
  );
}

/** Something that is fetched once, when it is first asked for. */
function makeLoaded<T>(fetch: () => Promise<T>) {
  const [value, setValue] = createSignal<T>();
  const [failed, setFailed] = createSignal(false);
  let isAsked = false;
  const load = () => {
    if (isAsked) return;
    isAsked = true;
    fetch().then(
      (loaded) => setValue(() => loaded),
      () => setFailed(true),
    );
  };
  return { value, failed, load };
}
