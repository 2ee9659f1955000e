import { createMemo, createUniqueId, For, Index, Show } from "solid-js";
import { DARK, OPEN } from "../../../engine/answers/shade/sunKind.ts";
import type { Sunlight } from "../../../engine/answers/shade/sunlight.ts";
import { clockAt } from "../../../engine/ruler/rulerClock.ts";
import type { Scenario } from "../../../engine/scenario/index.ts";
import { eventLeafShare } from "../../../engine/scenario/leafShareOf.ts";
import { horizonElevationDeg, prepareHorizon } from "../../../engine/shade/horizonElevationDeg.ts";
import type { Point, PreparedObstacles } from "../../../engine/shade/index.ts";
import { boxOutline } from "./boxOutline.ts";
import { crownOutline, type SkySpan } from "./crownOutline.ts";
import { leafLook } from "./leafLook.ts";
import { type LabelBox, placeLabels, type WantedLabel } from "./placeLabels.ts";
import { compassMarks, nearBearing, skyView, spanPath } from "./skyView.ts";
import { pathStretches, type SunPath } from "./sunPath.ts";
import { trunkOutline } from "./trunkOutline.ts";

interface SkyPlotProps {
  readonly scenario: Scenario;
  readonly obstacles: PreparedObstacles;
  readonly light: Sunlight;
  /** The sun's way on each day of the ruler, and which of them is drawn in full. */
  readonly paths: readonly SunPath[];
  readonly day: number;
  /** The middle of the group that looks. */
  readonly eye: Point;
  readonly name: string;
  readonly sun: { readonly azimuthDeg: number; readonly elevationDeg: number };
  readonly widthPx: number;
  readonly heightPx: number;
  readonly axisPx: number;
}

interface Shape {
  readonly name: string;
  readonly look: string;
  readonly path: string;
  /** Where its name would stand: the highest of what shows. */
  readonly top: { readonly x: number; readonly y: number } | null;
}

const STRETCH_LOOKS = { [OPEN]: "path-open", [DARK]: "path-behind" } as Record<number, string>;

