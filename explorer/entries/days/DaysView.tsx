import { Show } from "solid-js";
import { daysCsv } from "../../../engine/answers/days/dayRows.ts";
import { runOf } from "../../../engine/answers/run/ask.ts";
import type { EntryProps } from "../../notebook/entryKind.ts";
import { CsvButton } from "../../parts/CsvButton.tsx";
import { Problems } from "../../parts/EntryState.tsx";
import { fadesWhile } from "../../parts/fadesWhile.ts";
import { ScenarioChoice } from "../../parts/ScenarioChoice.tsx";
import { DaysTable } from "./DaysTable.tsx";

/** The days of one run in figures. */
export function DaysView(props: EntryProps<"days">) {
  const found = () => runOf(props.page, props.doc.scenario);
  return (
    <div class="margin-left" ref={fadesWhile(() => found().stale)}>
      <p class="choices no-print">
        <ScenarioChoice
          page={props.page}
          label="Scenario whose days these are"
          value={props.doc.scenario}
          onPick={(scenario) => props.edit({ scenario }, "scenario")}
        />
        <CsvButton name={found().result?.name ?? ""} what="days" result={found().result} csv={daysCsv} />
      </p>
      <Problems of={[found()]} />
      <Show when={found().result}>{(picture) => <DaysTable picture={picture()} />}</Show>
    </div>
  );
}

export function daysSummary(props: EntryProps<"days">): string {
  const days = runOf(props.page, props.doc.scenario).result?.days.length;
  return days === undefined ? "working" : `${days} ${days === 1 ? "day" : "days"}`;
}
