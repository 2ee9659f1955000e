import type { DocNumber } from "../../engine/answers/docField.ts";
import { typedNumber } from "../words/typedNumber.ts";

/** A number of an entry's document: its label, a field, its unit. What it may not be is said, and it stays as it was. */
export function DocNumberBox(props: {
  number: DocNumber;
  value: number | undefined;
  /** What counts where the field is left empty; a number that has none cannot be left out. */
  usual?: string;
  describedBy?: string | undefined;
  onPut: (value: number | undefined) => void;
  onWrong: (sentence: string) => void;
}) {
  const put = (box: HTMLInputElement) => {
    const { label, low, high, unit } = props.number;
    const value = typedNumber(box.value);
    const isEmpty = box.value.trim() === "" && props.usual !== undefined;
    props.onWrong("");
    if (isEmpty || (typeof value === "number" && value >= low && value <= high)) {
      const wanted = isEmpty ? undefined : (value as number);
      if (wanted !== props.value) props.onPut(wanted);
      return;
    }
    props.onWrong(
      `“${label}” is “${box.value}” but must be a number from ${low} to ${high} ${unit}; it stays as it was.`,
    );
    box.value = props.value === undefined ? "" : String(props.value);
  };
  return (
    <label class="name-field number-choice">
      {props.number.label}
      <input
        type="text"
        inputmode="decimal"
        autocomplete="off"
        placeholder={props.usual}
        value={props.value ?? ""}
        aria-describedby={props.describedBy}
        onChange={(event) => put(event.currentTarget)}
      />
      {props.number.unit}
    </label>
  );
}
