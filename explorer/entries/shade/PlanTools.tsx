import { For, Show } from "solid-js";
import type { ShownPlan } from "./makePlanFrame.ts";
import { type PlanHand, STEP_M } from "./makePlanHand.ts";
import { placeWords, type Thing } from "./thing.ts";

const WAYS = [
  ["west", "←", -STEP_M, 0],
  ["north", "↑", 0, STEP_M],
  ["south", "↓", 0, -STEP_M],
  ["east", "→", STEP_M, 0],
] as const;

/** Buttons under the plan: nearer, farther, all of it, and the chosen thing a step to each side. */
export function PlanTools(props: { plan: ShownPlan; hand: PlanHand; chosen: Thing | null; axisPx: number }) {
  return (
    <div class="plan-tools" style={{ "margin-left": `${props.axisPx}px` }}>
      <button type="button" class="tool" aria-label="Zoom in" onClick={() => props.plan.zoom(1 / 1.5)}>
        +
      </button>
      <button type="button" class="tool" aria-label="Zoom out" onClick={() => props.plan.zoom(1.5)}>
        −
      </button>
      <button type="button" class="tool tool-wide" onClick={props.plan.showAll}>
        Whole site
      </button>
      <Show
        when={props.chosen}
        fallback={<span class="plan-chosen">Press a thing, or Tab to it; arrow keys move it.</span>}
      >
        {(thing) => (
          <>
            <span class="plan-moves">
              <For each={WAYS}>
                {([way, arrow, east, north]) => (
                  <button
                    type="button"
                    class="tool"
                    aria-label={`Move ${thing().name} half a metre ${way}`}
                    onClick={() => props.hand.nudge(thing(), east, north)}
                  >
                    {arrow}
                  </button>
                )}
              </For>
            </span>
            <span class="plan-chosen">
              <strong>{thing().name}</strong> {placeWords(thing())}
            </span>
          </>
        )}
      </Show>
    </div>
  );
}
