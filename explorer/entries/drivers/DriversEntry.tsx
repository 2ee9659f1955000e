import { lazy, Suspense } from "solid-js";
import { driversOf } from "../../../engine/answers/drivers/ask.ts";
import type { EntryProps } from "../../notebook/entryKind.ts";
import { firstAnswer } from "../../parts/firstAnswer.ts";

// Loaded when such an entry is on the sheet and the answer stands: it takes longer than its three tables to work out.
const DriversView = lazy(async () => {
  await firstAnswer;
  return { default: (await import("./DriversView.tsx")).DriversView };
});

export function DriversEntry(props: EntryProps<"drivers">) {
  return (
    <Suspense fallback={<p class="margin-left">Fetching the tables…</p>}>
      <DriversView {...props} />
    </Suspense>
  );
}

/** "most: the weather" for the index. */
export function driversSummary(props: EntryProps<"drivers">): string {
  const report = driversOf(props.page, props.doc.scenario).result?.report;
  if (report === undefined) return "working";
  const most = [...report.factors].sort((a, b) => (b.margin?.total.value ?? 0) - (a.margin?.total.value ?? 0))[0];
  return most?.margin == null ? "nothing differs" : `most: ${most.name.toLowerCase()}`;
}
