import { lazy, Suspense } from "solid-js";
import { limitsOf } from "../../../engine/answers/limits/ask.ts";
import { linesOf } from "../../../engine/answers/limits/limitsWords.ts";
import type { EntryProps } from "../../notebook/entryKind.ts";

// Loaded when the first such entry is on the sheet.
const LimitsView = lazy(async () => ({ default: (await import("./LimitsView.tsx")).LimitsView }));

export function LimitsEntry(props: EntryProps<"limits">) {
  return (
    <Suspense fallback={<p class="margin-left">Fetching the table…</p>}>
      <LimitsView {...props} />
    </Suspense>
  );
}

/** "2 over, 3 close" for the index. */
export function limitsSummary(props: EntryProps<"limits">): string {
  const report = limitsOf(props.page, props.doc).result;
  if (report === null) return "working";
  const [over, close, unknown] = (["over", "close", "unknown"] as const).map((each) => linesOf(report, each).length);
  if (over! > 0) return `${over} over, ${close} close`;
  if (close! > 0) return `${close} close to the limit`;
  return unknown! > 0 ? `${unknown} not stated` : "all within";
}
