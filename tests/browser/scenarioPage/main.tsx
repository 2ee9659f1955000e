/** One form on an otherwise empty page, for the browser tests: what it holds is readable from outside. */
import "@fontsource-variable/radio-canada";
import "../../../engine/drawing/palette.css";
import "../../../explorer/sheet.css";
import { createMemo, createSignal, Show } from "solid-js";
import { render } from "solid-js/web";
import { applyChanges } from "../../../engine/scenario/applyChanges.ts";
import type { Change } from "../../../engine/scenario/change.ts";
import { readScenario } from "../../../engine/scenario/readScenario.ts";
import type { ScenarioInput } from "../../../engine/scenario/scenario.ts";
import { ScenarioEditor } from "../../../explorer/entries/scenario/ScenarioEditor.tsx";
import { StartQuestions } from "../../../explorer/start/StartQuestions.tsx";
import hut from "../../../scenarios/polar-hut.json";
import grove from "../../../scenarios/walnut-grove.json";

declare global {
  interface Window {
    scenario: ScenarioInput;
    labels: string[];
  }
}

const query = new URLSearchParams(location.search);
document.documentElement.dataset.light = query.get("light") ?? "day";
const example = (query.get("plan") === "hut" ? hut : grove) as unknown as ScenarioInput;

function Page() {
  const variant = query.get("variant");
  const changes = example.variants?.find((each) => each.id === variant)?.changes ?? [];
  const first = applyChanges(example, changes as Change[]);
  const [held, setHeld] = createSignal<ScenarioInput>(first.ok ? (first.document as ScenarioInput) : example);
  const problems = createMemo(() => {
    const read = readScenario(held());
    return read.ok ? [] : read.problems;
  });
  window.labels = [];
  const onChanges = (edit: Change[], label: string) => {
    const after = applyChanges(held(), edit);
    if (!after.ok) throw new Error(after.problems[0]!.message);
    window.labels.push(label);
    setHeld(after.document as ScenarioInput);
    window.scenario = held();
  };
  window.scenario = held();
  const isStart = query.has("start");
  const [isDone, setDone] = createSignal(false);
  const done = (made: ScenarioInput) => {
    setHeld(made);
    window.scenario = made;
    setDone(true);
  };
  return (
    <main style={{ padding: "16px", "max-width": "1078px", margin: "0 auto", background: "var(--sheet)" }}>
      <Show
        when={!isStart || isDone()}
        fallback={
          <>
            <h1 class="unseen">New notebook</h1>
            <StartQuestions today="2026-10-05" onDone={done} />
          </>
        }
      >
        <h1 class="unseen">Scenario</h1>
        <h2>{held().name}</h2>
        <ScenarioEditor
          document={held()}
          base={query.has("alone") ? undefined : example}
          problems={problems()}
          onChanges={onChanges}
        />
      </Show>
    </main>
  );
}

render(() => <Page />, document.body);
