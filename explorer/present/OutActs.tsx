import { createEffect, createSignal, lazy, onMount, Show, Suspense } from "solid-js";
import { Portal } from "solid-js/web";
import type { ReportPage } from "../../engine/report/reportPage.ts";
import { saveReport } from "../report/saveReport.ts";

// Slides draw with what the report draws with; neither is needed before somebody asks for it.
const Present = lazy(async () => ({ default: (await import("./Present.tsx")).Present }));

/** What carries a notebook out to others: slides, paper, a report. */
export function OutActs(props: { page: ReportPage; isWorking: boolean; onSay: (sentence: string) => void }) {
  const [isPresenting, setPresenting] = createSignal(false);
  const [isReportDue, setReportDue] = createSignal(false);
  onMount(() => {
    if (new URLSearchParams(location.search).has("present")) setPresenting(true);
  });
  createEffect(() => {
    if (!isReportDue() || props.isWorking) return;
    setReportDue(false);
    void saveReport(props.page).then(
      () => props.onSay("The report is saved: one file that needs no script and no network."),
      (error: unknown) =>
        props.onSay(`The report could not be made: ${error instanceof Error ? error.message : error}`),
    );
  });
  return (
    <>
      <button
        type="button"
        class="act"
        onClick={() => {
          if (props.isWorking) props.onSay("The report is saved as soon as everything is worked out.");
          setReportDue(true);
        }}
      >
        Report
      </button>
      <button type="button" class="act" onClick={() => print()}>
        Print
      </button>
      <button type="button" class="act" onClick={() => setPresenting(true)}>
        Present
      </button>
      <Show when={isPresenting()}>
        {/* Outside of the acts: those may be folded away, and what lies in them with them. */}
        <Portal>
          <Suspense>
            <Present page={props.page} onClose={() => setPresenting(false)} />
          </Suspense>
        </Portal>
      </Show>
    </>
  );
}
