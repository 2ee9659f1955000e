import { For, Show } from "solid-js";
import type { RunPicture } from "../../engine/answers/run/runPicture.ts";
import type { TimeScale } from "../../engine/drawing/timeScale.ts";
import type { NotebookPage } from "../notebook/notebookPage.ts";
import { AddEntry, type EntryActs, EntryFrame } from "./EntryFrame.tsx";
import type { IndexLine } from "./SheetIndex.tsx";

/** The entries in their order, and between them where another can be put. */
export function SheetEntries(props: {
  lines: readonly IndexLine[];
  page: NotebookPage;
  days: RunPicture | null;
  scale: TimeScale | null;
  acts: EntryActs;
}) {
  const between = (at: number) => {
    const [before, after] = [props.lines[at - 1]?.letter, props.lines[at]?.letter];
    if (before === undefined) return "before all others";
    return after === undefined ? `after ${before}` : `between ${before} and ${after}`;
  };
  return (
    <>
      <AddEntry between={between(0)} at={0} acts={props.acts} />
      <For each={props.lines.map(({ entry }) => entry.id)}>
        {(id, i) => (
          <Show when={props.lines.find(({ entry }) => entry.id === id)}>
            {(line) => (
              <>
                <EntryFrame
                  entry={line().entry}
                  line={line()}
                  page={props.page}
                  days={props.days}
                  scale={props.scale}
                  acts={props.acts}
                />
                <AddEntry between={between(i() + 1)} at={i() + 1} acts={props.acts} />
              </>
            )}
          </Show>
        )}
      </For>
    </>
  );
}
