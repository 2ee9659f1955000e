import { createMemo, createSignal, createUniqueId, For, Show } from "solid-js";
import { type EventTime, localTime, suggestedTime } from "../../../engine/answers/readings/localTime.ts";
import { ReadingKeys } from "./ReadingKeys.tsx";
import { ReadingMore } from "./ReadingMore.tsx";
import { draftOf, emptyDraft, type KeptReading, type ReadingDraft, readingOf, WAYS } from "./readingDraft.ts";

/** A reading as it is typed in: the charge, when, and Save; everything else waits under “More”. */
export function ReadingForm(props: {
  event: EventTime;
  isPhone: boolean;
  /** Of the scenario that the reading is of. */
  name: string;
  /** Who read last. */
  by: string;
  /** The reading that is put right; null for a new one. */
  corrects: KeptReading | null;
  /** @returns whether it could be kept; otherwise what was typed stays */
  onSave: (reading: KeptReading) => boolean;
  onLeave: () => void;
}) {
  const id = createUniqueId();
  const [nowMs, setNowMs] = createSignal(Date.now());
  const [draft, setDraft] = createSignal<ReadingDraft>(
    props.corrects === null ? emptyDraft("", props.by) : draftOf(props.corrects),
  );
  const [isTimed, setTimed] = createSignal(props.corrects !== null);
  const [wrong, setWrong] = createSignal("");
  const suggested = createMemo(() => suggestedTime(props.event, nowMs()));
  const at = () => (isTimed() ? draft().at : suggested().at);
  const way = () => WAYS.find((each) => each.way === draft().way)!;
  const put = (part: Partial<ReadingDraft>) => {
    setWrong("");
    setDraft({ ...draft(), ...part });
  };
  const dates = () =>
    props.event.ruler.days.map(({ date }) => date).filter((date) => at() === "" || date <= at().slice(0, 10));
  const save = (event: SubmitEvent) => {
    event.preventDefault();
    setNowMs(Date.now());
    const found = readingOf({ ...draft(), at: at() }, props.event, new Date(nowMs()).toISOString().slice(0, 16));
    if (!found.ok) return setWrong(found.sentence);
    if (!props.onSave(found.reading)) return;
    setTimed(false);
    setDraft(emptyDraft("", found.reading.by ?? ""));
  };
  return (
    <form
      class="reading-form no-print"
      aria-label={props.corrects === null ? "New reading" : "Correct a reading"}
      onSubmit={save}
    >
      <fieldset class="reading-ways">
        <legend class="unseen">What is read</legend>
        <For each={WAYS}>
          {({ way, label }) => (
            <label>
              <input type="radio" name={`${id}-way`} checked={draft().way === way} onChange={() => put({ way })} />
              {label}
            </label>
          )}
        </For>
      </fieldset>
      <div class="reading-main">
        <label class="reading-charge">
          <span>{way().label}</span>
          <input
            type="text"
            inputmode={props.isPhone ? "none" : "decimal"}
            autocomplete="off"
            value={draft().charge}
            aria-invalid={wrong() !== ""}
            aria-describedby={wrong() === "" ? undefined : `${id}-wrong`}
            onInput={(event) => put({ charge: event.currentTarget.value })}
          />
        </label>
        <Show when={props.isPhone}>
          <ReadingKeys value={draft().charge} onType={(charge) => put({ charge })} />
        </Show>
        <label class="reading-at">
          <span>Read at, {props.event.ruler.zone} clock</span>
          <input
            type="datetime-local"
            value={at()}
            min={localTime(props.event.ruler, props.event.startMs)}
            max={localTime(props.event.ruler, props.event.endMs)}
            onInput={(event) => {
              // In this order: once timed, the field shows the draft's time, which must be the new one by then.
              put({ at: event.currentTarget.value.slice(0, 16) });
              setTimed(true);
            }}
          />
        </label>
        <button type="submit" class="reading-save">
          {props.corrects === null ? "Save" : "Put it right"}
        </button>
        <span class="reading-of">
          for <strong>{props.name}</strong>
        </span>
        <Show when={props.corrects !== null}>
          <button type="button" class="act" onClick={() => props.onLeave()}>
            Leave it as it was
          </button>
        </Show>
      </div>
      <Show when={!isTimed() && suggested().says}>{(says) => <p class="reading-says">{says()}</p>}</Show>
      <Show when={draft().way === "restV"}>
        <p class="reading-says">
          Volts at rest are a poor measure: take them after an hour with next to no current. How far they may be off is
          counted in and drawn.
        </p>
      </Show>
      <Show when={wrong()}>
        <p class="wrong" id={`${id}-wrong`} role="alert">
          {wrong()}
        </p>
      </Show>
      <ReadingMore draft={draft()} dates={dates()} onPut={put} />
    </form>
  );
}
