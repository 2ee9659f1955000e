import { For, type JSX } from "solid-js";
import type { SetStoreFunction } from "solid-js/store";
import { ratedWOf, type StartAnswers } from "../../engine/start/index.ts";
import { displayUnit, fromDisplay, toDisplay } from "../../engine/words/displayUnits.ts";
import { TypedBox } from "../parts/TypedBox.tsx";
import { arrowStep, typedQuantity, typedWithUnit } from "../parts/typedQuantity.ts";
import { StartField } from "./startParts.tsx";

/** Keys of answers that are numbers. */
type NumberKey = { [Key in keyof StartAnswers]: StartAnswers[Key] extends number ? Key : never }[keyof StartAnswers];

/** The answers as they are being given. */
export type Answers = { -readonly [Key in keyof Omit<StartAnswers, "gear">]: StartAnswers[Key] } & {
  gear: Record<string, number>;
};

/** The answers, and what makes fields of them. */
export interface StartFields {
  /** Starts the ids of fields. */
  readonly id: string;
  readonly answers: Answers;
  readonly setAnswers: SetStoreFunction<Answers>;
}

/** A number between two others, with its unit. */
export function numberField(
  { id, answers, setAnswers }: StartFields,
  key: NumberKey,
  label: string,
  unit: string,
  low: number,
  high: number,
  isWhole = false,
): JSX.Element {
  return (
    <StartField label={label}>
      <TypedBox
        id={`${id}-${key}`}
        label={unit === "" ? label : `${label}, ${displayUnit(unit)}`}
        value={String(toDisplay(answers[key], unit))}
        room={5}
        isNumber={true}
        isWrong={!(Number(answers[key]) >= low && Number(answers[key]) <= high)}
        describedBy={`${id}-${key}-range`}
        onCommit={(text) => {
          const shown = typedQuantity(text, displayUnit(unit));
          const typed = typeof shown === "number" ? fromDisplay(shown, unit) : typedWithUnit(text, unit);
          if (typeof typed === "number" && typed >= low && typed <= high)
            setAnswers(key, isWhole ? Math.round(typed) : typed);
        }}
        onStep={(direction, isLarge) => {
          const by = arrowStep(answers[key], { unit, low, high }, isWhole) * (isLarge ? 10 : 1);
          setAnswers(
            key,
            Number(Math.min(high, Math.max(low, (Math.round(answers[key] / by) + direction) * by)).toPrecision(10)),
          );
        }}
      />
      <span class="unit">{displayUnit(unit)}</span>
      <span class="unseen" id={`${id}-${key}-range`}>
        from {toDisplay(low, unit)} to {toDisplay(high, unit)}
      </span>
    </StartField>
  );
}

/** One of some words. */
export function choiceField<Key extends keyof StartAnswers>(
  { answers, setAnswers }: StartFields,
  key: Key,
  label: string,
  choices: Readonly<Record<string, string>>,
): JSX.Element {
  return (
    <StartField label={label}>
      <select
        class="box"
        aria-label={label}
        onChange={(event) => {
          setAnswers(key as "mode", event.currentTarget.value as never);
          if (key === "radio") setAnswers("transmitW", ratedWOf(answers.radio));
        }}
      >
        <For each={Object.entries(choices)}>
          {([value, words]) => (
            <option value={value} selected={answers[key] === value}>
              {words}
            </option>
          )}
        </For>
      </select>
    </StartField>
  );
}

/** A date and a time of day. */
export function momentField({ answers, setAnswers }: StartFields, key: "start" | "end", label: string): JSX.Element {
  return (
    <StartField label={label}>
      <input
        class="box"
        type="datetime-local"
        aria-label={label}
        value={answers[key]}
        onChange={(event) => {
          const typed = event.currentTarget.value.slice(0, 16);
          if (/^(19|2\d)\d\d-/.test(typed)) setAnswers(key, typed);
        }}
      />
    </StartField>
  );
}
