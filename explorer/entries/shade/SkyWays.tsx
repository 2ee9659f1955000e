import { createMemo, For, Index, Show } from "solid-js";
import { DARK, OPEN } from "../../../engine/answers/shade/sunKind.ts";
import type { Point, PreparedObstacles } from "../../../engine/shade/index.ts";
import type { SkyView } from "./skyView.ts";
import { pathStretches, type SunPath } from "./sunPath.ts";
import { type SkyHour, wayLine } from "./sunWay.ts";

const STRETCH_LOOKS = { [OPEN]: "path-open", [DARK]: "path-behind" } as Record<number, string>;

/** The sun's way on one day by what stands in it, with its hours; the other days' as hairlines. */
export function SkyWays(props: {
  paths: readonly SunPath[];
  /** The one that is drawn in full. */
  day: number;
  hours: readonly SkyHour[];
  obstacles: PreparedObstacles;
  eye: Point;
  view: SkyView;
}) {
  const stretches = createMemo(() => {
    const path = props.paths[props.day];
    if (path === undefined || path.ms.length === 0) return [];
    return pathStretches(path, props.obstacles, props.eye).map(({ from, to, kind }) => ({
      line: wayLine(path, props.view, from, to),
      look: STRETCH_LOOKS[kind] ?? "path-leaves",
    }));
  });
  return (
    <>
      <For each={props.paths}>
        {(path, d) => (
          <Show when={d() !== props.day && path.ms.length > 1}>
            <path class="path-other" d={wayLine(path, props.view)} />
          </Show>
        )}
      </For>
      <Index each={stretches()}>{(stretch) => <path class="path-halo" d={stretch().line} />}</Index>
      <Index each={stretches()}>{(stretch) => <path class={stretch().look} d={stretch().line} />}</Index>
      <Index each={props.hours}>{(hour) => <circle class="sky-hour" cx={hour().x} cy={hour().y} r="3.6" />}</Index>
    </>
  );
}
