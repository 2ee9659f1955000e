import { For } from "solid-js";
import { SHADE, type StartAnswers } from "../../engine/start/index.ts";
import type { StartFields } from "./startFields.tsx";
import { Question } from "./startParts.tsx";

/** What stands about. */
export function ShadeQuestion({ fields }: { fields: StartFields }) {
  const { id, answers, setAnswers } = fields;
  return (
    <Question
      n={6}
      title="Where is the shade?"
      says="Trees as seen from the panels; leaves by the month. You can draw your own later."
    >
      <fieldset class="shade">
        <legend class="unseen">Shade</legend>
        <For each={Object.entries(SHADE)}>
          {([value, words]) => (
            <label class="weekday">
              <input
                type="radio"
                name={`${id}-shade`}
                checked={answers.shade === value}
                onChange={() => setAnswers("shade", value as StartAnswers["shade"])}
              />
              {words}
            </label>
          )}
        </For>
      </fieldset>
    </Question>
  );
}
