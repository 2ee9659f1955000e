import { lazy, Suspense } from "solid-js";
import { runOf } from "../../../engine/answers/run/ask.ts";
import { percent } from "../../../engine/words/numbers.ts";
import type { EntryProps } from "../../notebook/entryKind.ts";
import { firstAnswer } from "../../parts/firstAnswer.ts";

// Loaded when such an entry is on the sheet and the answer stands: four charts and their table are much to fetch.
const RunView = lazy(async () => {
  await firstAnswer;
  return { default: (await import("./RunView.tsx")).RunView };
});

export function RunEntry(props: EntryProps<"run">) {
  return (
    <Suspense fallback={<p class="margin-left">Fetching the run…</p>}>
      <RunView {...props} />
    </Suspense>
  );
}

export function runSummary(props: EntryProps<"run">): string {
  const { result } = runOf(props.page, props.doc.scenario);
  if (result === null) return "working";
  return result.verdict.dark ? "goes dark" : `lowest ${percent(result.verdict.lowestShare)}`;
}
