import { createMemo, createUniqueId, Index, Show } from "solid-js";
import type { Sunlight } from "../../../engine/answers/shade/sunlight.ts";
import { clockAt } from "../../../engine/ruler/rulerClock.ts";
import type { Scenario } from "../../../engine/scenario/index.ts";
import type { Point, PreparedObstacles } from "../../../engine/shade/index.ts";
import { PlacedNames } from "./PlacedNames.tsx";
import type { SunPlace } from "./planThing.ts";
import { SkyGrid, SkyScale } from "./SkyGrid.tsx";
import { SkyWays } from "./SkyWays.tsx";
import type { PairRoom } from "./shadeRoom.ts";
import { skyNames } from "./skyNames.ts";
import { skyShapes } from "./skyShapes.ts";
import { skyView } from "./skyView.ts";
import type { SunPath } from "./sunPath.ts";
import { onSky, skyHours } from "./sunWay.ts";

const NOON_MS = 43_200_000;

/** The sky from one panel group: what stands in it at its true bearing and elevation, and the sun's way through it. */
export function SkyPlot(props: {
  scenario: Scenario;
  obstacles: PreparedObstacles;
  light: Sunlight;
  /** The sun's way on each day of the ruler, and which of them is drawn in full. */
  paths: readonly SunPath[];
  day: number;
  /** The middle of the group that looks. */
  eye: Point;
  name: string;
  sun: SunPlace;
  room: PairRoom;
}) {
  const clipId = createUniqueId();
  const view = createMemo(() => skyView(props.paths, props.room.widthPx, props.room.heightPx));
  const shapes = createMemo(() => skyShapes(props.scenario, props.eye, view()));
  const hours = createMemo(() => skyHours(props.paths[props.day], props.light.ruler, props.day, view()));
  const names = createMemo(() => skyNames(hours(), shapes(), view()));
  const sunXY = () => onSky(view(), props.sun.azimuthDeg, props.sun.elevationDeg);
  const dayWords = () => {
    const day = props.light.ruler.days[props.day];
    return day === undefined ? "" : clockAt(props.light.ruler, day.startMs + NOON_MS).day;
  };
  const says = () => {
    const stands = shapes().flatMap(({ name }) => (name === "" ? [] : [name]));
    return `The sky as ${props.name} sees it, ${dayWords()}: ${stands.join(", ") || "nothing stands in it"}.`;
  };
  return (
    <svg
      class="sky-drawing"
      width={props.room.widthPx + props.room.axisPx}
      height={props.room.heightPx + 26}
      role="img"
      aria-label={says()}
    >
      <clipPath id={clipId}>
        <rect width={props.room.widthPx} height={props.room.heightPx} />
      </clipPath>
      <rect class="plan-ground" x="0.5" y="0.5" width={props.room.widthPx - 1} height={props.room.heightPx - 1} />
      <g clip-path={`url(#${clipId})`}>
        <SkyGrid view={view()} />
        <Index each={shapes()}>
          {(shape) => (
            <>
              <Show when={shape().look.startsWith("leaf-")}>
                <path class="leaf-ground" d={shape().path} />
              </Show>
              <path class={`sky-shape ${shape().look}`} d={shape().path} />
            </>
          )}
        </Index>
        <SkyWays
          paths={props.paths}
          day={props.day}
          hours={hours()}
          obstacles={props.obstacles}
          eye={props.eye}
          view={view()}
        />
        <Show when={props.sun.elevationDeg > 0}>
          <circle class="sky-sun" cx={sunXY().x} cy={sunXY().y} r="8" />
        </Show>
        <PlacedNames labels={names()} look={({ isHour }) => (isHour ? "name-hour" : undefined)} />
      </g>
      <SkyScale view={view()} hasSide={props.room.axisPx > 0} />
    </svg>
  );
}
