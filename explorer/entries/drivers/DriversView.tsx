import { For, Show } from "solid-js";
import { driversOf } from "../../../engine/answers/drivers/ask.ts";
import { driversSentence } from "../../../engine/answers/drivers/driversWords.ts";
import { driversCsv } from "../../../engine/answers/drivers/rows.ts";
import type { EntryProps } from "../../notebook/entryKind.ts";
import { CsvButton } from "../../parts/CsvButton.tsx";
import { Problems, Progress } from "../../parts/EntryState.tsx";
import { ScenarioChoice } from "../../parts/ScenarioChoice.tsx";
import { EndsTable } from "./EndsTable.tsx";
import { SharesTable } from "./SharesTable.tsx";
import { SheddingTable } from "./SheddingTable.tsx";
import "../../../engine/drawing/drivers.css";
import { fadesWhile } from "../../parts/fadesWhile.ts";

/** What a scenario's outcome depends on, what each end of a figure would do, and what to switch off first. */
export function DriversView(props: EntryProps<"drivers">) {
  const found = () => driversOf(props.page, props.doc.scenario);
  const name = () => props.page.scenario(props.doc.scenario)?.name ?? "plan";
  return (
    <div class="margin-left" ref={fadesWhile(() => found().stale)}>
      <Show when={found().result}>{(picture) => <p class="verdict data">{driversSentence(picture().report)}</p>}</Show>
      <p class="choices no-print">
        <ScenarioChoice
          page={props.page}
          label="Scenario that is looked into"
          value={props.doc.scenario}
          onPick={(scenario) => props.edit({ scenario }, "scenario")}
        />
        <CsvButton name={name()} what="drivers" result={found().result} csv={(result) => driversCsv(result.report)} />
      </p>
      <Progress of={[found()]} />
      <Problems of={[found()]} />
      <Show when={found().result}>
        {(picture) => (
          <div class="drivers data">
            <For each={picture().report.sentences.slice(1)}>{(sentence) => <p>{sentence}</p>}</For>
            <SharesTable report={picture().report} />
            <EndsTable report={picture().report} />
            <SheddingTable report={picture().report} />
          </div>
        )}
      </Show>
    </div>
  );
}
