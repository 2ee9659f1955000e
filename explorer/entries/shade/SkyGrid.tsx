import { For, Show } from "solid-js";
import { compassMarks, type SkyView } from "./skyView.ts";

const EVERY_DEG = [0, 15, 30, 45, 60, 75];

/** Lines over the sky: compass points and elevations. */
export function SkyGrid(props: { view: SkyView }) {
  return (
    <g class="plan-grid">
      <For each={compassMarks(props.view)}>
        {({ bearingDeg }) => (
          <line x1={props.view.x(bearingDeg)} x2={props.view.x(bearingDeg)} y2={props.view.heightPx} />
        )}
      </For>
      <For each={EVERY_DEG.filter((deg) => deg > 0 && deg < props.view.topDeg)}>
        {(deg) => <line y1={props.view.y(deg)} y2={props.view.y(deg)} x2={props.view.widthPx} />}
      </For>
    </g>
  );
}

/** Compass points under the sky, and elevations where there is room at its right. */
export function SkyScale(props: { view: SkyView; hasSide: boolean }) {
  const marks = () => {
    const half = props.view.widthPx / 2;
    return compassMarks(props.view).filter(({ bearingDeg }) => Math.abs(props.view.x(bearingDeg) - half) < half - 8);
  };
  return (
    <g class="plan-scale">
      <For each={marks()}>
        {(mark) => (
          <text x={props.view.x(mark.bearingDeg)} y={props.view.heightPx + 20} text-anchor="middle">
            {mark.name}
          </text>
        )}
      </For>
      <Show when={props.hasSide}>
        <For each={EVERY_DEG.filter((deg) => deg < props.view.topDeg)}>
          {(deg) => (
            <text x={props.view.widthPx + 6} y={props.view.y(deg) + (deg === 0 ? 0 : 5)}>
              {deg}°
            </text>
          )}
        </For>
      </Show>
    </g>
  );
}
