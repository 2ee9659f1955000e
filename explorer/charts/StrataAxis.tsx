import { For, Show } from "solid-js";
import type { RunPicture } from "../../engine/answers/run/runPicture.ts";
import { strataAxis } from "../../engine/answers/run/strataAxis.ts";
import type { StrataLayout } from "../../engine/answers/run/strataLayout.ts";

/** Titles and values at the left; on a phone they stay while time moves beneath them. */
export function StrataAxis(props: { picture: RunPicture; layout: StrataLayout; widthPx: number; short: boolean }) {
  return (
    <svg class="strata-axis" width={props.widthPx} height={props.layout.heightPx} aria-hidden="true">
      <For each={strataAxis(props.picture, props.layout, props.short)}>
        {({ title, how, titleY, values }) => (
          <g>
            <text class="title" x={props.short ? 6 : props.widthPx} y={titleY}>
              {title}
              <Show when={!props.short}>
                <tspan class="how" dx={14}>
                  {how}
                </tspan>
              </Show>
            </text>
            <For each={values}>
              {({ y, text }) => (
                <text class="axis-value" x={props.widthPx - 10} y={y + 5} text-anchor="end">
                  {text}
                </text>
              )}
            </For>
          </g>
        )}
      </For>
    </svg>
  );
}
