import { Show } from "solid-js";
import type { Reading } from "../../engine/answers/run/readingAt.ts";
import type { RunPicture } from "../../engine/answers/run/runPicture.ts";
import { clockAt } from "../../engine/ruler/rulerClock.ts";
import { nightWords, quietWords, zoneWords } from "../../engine/ruler/rulerWords.ts";
import { TimeRuler } from "../charts/TimeRuler.tsx";
import type { NotebookPage } from "../notebook/notebookPage.ts";

/** The ruler of time that all entries share, with the instant that is read and what it says at its side. */
export function RulerBar(props: {
  page: NotebookPage;
  days: RunPicture;
  scale: ReturnType<NotebookPage["scale"]>;
  reading: Reading | null;
}) {
  return (
    <div class="ruler">
      <div class="ruler-view">
        <div
          class="ruler-moving"
          style={{ transform: `translateX(${-props.page.scrollPx()}px)`, width: `${props.scale.widthPx}px` }}
        >
          <TimeRuler picture={props.days} scale={props.scale} />
          <Show when={props.reading}>
            {(read) => (
              <span
                class="tag"
                classList={{ "tag-end": props.scale.x(read().ms) > props.scale.widthPx - 70 }}
                style={{ left: `${props.scale.x(read().ms)}px` }}
              >
                {clockWords(props.days.ruler, read().ms)}
              </span>
            )}
          </Show>
        </div>
      </div>
      <p class="ruler-side">
        {zoneWords(props.days.ruler)}
        <br />
        {nightWords(props.days)}
        <Show when={quietWords(props.days)}>
          {(words) => (
            <>
              <br />
              {words()}
            </>
          )}
        </Show>
      </p>
    </div>
  );
}

function clockWords(ruler: Parameters<typeof clockAt>[0], ms: number): string {
  const { day, clock } = clockAt(ruler, ms);
  return `${day} ${clock}`;
}
