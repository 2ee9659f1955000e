import { Index } from "solid-js";
import type { StrataLayout } from "../../engine/answers/run/strataLayout.ts";
import type { EndLabel } from "../../engine/drawing/endLabels.ts";
import type { TimeScale } from "../../engine/drawing/timeScale.ts";

/** Names and figures beyond the ruler, each on its leader; there is no legend. */
export function StrataLabels(props: {
  labels: readonly EndLabel[];
  layout: Pick<StrataLayout, "heightPx">;
  scale: TimeScale;
  widthPx: number;
}) {
  const fromRuler = (x: number) => x - props.scale.widthPx;
  return (
    <svg class="strata-labels data" width={props.widthPx} height={props.layout.heightPx} aria-hidden="true">
      <Index each={props.labels}>
        {(label) => (
          <g class={`end end-${label().look}`}>
            <path class="end-leader" d={`M${fromRuler(label().x)} ${label().y}H-6L4 ${label().labelY}H10`} />
            <circle class="end-dot" cx={fromRuler(label().x)} cy={label().y} r={label().dotted ? 2.5 : 0} />
            <text x={16} y={label().labelY + 5}>
              <tspan class="end-figure">{label().figure}</tspan>
              <tspan class="end-words" dx={8}>
                {label().words}
              </tspan>
            </text>
          </g>
        )}
      </Index>
    </svg>
  );
}
