import { For, Show } from "solid-js";
import { dayName } from "../../../engine/ruler/rulerClock.ts";
import type { ReadingDraft, SkyWord } from "./readingDraft.ts";

const SKY_WORDS: readonly SkyWord[] = ["clear", "fair", "mixed", "cloudy", "overcast"];

/** What else can be read: panels, load, the sky of a day, who read, a note. */
export function ReadingMore(props: {
  draft: ReadingDraft;
  /** Days whose sky may have been seen. */
  dates: readonly string[];
  onPut: (part: Partial<ReadingDraft>) => void;
}) {
  return (
    <details>
      <summary>More: panels, load, sky, who, note</summary>
      <div class="reading-more">
        <TextBox
          label="Panels now, W"
          value={props.draft.panelsW}
          onType={(panelsW) => props.onPut({ panelsW })}
          isNumber
        />
        <TextBox label="Load now, A" value={props.draft.loadA} onType={(loadA) => props.onPut({ loadA })} isNumber />
        <label>
          <span>The sky of</span>
          <select onChange={(event) => props.onPut({ skyDate: event.currentTarget.value })}>
            <option value="" selected={props.draft.skyDate === ""}>
              no day
            </option>
            <For each={props.dates}>
              {(date) => (
                <option value={date} selected={props.draft.skyDate === date}>
                  {dayName(date)}
                </option>
              )}
            </For>
          </select>
        </label>
        <label>
          <span>was</span>
          <select onChange={(event) => props.onPut({ skyWord: event.currentTarget.value as SkyWord | "" })}>
            <option value="" selected={props.draft.skyWord === ""}>
              not seen
            </option>
            <For each={SKY_WORDS}>
              {(word) => (
                <option value={word} selected={props.draft.skyWord === word}>
                  {word}
                </option>
              )}
            </For>
          </select>
        </label>
        <Show when={props.draft.way !== "restV"}>
          <TextBox
            label="Error of the charge, %"
            value={props.draft.error}
            onType={(error) => props.onPut({ error })}
            isNumber
          />
        </Show>
        <TextBox label="Read by" value={props.draft.by} onType={(by) => props.onPut({ by })} />
        <TextBox label="Note" value={props.draft.note} onType={(note) => props.onPut({ note })} />
      </div>
    </details>
  );
}

function TextBox(props: { label: string; value: string; isNumber?: boolean; onType: (text: string) => void }) {
  return (
    <label>
      <span>{props.label}</span>
      <input
        type="text"
        inputmode={props.isNumber === true ? "decimal" : "text"}
        autocomplete="off"
        maxLength={props.isNumber === true ? 12 : 200}
        value={props.value}
        onInput={(event) => props.onType(event.currentTarget.value)}
      />
    </label>
  );
}