/** The sky from one panel group: what stands in it at its true bearing and elevation, and the sun's way through it. */
export function SkyPlot(props: SkyPlotProps) {
  const clipId = createUniqueId();
  const view = createMemo(() => skyView(props.paths, props.widthPx, props.heightPx));
  const shapes = createMemo((): Shape[] => {
    const v = view();
    const shape = (name: string, look: string, spans: readonly SkySpan[]): Shape[] => {
      const path = spanPath(v, spans);
      return path === "" ? [] : [{ name, look, path, top: topOf(spans) }];
    };
    const topOf = (spans: readonly SkySpan[]) => {
      const seen = spans
        .map((span) => ({ x: v.x(nearBearing(span.bearingDeg, v.centreDeg)), y: Math.max(0, v.y(span.highDeg)) }))
        .filter(({ x, y }) => x >= 0 && x <= v.widthPx && y < v.heightPx - 1);
      if (seen.length === 0) return null;
      const y = Math.min(...seen.map((point) => point.y));
      // What is cut off at the top of the window, or flat, is named at its middle.
      const level = seen.filter((point) => point.y < y + 0.5).map((point) => point.x);
      return { x: (Math.min(...level) + Math.max(...level)) / 2, y };
    };
    const away = ({ eastM, northM }: { eastM: number; northM: number }) =>
      Math.hypot(eastM - props.eye.eastM, northM - props.eye.northM);
    const seasonShare = eventLeafShare(props.scenario);
    const far = props.scenario.obstacles.flatMap((obstacle) => {
      if (obstacle.kind !== "horizon") return [];
      const line = prepareHorizon(obstacle);
      const spans = Array.from({ length: 2 * Math.ceil(v.halfDeg) + 1 }, (_, i) => {
        const bearingDeg = v.centreDeg - Math.ceil(v.halfDeg) + i;
        return { bearingDeg, lowDeg: 0, highDeg: horizonElevationDeg(line, bearingDeg) };
      });
      return shape(obstacle.name ?? obstacle.id, "sky-hills", spans);
    });
    const near = props.scenario.obstacles
      .flatMap((obstacle) => (obstacle.kind === "horizon" ? [] : [obstacle]))
      .sort((a, b) => away(b) - away(a))
      .flatMap((obstacle) => {
        const name = obstacle.name ?? obstacle.id;
        if (obstacle.kind === "box") return shape(name, "sky-wall", boxOutline(obstacle, props.eye));
        const trunk = shape("", "sky-trunk", trunkOutline(obstacle, props.eye));
        return [...trunk, ...shape(name, `leaf-${leafLook(obstacle, seasonShare)}`, crownOutline(obstacle, props.eye))];
      });
    return [...far, ...near];
  });
  const sheet = createMemo(() =>
    props.paths.map((path) => Array.from(path.bearingDeg, (deg) => view().x(nearBearing(deg, view().centreDeg)))),
  );
  /** A way as a line; a jump over the window's edge, as where the sun goes round the pole, breaks it. */
  const line = (d: number, from: number, to: number) => {
    const xs = sheet()[d]!;
    let text = "";
    for (let i = from; i <= to; i++) {
      const breaks = i === from || Math.abs(xs[i]! - xs[i - 1]!) > view().widthPx / 2;
      text += `${breaks ? "M" : "L"}${xs[i]!.toFixed(1)} ${view().y(props.paths[d]!.elevationDeg[i]!).toFixed(1)}`;
    }
    return text;
  };
  const stretches = createMemo(() => {
    const path = props.paths[props.day];
    return path === undefined || path.ms.length === 0 ? [] : pathStretches(path, props.obstacles, props.eye);
  });
  const hours = createMemo(() => {
    const path = props.paths[props.day];
    if (path === undefined) return [];
    const { ruler } = props.light;
    return Array.from(path.ms).flatMap((ms, i) => {
      if (!ruler.days[props.day]!.hoursMs.includes(ms)) return [];
      const hour = Number(clockAt(ruler, ms).clock.slice(0, 2));
      return [{ hour, x: sheet()[props.day]![i]!, y: view().y(path.elevationDeg[i]!) }];
    });
  });
  const sunXY = () => ({
    x: view().x(nearBearing(props.sun.azimuthDeg, view().centreDeg)),
    y: view().y(props.sun.elevationDeg),
  });
  const labels = createMemo(() => {
    const v = view();
    const frame: LabelBox = { left: 2, right: v.widthPx - 2, top: 2, bottom: v.heightPx - 2 };
    const rings = hours().map(({ x, y }) => ({ left: x - 5, right: x + 5, top: y - 5, bottom: y + 5 }));
    const marked = hours().filter(({ hour }) => hour % 3 === 0);
    const wanted: WantedLabel[] = [
      ...marked.map(({ hour, x, y }) => ({ text: `${hour} h`, x, y: y + 4, clearPx: 9, best: "beside" as const })),
      ...[...shapes()]
        .reverse()
        .filter((shape) => shape.name !== "" && shape.top !== null)
        .map((shape) => ({
          text: shape.name,
          x: shape.top!.x,
          y: Math.max(0, shape.top!.y),
          clearPx: 6,
          best: "under" as const,
        })),
    ];
    const placed = placeLabels(wanted, frame, rings);
    return placed.flatMap((label, i) => (label === null ? [] : [{ ...label, isHour: i < marked.length }]));
  });
  const says = () =>
    `The sky as ${props.name} sees it, ${dayWords()}: ${
      shapes()
        .filter((shape) => shape.name !== "")
        .map((shape) => shape.name)
        .join(", ") || "nothing stands in it"
    }.`;
  const dayWords = () => {
    const day = props.light.ruler.days[props.day];
    return day === undefined ? "" : clockAt(props.light.ruler, day.startMs + 43_200_000).day;
  };
  return (
    <svg
      class="sky-drawing"
      width={props.widthPx + props.axisPx}
      height={props.heightPx + 26}
      role="img"
      aria-label={says()}
    >
      <clipPath id={clipId}>
        <rect width={props.widthPx} height={props.heightPx} />
      </clipPath>
      <rect class="plan-ground" x="0.5" y="0.5" width={props.widthPx - 1} height={props.heightPx - 1} />
      <g clip-path={`url(#${clipId})`}>
        <g class="plan-grid">
          <For each={compassMarks(view())}>
            {(mark) => <line x1={view().x(mark.bearingDeg)} x2={view().x(mark.bearingDeg)} y2={props.heightPx} />}
          </For>
          <For each={[15, 30, 45, 60, 75].filter((deg) => deg < view().topDeg)}>
            {(deg) => <line y1={view().y(deg)} y2={view().y(deg)} x2={props.widthPx} />}
          </For>
        </g>
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
        <For each={props.paths}>
          {(path, d) => (
            <Show when={d() !== props.day && path.ms.length > 1}>
              <path class="path-other" d={line(d(), 0, path.ms.length - 1)} />
            </Show>
          )}
        </For>
        <Index each={stretches()}>
          {(stretch) => <path class="path-halo" d={line(props.day, stretch().from, stretch().to)} />}
        </Index>
        <Index each={stretches()}>
          {(stretch) => (
            <path
              class={STRETCH_LOOKS[stretch().kind] ?? "path-leaves"}
              d={line(props.day, stretch().from, stretch().to)}
            />
          )}
        </Index>
        <Index each={hours()}>{(hour) => <circle class="sky-hour" cx={hour().x} cy={hour().y} r="3.6" />}</Index>
        <Show when={props.sun.elevationDeg > 0}>
          <circle class="sky-sun" cx={sunXY().x} cy={sunXY().y} r="8" />
        </Show>
        <g class="plan-names">
          <Index each={labels()}>{(label) => <path class="name-leader" d={label().leader} />}</Index>
          <Index each={labels()}>
            {(label) => (
              <text
                classList={{ "name-hour": label().isHour }}
                x={label().x}
                y={label().y}
                text-anchor={label().anchor}
              >
                {label().text}
              </text>
            )}
          </Index>
        </g>
      </g>
      <g class="plan-scale">
        <For
          each={compassMarks(view()).filter(
            ({ bearingDeg }) => Math.abs(view().x(bearingDeg) - props.widthPx / 2) < props.widthPx / 2 - 8,
          )}
        >
          {(mark) => (
            <text x={view().x(mark.bearingDeg)} y={props.heightPx + 20} text-anchor="middle">
              {mark.name}
            </text>
          )}
        </For>
        <Show when={props.axisPx > 0}>
          <For each={[0, 15, 30, 45, 60, 75].filter((deg) => deg < view().topDeg)}>
            {(deg) => (
              <text x={props.widthPx + 6} y={view().y(deg) + (deg === 0 ? 0 : 5)}>
                {deg}°
              </text>
            )}
          </For>
        </Show>
      </g>
    </svg>
  );
}
