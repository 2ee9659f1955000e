import { createSignal, Show } from "solid-js";
import { actualCsv } from "../../../engine/answers/actual/actualCsv.ts";
import { actualSentence, coverWords, endWords } from "../../../engine/answers/actual/actualWords.ts";
import { actualOf } from "../../../engine/answers/actual/ask.ts";
import { runOf } from "../../../engine/answers/run/ask.ts";
import type { EntryProps } from "../../notebook/entryKind.ts";
import { CsvButton } from "../../parts/CsvButton.tsx";
import { Problems, Progress } from "../../parts/EntryState.tsx";
import { SaidWords } from "../../parts/SaidWords.tsx";
import { ScenarioChoice } from "../../parts/ScenarioChoice.tsx";
import { ActualChart } from "./ActualChart.tsx";
import { ActualMisses } from "./ActualMisses.tsx";
import { CorrectionTable } from "./CorrectionTable.tsx";
import { LogSays } from "./LogSays.tsx";
import { LogTaking } from "./LogTaking.tsx";
import "./actual.css";
import { fadesWhile } from "../../parts/fadesWhile.ts";

/** A meter's log held against the plan: by how much it missed and why, and which figures to correct. */
export function ActualView(props: EntryProps<"actual">) {
  const found = () => actualOf(props.page, props.doc);
  const log = () => props.doc.log;
  const picture = () => (log() === undefined ? null : found().result);
  const name = () => props.page.scenario(props.doc.scenario)?.name ?? "plan";
  const [said, setSaid] = createSignal("");
  return (
    <div class="actual">
      <div class="margin-left" ref={fadesWhile(() => log() !== undefined && found().stale)}>
        <p class="verdict">
          <Show
            when={log()}
            fallback="No log yet: a meter's log of the event shows how good the plan was, and why it missed."
          >
            <Show when={picture()} fallback="Holding the log against the plan…">
              {(against) => (
                <span class="data">
                  <SaidWords words={actualSentence(against(), name(), props.page.look(props.doc.scenario))} />
                </span>
              )}
            </Show>
          </Show>
        </p>
        <Show when={picture()}>
          {(against) => (
            <p class="more data">
              {endWords(against())} {coverWords(against())}
            </p>
          )}
        </Show>
        <p class="choices no-print">
          <ScenarioChoice
            page={props.page}
            label="Scenario that the log is held against"
            value={props.doc.scenario}
            onPick={(scenario) => props.edit({ ...props.doc, scenario }, "scenario")}
          />
          <CsvButton name={name()} what="actual" result={picture()} csv={actualCsv} />
          <Show when={log()}>
            <button
              type="button"
              class="act"
              onClick={() => {
                const { log: _, ...rest } = props.doc;
                props.edit(rest, "log taken out");
              }}
            >
              Take the log out
            </button>
          </Show>
        </p>
        <Show when={props.page.document(props.doc.scenario)}>
          {(document) => (
            <LogTaking
              notebook={props.page.notebook()}
              document={document()}
              zone={runOf(props.page, props.doc.scenario).result?.ruler.zone ?? "UTC"}
              hasLog={log() !== undefined}
              onTake={(taken) => {
                const why = props.edit({ ...props.doc, log: taken }, "log");
                setSaid(
                  why === null
                    ? `${taken.name} is kept in this notebook, ${taken.atMinutes.length} rows of it; Undo takes it out.`
                    : `${taken.name} is not kept.`,
                );
              }}
            />
          )}
        </Show>
        <p role="status" class="reading-said">
          {said()}
        </p>
        <Show when={log()}>
          <Progress of={[found()]} />
          <Problems of={[found()]} />
        </Show>
      </div>
      <Show when={picture()}>
        {(against) => (
          <>
            <ActualChart
              page={props.page}
              picture={against()}
              scenario={props.doc.scenario}
              name={name()}
              isStale={found().stale}
            />
            <div class="margin-left data">
              <ActualMisses against={against()} />
              <Show when={against().correction}>
                {(correction) => (
                  <CorrectionTable
                    correction={correction()}
                    document={props.page.document(props.doc.scenario)}
                    isStale={found().stale}
                    onAccept={(changes, calibrated, remarks) => {
                      const made = props.page.branch(props.doc.scenario, props.id, changes, `${name()}, ${calibrated}`);
                      const words = [`${made} stands below as a scenario; Undo takes it back.`, ...remarks];
                      setSaid(made === null ? "" : words.join(" "));
                    }}
                  />
                )}
              </Show>
              <LogSays name={log()?.name ?? ""} said={[...(log()?.findings ?? []), ...against().findings]} />
            </div>
          </>
        )}
      </Show>
    </div>
  );
}
