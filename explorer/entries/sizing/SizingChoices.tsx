import { createMemo, createSignal, createUniqueId, For, Show } from "solid-js";
import { sizeFields, valuesAbout } from "../../../engine/answers/sizing/sizeFields.ts";
import { typedValues } from "../../../engine/answers/sizing/sizingWords.ts";
import type { EntryDoc } from "../../../engine/notebook/notebook.ts";
import type { ScenarioInput } from "../../../engine/scenario/scenario.ts";
import type { SizeWish } from "../../../engine/size/sizeAxis.ts";

type Doc = EntryDoc<"sizing">;

/** Which two numbers the map looks along, at which values, and what it is held against. */
export function SizingChoices(props: {
  document: ScenarioInput;
  doc: Doc;
  /** What is looked along now, whether chosen or usual. */
  across: SizeWish & { values: readonly number[] };
  up: (SizeWish & { values: readonly number[] }) | null;
  edit: (doc: Doc, label: string) => void;
}) {
  const [wrong, setWrong] = createSignal<string | null>(null);
  const wrongId = createUniqueId();
  const number = (name: "targetIn100" | "autonomyDays", label: string, low: number, high: number, unit: string) => (
    <label class="name-field">
      {label}
      <input
        class="size-number"
        type="text"
        inputmode="decimal"
        autocomplete="off"
        value={props.doc[name]}
        aria-describedby={wrong() === null ? undefined : wrongId}
        onChange={(event) => {
          const text = event.currentTarget.value.trim().replace(",", ".");
          const value = Number(text);
          if (text === "" || !(value >= low && value <= high)) {
            setWrong(
              `${label}: “${text}” must be a number from ${low} to ${high}; ${props.doc[name]} is used meanwhile.`,
            );
            event.currentTarget.value = String(props.doc[name]);
            return;
          }
          setWrong(null);
          props.edit({ ...props.doc, [name]: value }, name);
        }}
      />
      {unit}
    </label>
  );
  return (
    <>
      <div class="size-choices no-print">
        <Direction
          label="Across"
          document={props.document}
          now={props.across}
          other={props.up?.at ?? null}
          wrongId={wrong() === null ? undefined : wrongId}
          onWrong={setWrong}
          onPick={(across) => props.edit({ ...props.doc, across }, "across")}
        />
        <Show when={props.up}>
          {(up) => (
            <Direction
              label="Up"
              document={props.document}
              now={up()}
              other={props.across.at}
              wrongId={wrong() === null ? undefined : wrongId}
              onWrong={setWrong}
              onPick={(chosen) => props.edit({ ...props.doc, up: chosen }, "up")}
            />
          )}
        </Show>
        <p class="choices">
          {number("targetIn100", "Is to hold in", 1, 100, "of 100 skies")}
          {number("autonomyDays", "The handbook bridges", 0.1, 60, "days without sun")}
        </p>
      </div>
      <Show when={wrong()}>
        {(sentence) => (
          <p class="wrong" id={wrongId} role="alert">
            {sentence()}
          </p>
        )}
      </Show>
    </>
  );
}

function Direction(props: {
  label: string;
  document: ScenarioInput;
  now: { readonly at: string; readonly values: readonly number[] };
  other: string | null;
  wrongId: string | undefined;
  onWrong: (sentence: string | null) => void;
  onPick: (wish: { at: string; values: number[] }) => void;
}) {
  const fields = createMemo(() => sizeFields(props.document));
  const parts = createMemo(() => [...new Set(fields().map(({ of }) => of))]);
  const pick = (at: string) => {
    const field = fields().find((each) => each.at === at);
    if (field === undefined) return;
    const wish = valuesAbout(props.document, field);
    props.onWrong(null);
    props.onPick({ at, values: [...(wish.values as readonly number[])] });
  };
  return (
    <p class="choices">
      <label class="name-field">
        {props.label}
        <select
          class="size-field"
          aria-label={`${props.label}: what is looked along`}
          onChange={(event) => pick(event.currentTarget.value)}
        >
          <For each={parts()}>
            {(part) => (
              <optgroup label={part}>
                <For each={fields().filter(({ of, at }) => of === part && at !== props.other)}>
                  {(field) => (
                    <option value={field.at} selected={field.at === props.now.at}>
                      {part}: {field.label}
                    </option>
                  )}
                </For>
              </optgroup>
            )}
          </For>
        </select>
      </label>
      <label class="name-field">
        at
        <input
          class="size-values"
          type="text"
          autocomplete="off"
          aria-label={`${props.label}: values that are looked at`}
          aria-describedby={props.wrongId}
          value={props.now.values.join(", ")}
          onChange={(event) => {
            const text = event.currentTarget.value;
            const values = typedValues(text);
            if (values === null || values.length > 50) {
              props.onWrong(
                `“${text}” is no list of 1 to 50 numbers such as 140, 280, 560; the old one is used meanwhile.`,
              );
              event.currentTarget.value = props.now.values.join(", ");
              return;
            }
            props.onWrong(null);
            props.onPick({ at: props.now.at, values });
          }}
        />
      </label>
    </p>
  );
}
