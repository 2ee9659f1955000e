import { createEffect, createSignal, createUniqueId, For, type JSX, Show } from "solid-js";
import { planGroups, SKIES, type Sky, switchableVariants } from "../plan/plan.ts";
import { figure, THIN } from "../words/numbers.ts";
import type { PlanState } from "./makePlanState.ts";

const SKY_WORDS: Record<Sky, string> = {
  typical: "typical of the month",
  clear: "clear, every day",
  fair: "fair, every day",
  mixed: "mixed, every day",
  cloudy: "cloudy, every day",
  overcast: "overcast, every day",
};

/** A number as somebody types it: "280", "27,5"; what cannot be read stays text. */
export function typedNumber(text: string): number | string {
  const trimmed = text.trim().replace(",", ".");
  return trimmed !== "" && Number.isFinite(Number(trimmed)) ? Number(trimmed) : text;
}

/** What one can change about the plan, as ruled blanks on one line; the picture hangs below. */
export function PlanFields(props: { state: PlanState }) {
  const { state } = props;
  const groups = () =>
    planGroups(state.document).filter(
      (group) => group.variant === null || state.plan().variants.includes(group.variant),
    );
  const sentences = (place: string) =>
    state
      .problems()
      .filter((problem) => problem.place === place)
      .map((problem) => problem.sentence);
  const base = () => state.base;
  const setPanels = (id: string, count: number | string) =>
    state.edit(`panels.${id}`, { panels: { ...state.plan().panels, [id]: count } });
  const toggle = (id: string, isIn: boolean) => {
    state.settle();
    const others = state.plan().variants.filter((variant) => variant !== id);
    state.edit(`variant.${id}`, { variants: isIn ? [...others, id].sort() : others });
  };
  return (
    <form class="plan" aria-label="The plan" onSubmit={(event) => event.preventDefault()}>
      <div class="plan-fields">
        <Field
          name="Bank"
          was={
            state.plan().blockAh !== base().blockAh || state.plan().inParallel !== base().inParallel
              ? `${base().inParallel} × ${base().blockAh}${THIN}Ah`
              : null
          }
          problems={[...sentences("inParallel"), ...sentences("blockAh")]}
        >
          {(described) => (
            <>
              <NumberBox
                label="Blocks side by side"
                value={state.plan().inParallel}
                step={1}
                least={1}
                wide={false}
                wrong={sentences("inParallel").length > 0}
                describedBy={described}
                onEdit={(value) => state.edit("inParallel", { inParallel: value })}
                onSettle={state.settle}
              />
              <span class="unit">×</span>
              <NumberBox
                label="Ampere-hours of one block"
                value={state.plan().blockAh}
                step={10}
                least={10}
                wide={true}
                wrong={sentences("blockAh").length > 0}
                describedBy={described}
                onEdit={(value) => state.edit("blockAh", { blockAh: value })}
                onSettle={state.settle}
              />
              <span class="unit">Ah</span>
            </>
          )}
        </Field>
        <For each={groups()}>
          {(group) => (
            <Field
              name={group.name}
              was={state.plan().panels[group.id] === base().panels[group.id] ? null : String(base().panels[group.id])}
              problems={sentences(`panels.${group.id}`)}
            >
              {(described) => (
                <>
                  <NumberBox
                    label={`Panels: ${group.name}`}
                    value={state.plan().panels[group.id]!}
                    step={group.inSeries}
                    least={0}
                    wide={false}
                    wrong={sentences(`panels.${group.id}`).length > 0}
                    describedBy={described}
                    onEdit={(value) => setPanels(group.id, value)}
                    onSettle={state.settle}
                  />
                  <span class="unit">
                    × {figure(group.ratedW)}
                    {THIN}W
                  </span>
                </>
              )}
            </Field>
          )}
        </For>
        <Field
          name="Sky"
          was={state.plan().sky === base().sky ? null : base().sky === null ? "as written" : base().sky}
          problems={sentences("sky")}
        >
          {(described) => (
            <select
              aria-label="Sky"
              aria-describedby={described}
              onChange={(event) => {
                state.settle();
                state.edit("sky", { sky: (event.currentTarget.value || null) as Sky | null });
              }}
            >
              <Show when={base().sky === null}>
                <option value="" selected={state.plan().sky === null}>
                  as the plan has it
                </option>
              </Show>
              <For each={SKIES}>
                {(sky) => (
                  <option value={sky} selected={state.plan().sky === sky}>
                    {SKY_WORDS[sky]}
                  </option>
                )}
              </For>
            </select>
          )}
        </Field>
        <Field
          name="Reserve"
          was={state.plan().reservePercent === base().reservePercent ? null : `${base().reservePercent}${THIN}%`}
          problems={sentences("reservePercent")}
        >
          {(described) => (
            <>
              <NumberBox
                label="Reserve, per cent of the bank"
                value={state.plan().reservePercent}
                step={1}
                least={0}
                wide={false}
                wrong={sentences("reservePercent").length > 0}
                describedBy={described}
                onEdit={(value) => state.edit("reservePercent", { reservePercent: value })}
                onSettle={state.settle}
              />
              <span class="unit">%</span>
            </>
          )}
        </Field>
      </div>
      <div class="plan-variants">
        <For each={switchableVariants(state.document)}>
          {(variant) => (
            <label class="variant">
              <input
                type="checkbox"
                checked={state.plan().variants.includes(variant.id)}
                onChange={(event) => toggle(variant.id, event.currentTarget.checked)}
              />
              <span>{variant.name}</span>
            </label>
          )}
        </For>
      </div>
      <For each={state.problems().filter((problem) => problem.place === null)}>
        {(problem) => (
          <p class="wrong" role="alert">
            <Warning /> {problem.sentence}
          </p>
        )}
      </For>
    </form>
  );
}

