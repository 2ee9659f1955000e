import { createMemo, createSignal, createUniqueId, For, Show } from "solid-js";
import { numbersOf } from "../../../engine/answers/docField.ts";
import { SizingDoc } from "../../../engine/answers/sizing/doc.ts";
import { sizeFields, valuesAbout } from "../../../engine/answers/sizing/sizeFields.ts";
import { typedValues } from "../../../engine/answers/sizing/sizingWords.ts";
import type { ScenarioInput } from "../../../engine/scenario/scenario.ts";
import type { SizeWish } from "../../../engine/size/sizeAxis.ts";
import { DocNumberBox } from "../../parts/DocNumberBox.tsx";

const NUMBERS = numbersOf(SizingDoc);

/** Which two numbers the map looks along, at which values, and what it is held against. */
export function SizingChoices(props: {
  document: ScenarioInput;
  doc: SizingDoc;
  /** What is looked along now, whether chosen or usual. */
  across: SizeWish & { values: readonly number[] };
  up: (SizeWish & { values: readonly number[] }) | null;
  edit: (doc: SizingDoc, label: string) => void;
}) {
  const [wrong, setWrong] = createSignal<string | null>(null);
  const wrongId = createUniqueId();
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
          <For each={NUMBERS}>
            {(number) => (
              <DocNumberBox
                number={number}
                value={props.doc[number.field] as number}
                describedBy={wrong() === null ? undefined : wrongId}
                onPut={(value) => props.edit({ ...props.doc, [number.field]: value }, number.field)}
                onWrong={(sentence) => setWrong(sentence || null)}
              />
            )}
          </For>
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
