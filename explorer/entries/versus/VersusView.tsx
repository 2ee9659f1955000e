import { createMemo, For, Show } from "solid-js";
import { versusOf } from "../../../engine/answers/versus/ask.ts";
import { oddsDrawing } from "../../../engine/answers/versus/oddsDrawing.ts";
import { pairedDrawing } from "../../../engine/answers/versus/pairedDrawing.ts";
import { versusRows } from "../../../engine/answers/versus/rows.ts";
import { tallyDrawing } from "../../../engine/answers/versus/tallyDrawing.ts";
import { versusCsv } from "../../../engine/answers/versus/versusCsv.ts";
import type { VersusPicture } from "../../../engine/answers/versus/versusPicture.ts";
import { burdenWords, versusSentence } from "../../../engine/answers/versus/versusWords.ts";
import { stepAt } from "../../../engine/drawing/bandPaths.ts";
import { clockAt } from "../../../engine/ruler/rulerClock.ts";
import { ampHours, figure } from "../../../engine/words/numbers.ts";
import { DrawnPicture } from "../../charts/DrawnPicture.tsx";
import { RulerChart } from "../../charts/RulerChart.tsx";
import type { EntryProps } from "../../notebook/entryKind.ts";
import { CsvButton } from "../../parts/CsvButton.tsx";
import { changeWords } from "../../parts/changeWords.ts";
import { Problems, Progress } from "../../parts/EntryState.tsx";
import { fadesWhile } from "../../parts/fadesWhile.ts";
import { SaidWords } from "../../parts/SaidWords.tsx";
import { ScenarioChoice } from "../../parts/ScenarioChoice.tsx";

/** Two scenarios under the same skies and with the same people, held against one another member by member. */
export function VersusView(props: EntryProps<"versus">) {
  const found = () => versusOf(props.page, props.doc.first, props.doc.second);
  const name = (id: string) => props.page.scenario(id)?.name ?? id;
  const names = () => ({ first: name(props.doc.first), second: name(props.doc.second) });
  const named = (id: string) => ({ name: name(id), look: props.page.look(id) });
  const both = () => ({ first: named(props.doc.first), second: named(props.doc.second) });
  const differs = createMemo(() => {
    const [from, to] = [props.page.document(props.doc.first), props.page.document(props.doc.second)];
    return from === null || to === null ? [] : changeWords([], from, to);
  });
  const picture = createMemo(() => found().result);
  const widthPx = () => (props.page.room().isPhone ? 320 : 430);
  const paired = createMemo(() => {
    const result = picture();
    return result === null ? null : pairedDrawing(result, both().second.look, props.page.room());
  });
  return (
    <>
      <div class="margin-left">
        <Show when={found().result}>
          {(picture) => (
            <p class="verdict data" ref={fadesWhile(() => found().stale)}>
              <SaidWords words={versusSentence(picture(), both().first, both().second)} />
            </p>
          )}
        </Show>
        <p class="choices">
          <ScenarioChoice
            page={props.page}
            label="Scenario that is judged"
            value={props.doc.second}
            onPick={(second) => props.edit({ ...props.doc, second }, "judged")}
          />
          <span class="no-print">against</span>
          <ScenarioChoice
            page={props.page}
            label="Scenario that it is held against"
            value={props.doc.first}
            onPick={(first) => props.edit({ ...props.doc, first }, "against")}
          />
          <CsvButton
            name={names().second}
            what="versus"
            result={found().result}
            csv={(result) => versusCsv(result, names())}
          />
        </p>
        <Progress of={[found()]} />
        <Problems of={[found()]} />
        <Show when={found().result}>
          {(picture) => (
            <div class="versus data" ref={fadesWhile(() => found().stale)}>
              <div class="versus-differs">
                <h3>What differs</h3>
                <ul>
                  <For each={differs().slice(0, 12)} fallback={<li>nothing</li>}>
                    {(line) => <li>{line}</li>}
                  </For>
                  <Show when={differs().length > 12}>
                    <li>and {differs().length - 12} more</li>
                  </Show>
                </ul>
                <p>{burdenWords(picture())}</p>
              </div>
              <div>
                <DrawnPicture drawing={oddsDrawing(picture(), both(), widthPx())} class="odds" />
                <DrawnPicture drawing={tallyDrawing(picture(), both(), widthPx())} class="tally" />
              </div>
              <Figures picture={picture()} names={names()} />
            </div>
          )}
        </Show>
      </div>
      <Show when={paired()}>
        {(drawing) => (
          <RulerChart
            page={props.page}
            drawing={drawing()}
            words={(ms) => pairedInstant(found().result!, ms)}
            faded={found().stale}
          />
        )}
      </Show>
    </>
  );
}

/** What the second has put by more than the first at an instant, as a sentence. */
function pairedInstant({ time, paired }: VersusPicture, ms: number): string {
  if (paired === null) return "";
  const { day, clock } = clockAt(time.ruler, ms);
  const i = stepAt(time, ms, paired.p50.length);
  const { p5, p50, p95 } = paired;
  return `${day} ${clock}: ${ampHours(p50[i]!)} put by, nine in ten between ${ampHours(p5[i]!)} and ${ampHours(p95[i]!)}.`;
}

function Figures(props: { picture: VersusPicture; names: { first: string; second: string } }) {
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls must be reachable by keyboard
    <section class="wide versus-figures" tabIndex={0} aria-label="Both in figures">
      <table>
        <caption class="unseen">The two scenarios in figures</caption>
        <thead>
          <tr>
            <td />
            <th scope="col">{props.names.second}</th>
            <th scope="col">{props.names.first}</th>
          </tr>
        </thead>
        <tbody>
          <For each={versusRows(props.picture)}>
            {(row) => (
              <tr>
                <th scope="row">{row.name}</th>
                <td>{row.second}</td>
                <td>{row.first}</td>
              </tr>
            )}
          </For>
        </tbody>
      </table>
    </section>
  );
}

export function versusSummary(props: EntryProps<"versus">): string {
  const { result } = versusOf(props.page, props.doc.first, props.doc.second);
  if (result === null) return "working";
  const value = Math.round(100 * result.holds.mean);
  return `${value < 0 ? "" : "+"}${figure(value)} in 100 hold`;
}
