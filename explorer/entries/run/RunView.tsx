import { createMemo, createSignal, createUniqueId, Show } from "solid-js";
import { askRun, runOf } from "../../../engine/answers/run/ask.ts";
import { readingAt } from "../../../engine/answers/run/readingAt.ts";
import { runAnswer } from "../../../engine/answers/run/runAnswer.ts";
import { stepsCsv } from "../../../engine/answers/run/runCsv.ts";
import type { RunPicture } from "../../../engine/answers/run/runPicture.ts";
import { Strata } from "../../charts/Strata.tsx";
import { fileName, saveFile } from "../../download/saveFile.ts";
import type { EntryProps } from "../../notebook/entryKind.ts";
import { Problems } from "../../parts/EntryState.tsx";
import { fadesWhile } from "../../parts/fadesWhile.ts";
import { changesOf, planOf } from "../../parts/plan.ts";
import { SaidWords } from "../../parts/SaidWords.tsx";
import { ScenarioChoice } from "../../parts/ScenarioChoice.tsx";
import { StrataTable } from "./StrataTable.tsx";

/** One run under the sky as written: charge, sun, loads and volts, step by step. */
export function RunView(props: EntryProps<"run">) {
  const id = createUniqueId();
  const [isTableOpen, setTableOpen] = createSignal(false);
  const found = () => runOf(props.page, props.doc.scenario);
  const picture = createMemo(() => found().result);
  const before = createMemo(() => {
    const [old, run] = [props.page.before(askRun(props.doc.scenario)), picture()];
    return old === null || run === null || sameCharge(old, run) ? null : old;
  });
  const answer = createMemo(() => {
    const run = picture();
    if (run === null) return null;
    const name = props.page.scenario(props.doc.scenario)?.name;
    return runAnswer(run, name === undefined ? [] : [name], props.page.look(props.doc.scenario));
  });
  const reservePercent = (run: RunPicture) => {
    const document = props.page.document(props.doc.scenario);
    const typed = document === null ? null : planOf(document).reservePercent;
    return typeof typed === "number" && typed >= 0 && typed <= 100 ? typed : run.reserveShare * 100;
  };
  const setReserve = (value: number) =>
    props.page.turn(props.doc.scenario, "reservePercent", (document) =>
      changesOf(document, { ...planOf(document), reservePercent: value }),
    );
  const why = (ms: number) => props.page.askWhy({ entry: props.id, scenario: props.doc.scenario, ms });
  return (
    <div ref={fadesWhile(() => found().stale)}>
      <div class="margin-left">
        <Show when={answer()}>
          {(said) => (
            <>
              <p class="verdict data">
                <SaidWords words={said().sentence} />
              </p>
              <p class="more data">{said().more.join(" ")}</p>
            </>
          )}
        </Show>
        <p class="choices no-print">
          <ScenarioChoice
            page={props.page}
            label="Scenario that is run"
            value={props.doc.scenario}
            onPick={(scenario) => props.edit({ scenario }, "scenario")}
          />
          <button
            type="button"
            class="act"
            aria-expanded={isTableOpen()}
            aria-controls={id}
            onClick={() => setTableOpen(!isTableOpen())}
          >
            Table
          </button>
          <Show when={picture()}>
            {(run) => (
              <>
                <button
                  type="button"
                  class="act"
                  onClick={() => saveFile(`${fileName(run().name)}-steps.csv`, "text/csv", stepsCsv(run()))}
                >
                  CSV
                </button>
                <button type="button" class="act" onClick={() => why(props.page.readingMs() ?? run().verdict.lowestMs)}>
                  Why this number?
                </button>
              </>
            )}
          </Show>
        </p>
        <Problems of={[found()]} />
      </div>
      <Show when={picture()}>
        {(run) => (
          <Strata
            picture={run()}
            before={before()}
            look={props.page.look(props.doc.scenario)}
            room={props.page.room()}
            reservePercent={reservePercent(run())}
            onReserve={setReserve}
            onSettle={props.page.settle}
            reading={props.page.readingMs() === null ? null : readingAt(run(), props.page.readingMs()!)}
            onRead={props.page.read}
            onWhy={why}
            scroll={props.page.scrollPx}
            scrolls={props.page.scrolls()}
            onScroll={props.page.scroll}
          />
        )}
      </Show>
      <div id={id} class="margin-left">
        <Show when={isTableOpen() && picture()}>{(run) => <StrataTable picture={run()} />}</Show>
      </div>
    </div>
  );
}

/** Whether two runs have one and the same curve, as after a change of reserve. */
function sameCharge(a: RunPicture, b: RunPicture): boolean {
  return a.steps === b.steps && a.chargeShare.every((share, i) => share === b.chargeShare[i]);
}
