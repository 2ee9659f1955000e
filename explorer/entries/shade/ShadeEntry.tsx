import { lazy, Suspense } from "solid-js";
import { runOf } from "../../../engine/answers/run/ask.ts";
import type { EntryProps } from "../../notebook/entryKind.ts";
import { Problems } from "../../parts/EntryState.tsx";
import { ScenarioChoice } from "../../parts/ScenarioChoice.tsx";

// Loaded when the first such entry is on the sheet: no other entry needs it.
const SpotsPart = lazy(async () => ({ default: (await import("./SpotsPart.tsx")).SpotsPart }));
const ShadeOfDocument = lazy(async () => ({ default: (await import("./ShadeOfDocument.tsx")).ShadeOfDocument }));

/** The shade of one of the notebook's scenarios. */
export function ShadeEntry(props: EntryProps<"shade">) {
  return (
    <>
      <div class="margin-left">
        <p class="choices no-print">
          <ScenarioChoice
            page={props.page}
            label="Scenario whose shade this is"
            value={props.doc.scenario}
            // Another scenario may not have these panels.
            onPick={(other) => props.edit({ scenario: other }, "scenario")}
          />
        </p>
        <Problems of={[runOf(props.page, props.doc.scenario)]} />
      </div>
      <Suspense fallback={<p class="margin-left">Fetching the drawing…</p>}>
        <ShadeOfDocument
          document={props.page.document(props.doc.scenario)}
          onChanges={(changes, label) => props.page.change(props.doc.scenario, changes, label)}
        />
        <SpotsPart {...props} />
      </Suspense>
    </>
  );
}

export function shadeSummary(props: EntryProps<"shade">): string {
  return props.page.scenario(props.doc.scenario)?.name ?? "gone";
}
