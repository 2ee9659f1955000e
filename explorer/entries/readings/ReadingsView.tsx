import { createMemo, createSignal, Show } from "solid-js";
import { learnedOf } from "../../../engine/answers/readings/ask.ts";
import { learnedCsv } from "../../../engine/answers/readings/learnedRows.ts";
import { type EventTime, timeWords } from "../../../engine/answers/readings/localTime.ts";
import { runOf } from "../../../engine/answers/run/ask.ts";
import { readingWords } from "../../../engine/learn/readingWords.ts";
import type { EntryProps } from "../../notebook/entryKind.ts";
import { CsvButton } from "../../parts/CsvButton.tsx";
import { Problems, Progress } from "../../parts/EntryState.tsx";
import { LearnedChart } from "./LearnedChart.tsx";
import { LearnedLessons } from "./LearnedLessons.tsx";
import { LearnedVerdict } from "./LearnedVerdict.tsx";
import { ReadingForm } from "./ReadingForm.tsx";
import { ReadingsList } from "./ReadingsList.tsx";
import type { KeptReading } from "./readingDraft.ts";
import { StillHelpsList } from "./StillHelpsList.tsx";
import { WhichStands } from "./WhichStands.tsx";
import "./readings.css";
import { fadesWhile } from "../../parts/fadesWhile.ts";

/** What was read off the station, what it makes of the forecast, and what can still be done. */
export function ReadingsView(props: EntryProps<"readings">) {
  const found = () => learnedOf(props.page, props.doc);
  const look = () => props.page.look(props.doc.scenario);
  const name = () => props.page.scenario(props.doc.scenario)?.name ?? "plan";
  const [correcting, setCorrecting] = createSignal<number | null>(null);
  const [said, setSaid] = createSignal("");
  const event = createMemo((): EventTime | null => {
    const run = runOf(props.page, props.doc.scenario).result;
    return run === null
      ? null
      : { ruler: run.ruler, startMs: run.startMs, endMs: run.startMs + run.steps * run.stepMs };
  });
  const latest = () =>
    props.doc.readings.reduce<KeptReading | null>(
      (late, each) => (late === null || each.at >= late.at ? each : late),
      null,
    );
  const picture = () => (props.doc.readings.length === 0 ? null : found().result);
  /** What is shown of an earlier answer, while the readings' own is in work or cannot be had. */
  const old = () => (!found().stale ? null : found().problems.length > 0 ? ("stuck" as const) : ("working" as const));
  const keep = (readings: readonly KeptReading[], label: string) => {
    const why = props.edit({ ...props.doc, readings: [...readings] }, label);
    if (why === null) setCorrecting(null);
    return why === null;
  };
  const save = (reading: KeptReading) => {
    const at = correcting();
    const isKept =
      at === null
        ? keep([...props.doc.readings, reading], "reading")
        : keep(
            props.doc.readings.map((each, number) => (number === at ? reading : each)),
            "reading put right",
          );
    setSaid(
      isKept
        ? `Kept: ${timeWords(reading.at)}, ${readingWords(reading)}. Undo takes it back.`
        : `Not kept: ${timeWords(reading.at)}, ${readingWords(reading)}.`,
    );
    return isKept;
  };
  const confirm = (number: number) => {
    const { at } = props.doc.readings[number]!;
    const readings = props.doc.readings.map((each, k) => (k === number ? { ...each, isConfirmed: true } : each));
    if (keep(readings, "reading confirmed"))
      setSaid(`The reading of ${timeWords(at)} counts now; Undo takes that back.`);
  };
  const remove = (number: number) => {
    const { at } = props.doc.readings[number]!;
    const rest = props.doc.readings.filter((_, each) => each !== number);
    if (keep(rest, "reading removed")) setSaid(`The reading of ${timeWords(at)} is removed; Undo brings it back.`);
  };
  const by = () => props.doc.readings.findLast((each) => each.by !== undefined)?.by ?? "";
  return (
    <div class="readings">
      <div class="margin-left" ref={fadesWhile(() => picture() !== null && found().stale)}>
        <WhichStands {...props} />
        <LearnedVerdict latest={latest()} learned={picture()} name={name()} look={look()} old={old()} />
        <Show when={event()} keyed={false} fallback={<p>Waiting for the event's dates…</p>}>
          {(time) => (
            <Show when={`correcting ${correcting() ?? "new"}`} keyed>
              <ReadingForm
                event={time()}
                isPhone={props.page.room().isPhone}
                name={name()}
                by={by()}
                corrects={correcting() === null ? null : (props.doc.readings[correcting()!] ?? null)}
                onSave={save}
                onLeave={() => setCorrecting(null)}
              />
            </Show>
          )}
        </Show>
        <p role="status" class="reading-said">
          {said()}
        </p>
        <Show when={props.doc.readings.length > 0}>
          <Progress of={[found()]} />
          <Problems of={[found()]} />
        </Show>
      </div>
      <Show when={picture()}>
        {(learned) => <LearnedChart {...props} picture={learned()} name={name()} isStale={found().stale} />}
      </Show>
      <div class="margin-left" ref={fadesWhile(() => found().stale)}>
        <Show when={picture()}>
          {(learned) => (
            <div class="data">
              <LearnedLessons learned={learned()} />
              <StillHelpsList
                helps={learned().helps}
                isStale={found().stale}
                onMake={({ fromNow, name: change }) => {
                  const made = props.page.branch(props.doc.scenario, props.id, fromNow, `${name()}, ${change}`);
                  setSaid(made === null ? "" : `${made} stands below as a scenario; Undo takes it back.`);
                }}
              />
            </div>
          )}
        </Show>
        <Show when={props.doc.readings.length > 0}>
          <h3>Readings</h3>
          <ReadingsList
            readings={props.doc.readings}
            problems={found().problems}
            asked={picture()?.asked ?? []}
            onConfirm={confirm}
            onCorrect={setCorrecting}
            onRemove={remove}
          />
        </Show>
        <p class="choices no-print">
          <CsvButton name={name()} what="readings" result={picture()} csv={learnedCsv} />
        </p>
      </div>
    </div>
  );
}
