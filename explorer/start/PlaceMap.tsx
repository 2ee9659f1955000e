import { createMemo, createSignal, createUniqueId, For } from "solid-js";
import { CLIMATE_WORLD } from "../../engine/place/index.ts";
import { zoneAt } from "../../engine/scenario/withZone.ts";
import { MapActs } from "./MapActs.tsx";
import { MapTowns } from "./MapTowns.tsx";
import { makeMapDetail } from "./makeMapDetail.ts";
import { makeMapOutlines } from "./makeMapOutlines.ts";
import { makePlaceClimate } from "./makePlaceClimate.ts";
import { isWellInside, MAP_PX, mapProjection, positionWords, rounded, VIEWS, wrapped } from "./mapView.ts";
import "./map.css";

const { width: WIDTH, height: HEIGHT } = MAP_PX;

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
  const projection = createMemo(() => mapProjection(view(), centre()));
  const outlines = makeMapOutlines(view, projection);
  const detail = makeMapDetail(view, projection);
  const climate = makePlaceClimate(props);
  const stations = createMemo(() =>
    CLIMATE_WORLD.stationPlaces.flatMap(([lat, lon]) => {
      const at = projection()([lon, lat]);
      if (at === null || at[0] < 0 || at[0] > WIDTH || at[1] < 0 || at[1] > HEIGHT) return [];
      return [{ key: `${lat} ${lon}`, x: at[0], y: at[1] }];
    }),
  );
  const cross = () => projection()([wrapped(props.longitudeDeg), props.latitudeDeg]) ?? [WIDTH / 2, HEIGHT / 2];
  const zone = () => zoneAt(props.latitudeDeg, props.longitudeDeg);

  const moveTo = (longitudeDeg: number, latitudeDeg: number) => {
    const lon = rounded(wrapped(longitudeDeg));
    const lat = rounded(Math.max(-90, Math.min(90, latitudeDeg)));
    props.onMove(lat, lon);
    if (!isWellInside(projection()([lon, lat]))) setCentre([lon, lat]);
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
          <path class="map-sea" d={outlines().edge} />
          <path class="map-lines" d={outlines().lines} />
          <path class="map-land" d={outlines().land} />
          <path class="map-states" d={detail().states} />
          <path class="map-borders" d={outlines().borders} />
          <path class="map-lakes" d={detail().lakes} />
          <For each={stations()}>
            {(station) => (
              <circle
                class="map-station"
                classList={{ "map-heard": climate.heard().includes(station.key) }}
                cx={station.x}
                cy={station.y}
                r={view() === 0 ? 2.6 : 4}
              />
            )}
          </For>
          <MapTowns view={view()} projection={projection()} />
          <path class="map-edge" d={outlines().edge} />
          <g transform={`translate(${cross()[0]} ${cross()[1]})`}>
            <path class="map-halo" d="M-14 0h10M4 0h10M0-14v10M0 4v10" />
            <path class="map-cross" d="M-14 0h10M4 0h10M0-14v10M0 4v10" />
          </g>
        </svg>
      </div>
      <MapActs view={view()} onLook={look} isHeard={climate.heard().length > 0} />
      <p class="map-readout" id={`${id}-readout`} aria-live="polite">
        <strong>{positionWords(props.latitudeDeg, props.longitudeDeg)}</strong>, clocks of {zone()}.{" "}
        <span class="map-source">{climate.source()}</span>
      </p>
    </div>
  );
}
