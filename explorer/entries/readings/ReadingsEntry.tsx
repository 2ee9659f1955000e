import { lazy, Suspense } from "solid-js";
import { learnedOf } from "../../../engine/answers/readings/ask.ts";
import { inHundred } from "../../../engine/words/oddsWords.ts";
import type { EntryProps } from "../../notebook/entryKind.ts";

// Loaded when the first such entry is on the sheet.
const ReadingsView = lazy(async () => ({ default: (await import("./ReadingsView.tsx")).ReadingsView }));

export function ReadingsEntry(props: EntryProps<"readings">) {
  return (
    <Suspense fallback={<p class="margin-left">Fetching the readings…</p>}>
      <ReadingsView {...props} />
    </Suspense>
  );
}

/** "4 of 100 hold, was 10" for the index. */
export function readingsSummary(props: EntryProps<"readings">): string {
  if (props.doc.readings.length === 0) return "nothing read yet";
  const { result } = learnedOf(props.page, props.doc);
  if (result === null) return "working";
  const { holdsAfter, holdsBefore, wrong } = result.report;
  const odds = `${inHundred(holdsAfter)} of 100 hold, was ${inHundred(holdsBefore)}`;
  return wrong.length > 0 ? `the plan is wrong; ${odds}` : odds;
}
