import { createMemo, createUniqueId, For, Index, type JSX, Show } from "solid-js";
import type { ScenarioProblem } from "../../engine/answers/found.ts";
import type { Change } from "../../engine/scenario/change.ts";
import type { ScenarioInput } from "../../engine/scenario/scenario.ts";
import { figure, THIN } from "../../engine/words/numbers.ts";
import { NumberBox } from "./NumberBox.tsx";
import { changesOf, type Plan, type PlanGroup, planGroups, planOf, SKIES, type Sky } from "./plan.ts";
import { problemPlace, problemSentence } from "./problemPlace.ts";

const SKY_WORDS: Record<Sky, string> = {
  typical: "typical of month",
  clear: "clear",
  fair: "fair",
  mixed: "mixed",
  cloudy: "cloudy",
  overcast: "overcast",
};

const ratedWords = (ratedW: number | string) => (typeof ratedW === "number" ? figure(ratedW) : ratedW);

/** Names longer than this do not fit over a field. */
const LONGEST_NAME = 22;

const capital = (text: string) => text.charAt(0).toUpperCase() + text.slice(1);

/** The fields of a scenario that are filled most often, on one line; each with what it was in the scenario that it is based on. */
export function QuickFields(props: {
  document: ScenarioInput;
  base: ScenarioInput | null;
  problems: readonly ScenarioProblem[];
  onTurn: (field: string, changes: (document: ScenarioInput) => readonly Change[]) => void;
  onSettle: () => void;
}) {
  const id = createUniqueId();
  const plan = createMemo(() => planOf(props.document));
  const base = createMemo(() => planOf(props.base ?? props.document));
  const groups = () => planGroups(props.document);
  const problems = () =>
    props.problems.map((problem) => ({
      place: problemPlace(problem, props.document),
      sentence: problemSentence(problem.message),
    }));
  const wrongIds = (place: string) =>
    problems()
      .flatMap((problem, i) => (problem.place === place ? [`${id}-wrong-${i}`] : []))
      .join(" ");
  const was = (isChanged: boolean, words: string) => (isChanged ? words : null);
  const edit = (field: string, change: Partial<Plan>) => {
    const wanted = { ...plan(), ...change };
    props.onTurn(field, (document) => changesOf(document, wanted));
  };
  const setPanels = (group: string, count: number | string) =>
    edit(`panels.${group}`, { panels: { ...plan().panels, [group]: count } });

  return (
    <div class="plan">
      <div class="plan-fields">
        <BankField
          plan={plan()}
          base={base()}
          wrongIds={wrongIds}
          onEdit={(field, value) => edit(field, { [field]: value })}
          onSettle={props.onSettle}
        />
        {/* Place by place: every edit makes the groups again, and a field that is made again loses whoever types in it. */}
        <Index each={groups()}>
          {(group) => (
            <Field
              name={fieldName(group())}
              was={was(
                group().id in base().panels && plan().panels[group().id] !== base().panels[group().id],
                String(base().panels[group().id]),
              )}
            >
              <NumberBox
                label={`Panels, ${group().name}`}
                value={plan().panels[group().id]!}
                step={group().inSeries}
                least={0}
                wrongIds={wrongIds(`panels.${group().id}`)}
                onEdit={(value) => setPanels(group().id, value)}
                onSettle={props.onSettle}
              />
              <span class="unit">
                × {ratedWords(group().ratedW)}
                {THIN}W
              </span>
            </Field>
          )}
        </Index>
        <Field name="Sky each day" was={was(plan().sky !== base().sky, base().sky ?? "as written")}>
          <SkyChoice
            sky={plan().sky}
            isWritten={base().sky === null}
            wrongIds={wrongIds("sky")}
            onPick={(sky) => {
              props.onSettle();
              edit("sky", { sky });
            }}
          />
        </Field>
        <Field
          name="Reserve"
          was={was(plan().reservePercent !== base().reservePercent, `${base().reservePercent}${THIN}%`)}
        >
          <NumberBox
            label="Reserve, per cent of the bank"
            value={plan().reservePercent}
            step={1}
            least={0}
            wrongIds={wrongIds("reservePercent")}
            onEdit={(value) => edit("reservePercent", { reservePercent: value })}
            onSettle={props.onSettle}
          />
          <span class="unit">%</span>
        </Field>
      </div>
      <div class="wrongs" role="alert">
        <For each={problems()}>
          {(problem, i) => (
            <p class="wrong" id={`${id}-wrong-${i()}`}>
              <Warning /> {problem.sentence} Until it is put right, the last good result stays.
            </p>
          )}
        </For>
      </div>
    </div>
  );
}

/** Blocks side by side, and how much is in one. */
function BankField(props: {
  plan: Plan;
  base: Plan;
  wrongIds: (place: string) => string;
  onEdit: (field: "inParallel" | "blockAh", value: number | string) => void;
  onSettle: () => void;
}) {
  const was = () => {
    const { plan, base } = props;
    if (plan.blockAh === base.blockAh && plan.inParallel === base.inParallel) return null;
    return `${base.inParallel} × ${base.blockAh}${THIN}Ah`;
  };
  return (
    <Field name="Bank" pair={true} was={was()}>
      <NumberBox
        label="Blocks side by side"
        value={props.plan.inParallel}
        step={1}
        least={1}
        wrongIds={props.wrongIds("inParallel")}
        onEdit={(value) => props.onEdit("inParallel", value)}
        onSettle={props.onSettle}
      />
      <span class="unit">×</span>
      <NumberBox
        label="Ampere-hours of one block"
        value={props.plan.blockAh}
        step={10}
        least={10}
        wide={true}
        wrongIds={props.wrongIds("blockAh")}
        onEdit={(value) => props.onEdit("blockAh", value)}
        onSettle={props.onSettle}
      />
      <span class="unit">Ah</span>
    </Field>
  );
}

/** The one sky of all days; or those that the scenario has written day by day. */
function SkyChoice(props: {
  sky: Sky | null;
  /** Whether the scenario that this is based on has days of its own, which stay to be chosen. */
  isWritten: boolean;
  wrongIds: string;
  onPick: (sky: Sky | null) => void;
}) {
  return (
    <select
      aria-label="Sky each day"
      aria-describedby={props.wrongIds || undefined}
      onChange={(event) => props.onPick((event.currentTarget.value || null) as Sky | null)}
    >
      <Show when={props.isWritten}>
        <option value="" selected={props.sky === null}>
          as written
        </option>
      </Show>
      <For each={SKIES}>
        {(sky) => (
          <option value={sky} selected={props.sky === sky}>
            {SKY_WORDS[sky]}
          </option>
        )}
      </For>
    </select>
  );
}

function fieldName(group: PlanGroup): string {
  return group.name.length <= LONGEST_NAME ? group.name : capital(group.id);
}

/** A field with its name above and what it was beside that. */
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
      <div class="field-value">{props.children}</div>
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
