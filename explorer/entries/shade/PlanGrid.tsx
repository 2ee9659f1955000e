import { For, Show } from "solid-js";
import { displayUnit, toDisplay } from "../../../engine/words/displayUnits.ts";
import { figure } from "../../../engine/words/numbers.ts";
import type { GridLines, PlanView } from "./planView.ts";

/** Lines over the ground, so many metres apart. */
export function PlanGrid(props: { lines: GridLines; view: PlanView }) {
  return (
    <svg class="plan-grid" aria-hidden="true">
      <For each={props.lines.eastM}>
        {(eastM) => <line x1={props.view.x(eastM)} x2={props.view.x(eastM)} y2={props.view.heightPx} />}
      </For>
      <For each={props.lines.northM}>
        {(northM) => <line y1={props.view.y(northM)} y2={props.view.y(northM)} x2={props.view.widthPx} />}
      </For>
    </svg>
  );
}

/** Metres from the middle, under the plan and where there is room at its left. */
export function PlanScale(props: { lines: GridLines; view: PlanView; hasSide: boolean }) {
  const named = () =>
    props.lines.namedEastM.filter((eastM) => isBetween(props.view.x(eastM), 16, props.view.widthPx - 16));
  const side = () => props.lines.northM.filter((northM) => isBetween(props.view.y(northM), 8, props.view.heightPx - 4));
  return (
    <svg class="plan-scale" aria-hidden="true">
      <For each={named()}>
        {(eastM) => (
          <text x={props.view.x(eastM)} y={props.view.heightPx + 20} text-anchor="middle">
            {metres(eastM)}
          </text>
        )}
      </For>
      <Show when={props.hasSide}>
        <For each={side()}>
          {(northM) => (
            <text x="-8" y={props.view.y(northM) + 5} text-anchor="end">
              {metres(northM)}
            </text>
          )}
        </For>
      </Show>
    </svg>
  );
}

const isBetween = (value: number, low: number, high: number) => value > low && value < high;

function metres(value: number): string {
  const shown = figure(toDisplay(value, "m"));
  return value > 0 ? `+${shown}` : value === 0 ? `0 ${displayUnit("m")}` : shown;
}
