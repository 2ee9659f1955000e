import { For } from "solid-js";
import { numbersOf } from "../../../engine/answers/docField.ts";
import { LimitsDoc } from "../../../engine/answers/limits/doc.ts";
import { DocNumberBox } from "../../parts/DocNumberBox.tsx";

const NUMBERS = numbersOf(LimitsDoc);

/** What the limits are met at; an empty field takes the run's own. */
export function LimitsChoices(props: {
  doc: LimitsDoc;
  /** What an empty field takes, where the run tells; else the field says it itself. */
  usual: Partial<Record<keyof LimitsDoc, string>>;
  onEdit: (doc: LimitsDoc, label: string) => void;
  onWrong: (sentence: string) => void;
}) {
  return (
    <p class="choices no-print">
      <For each={NUMBERS}>
        {(number) => (
          <DocNumberBox
            number={number}
            value={props.doc[number.field] as number | undefined}
            usual={props.usual[number.field] ?? number.leftOut ?? ""}
            onPut={(value) => {
              const { [number.field]: _, ...rest } = props.doc;
              props.onEdit(
                { ...rest, ...(value === undefined ? {} : { [number.field]: value }) } as LimitsDoc,
                number.field,
              );
            }}
            onWrong={props.onWrong}
          />
        )}
      </For>
    </p>
  );
}
