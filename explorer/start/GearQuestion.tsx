import { For } from "solid-js";
import { COMMON_GEAR, gearSays } from "../../engine/start/index.ts";
import { measured } from "../gear/ownMeasured.ts";
import type { StartFields } from "./startFields.tsx";
import { Question } from "./startParts.tsx";

/** What comes along, and how much of it. */
export function GearQuestion({ fields }: { fields: StartFields }) {
  const { answers, setAnswers } = fields;
  const gearCount = (gear: string, by: number) =>
    setAnswers("gear", gear, (now) => Math.min(20, Math.max(0, (now ?? 0) + by)));

  return (
    <Question
      n={3}
      title="What gear comes along?"
      says="Besides the radios. Draws are usual ones, or what you measured of yours on the gear shelf."
    >
      <ul class="gear">
        <For each={COMMON_GEAR}>
          {({ gear, usual }) => (
            <li class="gear-line" classList={{ "gear-in": (answers.gear[gear.id] ?? 0) > 0 }}>
              <label class="weekday gear-name">
                <input
                  type="checkbox"
                  checked={(answers.gear[gear.id] ?? 0) > 0}
                  onChange={(event) =>
                    setAnswers("gear", gear.id, event.currentTarget.checked ? Math.max(1, usual) : 0)
                  }
                />
                {gear.name}
              </label>
              <span class="gear-says">{gearSays(gear, measured.of(gear.id)?.working)}</span>
              <span class="gear-count">
                <button
                  type="button"
                  class="count-act"
                  aria-label={`Fewer: ${gear.name}`}
                  disabled={(answers.gear[gear.id] ?? 0) === 0}
                  onClick={() => gearCount(gear.id, -1)}
                >
                  −
                </button>
                <output aria-label={`How many: ${gear.name}`}>{answers.gear[gear.id] ?? 0}</output>
                <button
                  type="button"
                  class="count-act"
                  aria-label={`More: ${gear.name}`}
                  onClick={() => gearCount(gear.id, 1)}
                >
                  +
                </button>
              </span>
            </li>
          )}
        </For>
      </ul>
    </Question>
  );
}
