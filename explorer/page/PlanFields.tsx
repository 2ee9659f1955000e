import { For, type JSX, Show } from "solid-js";
import { type PlanGroup, planGroups, SKIES, type Sky, switchableVariants } from "../plan/plan.ts";
import { figure, THIN } from "../words/numbers.ts";
import type { PlanState } from "./makePlanState.ts";
import { NumberBox } from "./NumberBox.tsx";

const SKY_WORDS: Record<Sky, string> = {
  typical: "typical of month",
  clear: "clear",
  fair: "fair",
  mixed: "mixed",
  cloudy: "cloudy",
  overcast: "overcast",
};

/** Names longer than this do not fit over a blank. */
const LONGEST_NAME = 22;

const capital = (text: string) => text.charAt(0).toUpperCase() + text.slice(1);

/** What one can change about the plan, as ruled blanks on one line; the picture hangs below. */
export function PlanFields(props: { state: PlanState }) {
  const { state } = props;
  const { base, document } = state;
  const plan = state.plan;
  const variants = switchableVariants(document);
  const groups = () =>
    planGroups(document).filter((group) => group.variant === null || plan().variants.includes(group.variant));
  const wrongIds = (place: string) =>
    state
      .problems()
      .flatMap((problem, i) => (problem.place === place ? [`wrong-${i}`] : []))
      .join(" ");
  const was = (isChanged: boolean, words: string) => (isChanged ? words : null);
  const setPanels = (id: string, count: number | string) =>
    state.edit(`panels.${id}`, { panels: { ...plan().panels, [id]: count } });
  const toggle = (id: string, isIn: boolean) => {
    state.settle();
    const others = plan().variants.filter((variant) => variant !== id);
    state.edit(`variant.${id}`, { variants: isIn ? [...others, id].sort() : others });
  };

  return (
    <form class="plan" aria-label="The plan" onSubmit={(event) => event.preventDefault()}>
      <div class="plan-fields">
        <Field
          name="Bank"
          pair={true}
          was={was(
            plan().blockAh !== base.blockAh || plan().inParallel !== base.inParallel,
            `${base.inParallel} × ${base.blockAh}${THIN}Ah`,
          )}
        >
          <NumberBox
            label="Blocks side by side"
            value={plan().inParallel}
            step={1}
            least={1}
            wrongIds={wrongIds("inParallel")}
            onEdit={(value) => state.edit("inParallel", { inParallel: value })}
            onSettle={state.settle}
          />
          <span class="unit">×</span>
          <NumberBox
            label="Ampere-hours of one block"
            value={plan().blockAh}
            step={10}
            least={10}
            wide={true}
            wrongIds={wrongIds("blockAh")}
            onEdit={(value) => state.edit("blockAh", { blockAh: value })}
            onSettle={state.settle}
          />
          <span class="unit">Ah</span>
        </Field>
        <For each={groups()}>
          {(group) => (
            <Field
              name={fieldName(group)}
              was={was(plan().panels[group.id] !== base.panels[group.id], String(base.panels[group.id]))}
            >
              <NumberBox
                label={`Panels, ${group.name}`}
                value={plan().panels[group.id]!}
                step={group.inSeries}
                least={0}
                wrongIds={wrongIds(`panels.${group.id}`)}
                onEdit={(value) => setPanels(group.id, value)}
                onSettle={state.settle}
              />
              <span class="unit">
                × {figure(group.ratedW)}
                {THIN}W
              </span>
            </Field>
          )}
        </For>
        <Field name="Sky each day" was={was(plan().sky !== base.sky, base.sky ?? "as written")}>
          <select
            aria-label="Sky each day"
            aria-describedby={wrongIds("sky") || undefined}
            onChange={(event) => {
              state.settle();
              state.edit("sky", { sky: (event.currentTarget.value || null) as Sky | null });
            }}
          >
            <Show when={base.sky === null}>
              <option value="" selected={plan().sky === null}>
                as written
              </option>
            </Show>
            <For each={SKIES}>
              {(sky) => (
                <option value={sky} selected={plan().sky === sky}>
                  {SKY_WORDS[sky]}
                </option>
              )}
            </For>
          </select>
        </Field>
        <Field
          name="Reserve"
          was={was(plan().reservePercent !== base.reservePercent, `${base.reservePercent}${THIN}%`)}
        >
          <NumberBox
            label="Reserve, per cent of the bank"
            value={plan().reservePercent}
            step={1}
            least={0}
            wrongIds={wrongIds("reservePercent")}
            onEdit={(value) => state.edit("reservePercent", { reservePercent: value })}
            onSettle={state.settle}
          />
          <span class="unit">%</span>
        </Field>
      </div>
      <div class="wrongs" role="alert">
        <For each={state.problems()}>
          {(problem, i) => (
            <p class="wrong" id={`wrong-${i()}`}>
              <Warning /> {problem.sentence} Until it is put right, the picture keeps the last good plan.
            </p>
          )}
        </For>
      </div>
      <div class="plan-variants">
        <For each={variants}>
          {(variant) => (
            <label class="variant">
              <input
                type="checkbox"
                checked={plan().variants.includes(variant.id)}
                onChange={(event) => toggle(variant.id, event.currentTarget.checked)}
              />
              {capital(variant.name)}
            </label>
          )}
        </For>
      </div>
    </form>
  );
}

function fieldName(group: PlanGroup): string {
  return group.name.length <= LONGEST_NAME ? group.name : capital(group.id);
}

/** A blank with its name above and what it was beside that. */
function Field(props: { name: string; was: string | null; pair?: boolean; children: JSX.Element }) {
  return (
    <fieldset class="field" classList={{ "field-pair": props.pair ?? false }}>
      <legend>
        <Show when={props.was !== null}>
          <span class="changed" aria-hidden="true" />
        </Show>
        {props.name}
        <Show when={props.was !== null}>
          <span class="was">was {props.was}</span>
        </Show>
      </legend>
      <div class="blank">{props.children}</div>
    </fieldset>
  );
}

function Warning() {
  return (
    <svg class="warning" width="15" height="14" viewBox="0 0 15 14" aria-hidden="true">
      <path d="M7.5 1L14 13H1Z" />
      <path d="M7.5 5v4M7.5 10.4v1.4" />
    </svg>
  );
}