/** A blank with its name above, what it was, and under it what is wrong. */
function Field(props: {
  name: string;
  was: string | null;
  problems: readonly string[];
  children: (describedBy: string) => JSX.Element;
}) {
  const id = createUniqueId();
  return (
    <fieldset class="field" classList={{ "field-wrong": props.problems.length > 0 }}>
      <legend>
        <Show when={props.was !== null}>
          <span class="changed" aria-hidden="true" />
        </Show>
        {props.name}
        <Show when={props.was !== null}>
          <span class="was">was {props.was}</span>
        </Show>
      </legend>
      <div class="blank">{props.children(id)}</div>
      <p class="wrong" id={id} role="alert" hidden={props.problems.length === 0}>
        <For each={props.problems}>
          {(sentence) => (
            <>
              <Warning /> {sentence} The picture keeps the last good plan until then.
            </>
          )}
        </For>
      </p>
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

function NumberBox(props: {
  label: string;
  value: number | string;
  step: number;
  least: number;
  wide: boolean;
  wrong: boolean;
  describedBy: string;
  onEdit: (value: number | string) => void;
  onSettle: () => void;
}) {
  const [text, setText] = createSignal(String(props.value));
  // What was typed stays as typed ("280.") as long as it means the plan's value.
  createEffect(() => {
    if (typedNumber(text()) !== props.value) setText(String(props.value));
  });
  const type = (typed: string) => {
    setText(typed);
    props.onEdit(typedNumber(typed));
  };
  const move = (steps: number) => {
    if (typeof props.value !== "number") return;
    type(String(Math.max(props.least, props.value + steps * props.step)));
  };
  return (
    <span class="number" classList={{ "number-wide": props.wide }}>
      <button type="button" class="nudge" aria-label={`${props.label}: less`} onClick={() => move(-1)}>
        −
      </button>
      <input
        type="text"
        inputmode="decimal"
        autocomplete="off"
        aria-label={props.label}
        aria-invalid={props.wrong}
        aria-describedby={props.describedBy}
        value={text()}
        onInput={(event) => type(event.currentTarget.value)}
        onFocus={(event) => event.currentTarget.select()}
        onBlur={() => props.onSettle()}
        onKeyDown={(event) => {
          if (event.key !== "ArrowUp" && event.key !== "ArrowDown") return;
          event.preventDefault();
          move(event.key === "ArrowUp" ? 1 : -1);
        }}
      />
      <button type="button" class="nudge" aria-label={`${props.label}: more`} onClick={() => move(1)}>
        +
      </button>
    </span>
  );
}
