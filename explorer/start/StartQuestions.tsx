import type { ScenarioInput } from "../../engine/index.ts";

export function StartQuestions(props: { onDone(document: ScenarioInput): void; today?: string }) {
  return <p>{props.today}</p>;
}
