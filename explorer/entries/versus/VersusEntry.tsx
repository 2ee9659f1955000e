import { lazy, Suspense } from "solid-js";
import { planColumns } from "../../../engine/answers/versus/planColumns.ts";
import type { EntryProps } from "../../notebook/entryKind.ts";
import { firstAnswer } from "../../parts/firstAnswer.ts";

// Loaded when such an entry is on the sheet and the answer stands: a table, its cards and two charts are much to fetch.
const VersusView = lazy(async () => {
  await firstAnswer;
  return { default: (await import("./VersusView.tsx")).VersusView };
});

export function VersusEntry(props: EntryProps<"versus">) {
  return (
    <Suspense fallback={<p class="margin-left">Fetching the table…</p>}>
      <VersusView {...props} />
    </Suspense>
  );
}

/** "11, 93 and 52 of 100 hold" for the index. */
export function versusSummary(props: EntryProps<"versus">): string {
  const columns = planColumns(props.page, props.doc);
  if (columns.length === 0) return "working";
  const odds = columns.map(({ side }) => Math.round(100 * side.holds.share));
  return `${odds.slice(0, -1).join(", ")} and ${odds.at(-1)} of 100 hold`;
}
