import { createSignal, For, Show } from "solid-js";
import { limitsOf } from "../../../engine/answers/limits/ask.ts";
import { limitsCsv } from "../../../engine/answers/limits/limitsCsv.ts";
import { basisWords, cautionsBeside, limitsMore, limitsSentence } from "../../../engine/answers/limits/limitsWords.ts";
import type { LimitsReport } from "../../../engine/checks/limits.ts";
import { figure } from "../../../engine/words/numbers.ts";
import type { EntryProps } from "../../notebook/entryKind.ts";
import { CsvButton } from "../../parts/CsvButton.tsx";
import { Problems, Progress } from "../../parts/EntryState.tsx";
import { ScenarioChoice } from "../../parts/ScenarioChoice.tsx";
import { LimitsChoices } from "./LimitsChoices.tsx";
import { LimitsTable } from "./LimitsTable.tsx";
import { SheetButton } from "./SheetButton.tsx";
import { VoltChain } from "./VoltChain.tsx";
import { Wiring } from "./Wiring.tsx";
import "./limits.css";
import { fadesWhile } from "../../parts/fadesWhile.ts";

/** A plan's wiring held against its limits: what is over, what is close, what nobody stated, and what to change. */
export function LimitsView(props: EntryProps<"limits">) {
  const found = () => limitsOf(props.page, props.doc);
  const name = () => props.page.scenario(props.doc.scenario)?.name ?? "plan";
  const [wrong, setWrong] = createSignal("");
  return (
    <div class="margin-left limits" ref={fadesWhile(() => found().stale)}>
      <Show when={found().result}>
        {(report) => (
          <div class="data">
            <p class="verdict">{limitsSentence(report())}</p>
            <p class="more">
              {limitsMore(report())} {permitOf(report())} {basisWords(report())}
            </p>
          </div>
        )}
      </Show>
      <p class="choices no-print">
        <ScenarioChoice
          page={props.page}
          label="Scenario whose wiring is checked"
          value={props.doc.scenario}
          onPick={(scenario) => props.edit({ ...props.doc, scenario }, "scenario")}
        />
        <CsvButton name={name()} what="limits" result={found().result} csv={limitsCsv} />
        <SheetButton name={name()} report={found().result} />
      </p>
      <LimitsChoices doc={props.doc} usual={usualOf(found().result)} onEdit={props.edit} onWrong={setWrong} />
      <Show when={wrong()}>
        <p class="wrong" role="alert">
          {wrong()}
        </p>
      </Show>
      <Progress of={[found()]} />
      <Problems of={[found()]} />
      <Show when={found().result}>
        {(report) => (
          <div class="data">
            <Wiring report={report()} />
            <LimitsTable report={report()} isPhone={props.page.room().isPhone} id={props.id} />
            <For each={cautionsBeside(report())}>
              {(caution) => (
                <p class="limit-caution">
                  <strong>{caution.title}.</strong> {caution.words}
                </p>
              )}
            </For>
            <Show when={report().radios.length > 0}>
              <h3>From the bank to each radio, on its worst transmit peak</h3>
              <p class="more">
                Upright line: the least that the radio needs. Lined: what the link takes; filled: the weak link.
              </p>
              <div class="chains">
                <For each={report().radios}>
                  {(radio) => <VoltChain radio={radio} openV={chainV(report(), radio)} />}
                </For>
              </div>
            </Show>
          </div>
        )}
      </Show>
    </div>
  );
}

/** Where a converter feeds the radios, the chain begins at its output and not at the bank. */
const chainV = (_: LimitsReport, radio: LimitsReport["radios"][number]) =>
  radio.radioV + radio.links.reduce((sum, { lostV }) => sum + lostV, 0);

const permitOf = ({ cautions }: LimitsReport) => cautions.find(({ id }) => id === "permit")?.words ?? "";

function usualOf(report: LimitsReport | null) {
  return {
    chargeIn100: report !== null && report.lowestFrom !== "given" ? figure(100 * report.lowestShare) : "",
    coldestC: report?.coldestFrom === "event" ? figure(report.coldestC) : "",
  };
}
