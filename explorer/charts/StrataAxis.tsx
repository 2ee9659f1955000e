import { For, Show } from "solid-js";
import type { RunPicture } from "../picture/runPicture.ts";
import { ampHours, figure } from "../words/numbers.ts";
import type { StrataLayout } from "./strataLayout.ts";

/** Titles and values at the left; on a phone they stay while time moves beneath them. */
export function StrataAxis(props: { picture: RunPicture; layout: StrataLayout; widthPx: number; short: boolean }) {
  const strata = () => {
    const { charge, incoming, load, volts } = props.layout;
    const isSun = props.picture.incoming.every((part) => part.shadeLossW !== null);
    return [
      {
        stratum: charge,
        unit: " %",
        scale: 100,
        title: props.short ? "Charge in the bank" : `Charge in the bank, % of ${ampHours(props.picture.fullAh)}`,
        how: "teeth point to the bad side of the reserve; its grips move it",
      },
      {
        stratum: incoming,
        unit: " W",
        scale: 1,
        title: isSun ? "From the sun, W" : "Coming in, W",
        how: "at the bank; one scale with the loads, so equal areas are equal energy",
      },
      { stratum: load, unit: " W", scale: 1, title: "Loads, W", how: "as planned; what they do not get is hatched" },
      ...(volts === null
        ? []
        : [
            {
              stratum: volts,
              unit: " V",
              scale: 1,
              title: props.short ? "Volts at the radio" : "Volts at the radio on transmit peaks",
              how: "cable, fuse and pack, not the charge",
            },
          ]),
    ];
  };
  return (
    <svg class="strata-axis" width={props.widthPx} height={props.layout.heightPx} aria-hidden="true">
      <For each={strata()}>
        {({ stratum, unit, scale, title, how }) => (
          <g>
            <text class="title" x={props.short ? 6 : props.widthPx} y={stratum.titleY}>
              {title}
              <Show when={!props.short}>
                <tspan class="how" dx={14}>
                  {how}
                </tspan>
              </Show>
            </text>
            <For each={stratum.ticks}>
              {(tick, i) => (
                <text class="axis-value" x={props.widthPx - 10} y={stratum.y(tick) + 5} text-anchor="end">
                  {figure(tick * scale)}
                  {i() === stratum.ticks.length - 1 && !props.short ? unit : ""}
                </text>
              )}
            </For>
          </g>
        )}
      </For>
    </svg>
  );
}
