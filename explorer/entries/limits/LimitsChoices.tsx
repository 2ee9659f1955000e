import { createMemo } from "solid-js";
import type { EntryDoc } from "../../../engine/notebook/notebook.ts";
import { typedNumber } from "../../words/typedNumber.ts";

interface Choice {
  readonly field: "dropIn100" | "chargeIn100" | "coldestC";
  readonly label: string;
  readonly unit: string;
  readonly low: number;
  readonly high: number;
}

const CHOICES: readonly Choice[] = [
  { field: "dropIn100", label: "Most that a run may lose", unit: "% of its volts", low: 0.1, high: 50 },
  { field: "chargeIn100", label: "Charge at which peaks are met", unit: "%", low: 0, high: 100 },
  { field: "coldestC", label: "Coldest air that panels meet", unit: "°C", low: -90, high: 60 },
];

/** What the limits are met at; an empty field takes the run's own. */
export function LimitsChoices(props: {
  doc: EntryDoc<"limits">;
  usual: Readonly<Record<Choice["field"], string>>;
  onEdit: (doc: EntryDoc<"limits">, label: string) => void;
  onWrong: (sentence: string) => void;
}) {
  const put = ({ field, label, unit, low, high }: Choice, box: HTMLInputElement) => {
    const value = typedNumber(box.value);
    const { [field]: before, ...rest } = props.doc;
    props.onWrong("");
    if (box.value.trim() === "") return before === undefined ? undefined : props.onEdit(rest, field);
    if (typeof value === "number" && value >= low && value <= high) {
      return value === before ? undefined : props.onEdit({ ...props.doc, [field]: value }, field);
    }
    props.onWrong(
      `${label} is "${box.value}" but must be a number from ${low} to ${high} ${unit}; it stays as it was.`,
    );
    box.value = before === undefined ? "" : String(before);
  };
  return (
    <p class="choices no-print">
      {CHOICES.map((choice) => {
        const value = createMemo(() => props.doc[choice.field]);
        return (
          <label class="name-field limit-choice">
            {choice.label}
            <input
              type="text"
              inputmode="decimal"
              autocomplete="off"
              placeholder={props.usual[choice.field]}
              value={value() ?? ""}
              onChange={(event) => put(choice, event.currentTarget)}
            />
            {choice.unit}
          </label>
        );
      })}
    </p>
  );
}
