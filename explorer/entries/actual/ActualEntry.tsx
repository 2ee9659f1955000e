import { lazy, Suspense } from "solid-js";
import { actualOf } from "../../../engine/answers/actual/ask.ts";
import { figure } from "../../../engine/words/numbers.ts";
import type { EntryProps } from "../../notebook/entryKind.ts";

// Loaded when the first such entry is on the sheet.
const ActualView = lazy(async () => ({ default: (await import("./ActualView.tsx")).ActualView }));

export function ActualEntry(props: EntryProps<"actual">) {
  return (
    <Suspense fallback={<p class="margin-left">Fetching the comparison…</p>}>
      <ActualView {...props} />
    </Suspense>
  );
}

/** "6 points under the plan" for the index. */
export function actualSummary(props: EntryProps<"actual">): string {
  if (props.doc.log === undefined) return "no log yet";
  const { result } = actualOf(props.page, props.doc);
  if (result === null) return "working";
  if (result.miss === null) return "the log tells no charge";
  const points = Math.round(100 * result.miss.share);
  if (points === 0) return "as planned at the end";
  const name = Math.abs(points) === 1 ? "point" : "points";
  return `${figure(Math.abs(points))} ${name} ${points < 0 ? "under" : "over"} the plan`;
}
