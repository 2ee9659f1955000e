import { createMemo, Show } from "solid-js";
import type { Change } from "../../../engine/scenario/change.ts";
import { readScenario } from "../../../engine/scenario/readScenario.ts";
import type { ScenarioInput } from "../../../engine/scenario/scenario.ts";
import { ShadeView } from "./ShadeView.tsx";

/** The shade that a document describes; the last one that made sense stays while a value is wrong. */
export function ShadeOfDocument(props: {
  document: ScenarioInput | null;
  onChanges(changes: Change[], label: string): void;
}) {
  const scenario = createMemo((before: ReturnType<typeof scenarioOf>) => scenarioOf(props.document) ?? before, null);
  return <Show when={scenario()}>{(now) => <ShadeView scenario={now()} onChanges={props.onChanges} />}</Show>;
}

function scenarioOf(document: ScenarioInput | null) {
  if (document === null) return null;
  const found = readScenario(document);
  return found.ok ? found.scenario : null;
}
