import { createSignal, createUniqueId, For, Show } from "solid-js";
import { OWNED_FIELDS, OwnedThing } from "../../../engine/packing/ownedThing.ts";
import { typedNumber } from "../../words/typedNumber.ts";
import { type OwnedField, ownedFields } from "./ownedFields.ts";

const OF_ALL = ["name", "count", "massKg", "setupMinutes", "get", "cost", "who"];

/** Everything that can be said of one thing. What is wrong is said, and the field stays as it was. */
export function OwnedForm(props: {
  thing: OwnedThing;
  /** Null takes it off the list. */
  onPut: (thing: OwnedThing | null) => void;
  onClose: () => void;
}) {
  const [wrong, setWrong] = createSignal("");
  const wrongId = createUniqueId();
  const names = () => [...OF_ALL, ...OWNED_FIELDS[props.thing.kind].needs, ...OWNED_FIELDS[props.thing.kind].may];
  const put = (field: OwnedField, typed: string): boolean => {
    const { [field.name as "awg"]: _, ...rest } = props.thing;
    // A lead's conductor is stated in one way: the other gives way.
    if (field.name === "awg" || field.name === "mm2") delete rest[field.name === "awg" ? "mm2" : ("awg" as "mm2")];
    const value = typed.trim() === "" ? undefined : field.isNumber ? typedNumber(typed) : typed;
    const read = OwnedThing.safeParse({ ...rest, ...(value === undefined ? {} : { [field.name]: value }) });
    if (read.success) {
      setWrong("");
      props.onPut(read.data);
      return true;
    }
    const [issue] = read.error.issues;
    const must = /^(a |one of|text|\d)/.test(issue!.message) ? "must be " : "";
    setWrong(`“${field.label}” is “${typed}” but ${must}${issue!.message}; it stays as it was.`);
    return false;
  };
  return (
    <fieldset class="packing-form no-print">
      <legend>{props.thing.name}</legend>
      <For each={names()}>
        {(name) => {
          const field = ownedFields[name]!;
          return (
            <FieldBox
              field={field}
              value={props.thing[name as keyof OwnedThing]}
              describedBy={wrong() === "" ? undefined : wrongId}
              onPut={(typed) => put(field, typed)}
            />
          );
        }}
      </For>
      <p class="acts-row">
        <button type="button" class="act" onClick={() => props.onClose()}>
          Done
        </button>
        <button type="button" class="act" onClick={() => props.onPut(null)}>
          Take it off the list
        </button>
      </p>
      <p class="wrong" id={wrongId} role="alert">
        {wrong()}
      </p>
    </fieldset>
  );
}

/** One field: a box, or a choice of a few words. */
function FieldBox(props: {
  field: OwnedField;
  value: string | number | undefined;
  describedBy: string | undefined;
  /** @returns whether it may be so; else the box goes back to what it was */
  onPut: (typed: string) => boolean;
}) {
  const put = (box: HTMLInputElement | HTMLSelectElement) => {
    if (!props.onPut(box.value)) box.value = String(props.value ?? "");
  };
  return (
    <Show
      when={props.field.choices}
      fallback={
        <label class="name-field">
          {props.field.label}
          <input
            type="text"
            inputmode={props.field.isNumber ? "decimal" : "text"}
            autocomplete="off"
            class={props.field.isNumber ? "packing-number" : "packing-text"}
            value={props.value ?? ""}
            aria-describedby={props.describedBy}
            onChange={(event) => put(event.currentTarget)}
          />
        </label>
      }
    >
      {(choices) => (
        <label class="name-field">
          {props.field.label}
          <select aria-describedby={props.describedBy} onChange={(event) => put(event.currentTarget)}>
            <Show when={props.field.isNeeded !== true}>
              <option value="" selected={props.value === undefined}>
                {props.field.leftOut}
              </option>
            </Show>
            <For each={choices()}>
              {([choice, words]) => (
                <option value={choice} selected={String(props.value) === choice}>
                  {words}
                </option>
              )}
            </For>
          </select>
        </label>
      )}
    </Show>
  );
}
