import { createEffect, createSignal } from "solid-js";
import { typedNumber } from "../words/typedNumber.ts";

/** A box for a number: typed, moved with the arrow keys, or by thumb with the buttons that a phone shows. */
export function NumberBox(props: {
  label: string;
  value: number | string;
  step: number;
  least: number;
  wide?: boolean;
  /** Ids of the sentences that say what is wrong; empty when nothing is. */
  wrongIds: string;
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
    <span class="number" classList={{ "number-wide": props.wide ?? false }}>
      <button type="button" class="nudge" aria-label={`Less: ${props.label}`} onClick={() => move(-1)}>
        −
      </button>
      <input
        type="text"
        inputmode="decimal"
        autocomplete="off"
        aria-label={props.label}
        aria-invalid={props.wrongIds !== ""}
        aria-describedby={props.wrongIds || undefined}
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
      <button type="button" class="nudge" aria-label={`More: ${props.label}`} onClick={() => move(1)}>
        +
      </button>
    </span>
  );
}
