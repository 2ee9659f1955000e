import { createMemo, createUniqueId, For } from "solid-js";
import { createStore } from "solid-js/store";
import { schemaAt } from "../../engine/fields/formSchema.ts";
import { readScenario } from "../../engine/scenario/readScenario.ts";
import type { ScenarioInput } from "../../engine/scenario/scenario.ts";
import { defaultAnswers, startScenario } from "../../engine/start/index.ts";
import { measured } from "../gear/ownMeasured.ts";
import { WarningSign } from "../parts/WrongLines.tsx";
import { wrongInWords } from "../parts/wrongInWords.ts";
import { GearQuestion } from "./GearQuestion.tsx";
import { WhenQuestion, WhereQuestion } from "./PlaceAndTime.tsx";
import { ChargingQuestion, OperatingQuestion } from "./PowerQuestions.tsx";
import { ShadeQuestion } from "./ShadeQuestion.tsx";
import type { Answers, StartFields } from "./startFields.tsx";
import "./start.css";

/**
 * Six questions with an answer each from the start; any of them may be left as it is. Ends with a scenario.
 * @param props.today a date such as "2026-10-05", from which the weekend is counted; the clock's when left out
 */
export function StartQuestions(props: { onDone(document: ScenarioInput): void; today?: string }) {
  const today = () => props.today ?? new Date().toISOString().slice(0, 10);
  const [answers, setAnswers] = createStore<Answers>(defaultAnswers(today()));
  const made = createMemo(() => startScenario({ ...answers, gear: { ...answers.gear } }, measured.measured()));
  const read = createMemo(() => readScenario(made()));
  const problems = () => {
    const result = read();
    return result.ok ? [] : result.problems;
  };
  const fields: StartFields = { id: createUniqueId(), answers, setAnswers };

  return (
    <form
      class="start"
      aria-label="Six questions"
      onSubmit={(event) => {
        event.preventDefault();
        if (read().ok) props.onDone(made());
      }}
    >
      <p class="start-lead">
        Six questions, each with an answer already. Change what is different with you, then work it out.
      </p>
      <WhereQuestion fields={fields} />
      <WhenQuestion fields={fields} />
      <GearQuestion fields={fields} />
      <OperatingQuestion fields={fields} />
      <ChargingQuestion fields={fields} />
      <ShadeQuestion fields={fields} />
      <div class="start-end" aria-live="polite">
        <For each={problems()}>
          {(problem) => (
            <p class="wrong">
              <WarningSign /> {wrongInWords(problem, undefined, schemaAt(made(), problem.path), null).sentence}
            </p>
          )}
        </For>
      </div>
      <p class="start-go">
        <button type="submit" class="go" disabled={!read().ok}>
          Work it out
        </button>
      </p>
    </form>
  );
}
