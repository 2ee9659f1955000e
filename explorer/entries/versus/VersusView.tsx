import { createMemo, Show } from "solid-js";
import { pairsOf } from "../../../engine/answers/versus/ask.ts";
import { pairedDrawing } from "../../../engine/answers/versus/pairedDrawing.ts";
import { putByOf } from "../../../engine/answers/versus/pairedLayout.ts";
import { type PlanColumn, planColumns } from "../../../engine/answers/versus/planColumns.ts";
import { versusCsv } from "../../../engine/answers/versus/versusCsv.ts";
import { versusSentence } from "../../../engine/answers/versus/versusWords.ts";
import { stepAt } from "../../../engine/drawing/bandPaths.ts";
import { clockAt } from "../../../engine/ruler/rulerClock.ts";
import { ampHours } from "../../../engine/words/numbers.ts";
import { RulerChart } from "../../charts/RulerChart.tsx";
import type { EntryProps } from "../../notebook/entryKind.ts";
import { CsvButton } from "../../parts/CsvButton.tsx";
import { Problems, Progress } from "../../parts/EntryState.tsx";
import { fadesWhile } from "../../parts/fadesWhile.ts";
import { SaidWords } from "../../parts/SaidWords.tsx";
import { DecisionCards } from "./DecisionCards.tsx";
import { DecisionEnd } from "./DecisionEnd.tsx";
import { DecisionTable } from "./DecisionTable.tsx";
import { PlanChoices } from "./PlanChoices.tsx";
import "./versus.css";

/** Two to four scenarios under the same skies and with the same people, held against the first member by member. */
export function VersusView(props: EntryProps<"versus">) {
  const found = () => pairsOf(props.page, props.doc);
  const isStale = () => found().some(({ stale }) => stale);
  const columns = createMemo((before: readonly PlanColumn[]) => kept(planColumns(props.page, props.doc), before), []);
  const paired = createMemo(() => pairedDrawing(columns(), props.page.room()));
  return (
    <>
      <div class="margin-left">
        <Show when={columns().length > 0}>
          <p class="verdict data" ref={fadesWhile(isStale)}>
            <SaidWords words={versusSentence(columns())} />
          </p>
        </Show>
        <p class="choices no-print">
          <PlanChoices {...props} />
          <CsvButton
            name={columns()[0]?.name ?? "versus"}
            what="versus"
            result={columns().length === 0 ? null : columns()}
            csv={versusCsv}
          />
        </p>
        <Progress of={found()} />
        <Problems of={found()} />
        <Show when={columns().length > 0}>
          <div class="data" ref={fadesWhile(isStale)}>
            <Show
              when={props.page.room().isPhone}
              fallback={<DecisionTable page={props.page} doc={props.doc} columns={columns()} />}
            >
              <DecisionCards page={props.page} doc={props.doc} columns={columns()} />
            </Show>
            <DecisionEnd columns={columns()} />
          </div>
        </Show>
      </div>
      <Show when={paired()}>
        {(drawing) => (
          <RulerChart
            page={props.page}
            drawing={drawing()}
            words={(ms) => pairedInstant(columns(), ms)}
            faded={isStale()}
            onWhy={(ms) => props.page.askWhy({ entry: props.id, scenario: props.doc.scenarios[0]!, ms })}
          />
        )}
      </Show>
    </>
  );
}

/** The same list as long as all in it is the same, so that nothing is drawn again. */
function kept(columns: readonly PlanColumn[], before: readonly PlanColumn[]): readonly PlanColumn[] {
  const isSame = (each: PlanColumn, old: PlanColumn | undefined) =>
    old?.id === each.id && old.name === each.name && old.look === each.look && old.side === each.side;
  return columns.length === before.length && columns.every((each, k) => isSame(each, before[k])) ? before : columns;
}

/** What each has put by more than the first at an instant, as a sentence. */
function pairedInstant(columns: readonly PlanColumn[], ms: number): string {
  const all = putByOf(columns);
  const [first] = all;
  if (first === undefined) return "";
  const { day, clock } = clockAt(first.time.ruler, ms);
  const parts = all.map(({ name, time, paired: { p5, p50, p95 } }) => {
    const i = stepAt(time, ms, p50.length);
    return `${name} ${ampHours(p50[i]!)} put by, nine in ten between ${ampHours(p5[i]!)} and ${ampHours(p95[i]!)}`;
  });
  return `${day} ${clock}: ${parts.join("; ")}.`;
}
