import { createMemo, lazy, Show, Suspense } from "solid-js";
import { readScenario } from "../../../engine/scenario/readScenario.ts";
import type { EntryProps } from "../../notebook/entryKind.ts";
import { Problems } from "../../page/EntryState.tsx";
import { ScenarioChoice } from "../../page/ScenarioChoice.tsx";

// Loaded when the first such entry is on the sheet: no other entry needs it.
const ShadeView = lazy(async () => ({ default: (await import("./ShadeView.tsx")).ShadeView }));

/** The shade of one of the notebook's scenarios; the last one that made sense stays while a value is wrong. */
export function ShadeEntry(props: EntryProps<"shade">) {
  const scenario = createMemo((before: ReturnType<typeof read>) => read(props) ?? before, null);
  return (
    <>
      <div class="margin-left">
        <p class="choices no-print">
          <ScenarioChoice
            page={props.page}
            label="Scenario whose shade this is"
            value={props.doc.scenario}
            onPick={(other) => props.edit({ scenario: other }, "scenario")}
          />
        </p>
        <Problems of={[props.page.run(props.doc.scenario)]} />
      </div>
      <Show when={scenario()}>
        {(now) => (
          <Suspense fallback={<p class="margin-left">Fetching the drawing…</p>}>
            <ShadeView
              scenario={now()}
              onChanges={(changes, label) => props.page.change(props.doc.scenario, changes, label)}
            />
          </Suspense>
        )}
      </Show>
    </>
  );
}

function read(props: EntryProps<"shade">) {
  const document = props.page.document(props.doc.scenario);
  if (document === null) return null;
  const found = readScenario(document);
  return found.ok ? found.scenario : null;
}

export function shadeSummary(props: EntryProps<"shade">): string {
  return props.page.scenario(props.doc.scenario)?.name ?? "gone";
}
