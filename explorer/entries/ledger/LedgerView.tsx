import { Show } from "solid-js";
import { ledgerWords } from "../../../engine/answers/ledger/ledgerWords.ts";
import { ledgerCsv } from "../../../engine/answers/ledger/rows.ts";
import { runOf } from "../../../engine/answers/run/ask.ts";
import type { EntryProps } from "../../notebook/entryKind.ts";
import { CsvButton } from "../../parts/CsvButton.tsx";
import { Problems } from "../../parts/EntryState.tsx";
import { fadesWhile } from "../../parts/fadesWhile.ts";
import { ScenarioChoice } from "../../parts/ScenarioChoice.tsx";
import { LedgerTable } from "./LedgerTable.tsx";

/** Where the energy of one run went. */
export function LedgerView(props: EntryProps<"ledger">) {
  const found = () => runOf(props.page, props.doc.scenario);
  return (
    <div class="margin-left" ref={fadesWhile(() => found().stale)}>
      <p class="choices">
        <ScenarioChoice
          page={props.page}
          label="Scenario whose ledger this is"
          value={props.doc.scenario}
          onPick={(scenario) => props.edit({ scenario }, "scenario")}
        />
        <CsvButton name={found().result?.name ?? ""} what="loads" result={found().result} csv={ledgerCsv} />
        <Show when={found().result}>{(picture) => <span>{ledgerWords(picture())}</span>}</Show>
      </p>
      <Problems of={[found()]} />
      <Show when={found().result}>{(picture) => <LedgerTable picture={picture()} />}</Show>
    </div>
  );
}

export function ledgerSummary(props: EntryProps<"ledger">): string {
  const largest = runOf(props.page, props.doc.scenario).result?.ledger.loads[0];
  return largest === undefined ? "working" : `most: ${largest.name}`;
}
