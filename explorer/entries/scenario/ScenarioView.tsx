import { createMemo, createSignal, createUniqueId, For, lazy, Show, Suspense } from "solid-js";
import { runOf } from "../../../engine/answers/run/ask.ts";
import { scenarioWords } from "../../../engine/answers/scenario/scenarioWords.ts";
import type { EntryProps } from "../../notebook/entryKind.ts";
import { changeWords } from "../../parts/changeWords.ts";
import { Problems } from "../../parts/EntryState.tsx";
import { QuickFields } from "../../parts/QuickFields.tsx";
import { LostChanges } from "./LostChanges.tsx";
import { ScenarioActs } from "./ScenarioActs.tsx";

// Every field of the format, with its words: fetched when somebody asks for it.
const GearShelf = lazy(async () => ({ default: (await import("../../gear/GearShelf.tsx")).GearShelf }));
const ScenarioEditor = lazy(async () => ({ default: (await import("./ScenarioEditor.tsx")).ScenarioEditor }));

/** A scenario: what it is in a line, what it changes about its base, the fields that are filled most often, and all fields. */
export function ScenarioView(props: EntryProps<"scenario">) {
  const id = createUniqueId();
  const [isOpen, setOpen] = createSignal(false);
  const [isShelfOpen, setShelfOpen] = createSignal(false);
  const found = () => runOf(props.page, props.doc.scenario);
  const scenario = createMemo(() => props.page.scenario(props.doc.scenario));
  const document = createMemo(() => props.page.document(props.doc.scenario));
  const base = createMemo(() => props.page.baseDocument(props.doc.scenario));
  const changed = createMemo(() => {
    const [from, to, at] = [base(), document(), scenario()];
    return from === null || to === null || at === null || "document" in at ? [] : changeWords(at.changes, from, to);
  });
  const baseName = () => {
    const at = scenario();
    return at !== null && "basedOn" in at ? (props.page.scenario(at.basedOn)?.name ?? at.basedOn) : null;
  };
  return (
    <div class="margin-left">
      <ScenarioActs {...props} />
      <LostChanges page={props.page} scenario={props.doc.scenario} baseName={baseName()} />
      <Show when={document()}>{(now) => <p class="scenario-line">{scenarioWords(now())}</p>}</Show>
      <Show when={baseName()}>
        <div class="based-on">
          <p>
            Based on <strong>{baseName()}</strong>
            {changed().length === 0 ? ", with nothing changed yet." : ", with these changes:"}
          </p>
          <ul>
            <For each={changed()}>{(line) => <li>{line}</li>}</For>
          </ul>
        </div>
      </Show>
      <Show when={!props.page.room().isPhone && document()}>
        {(now) => (
          <QuickFields
            document={now()}
            base={base()}
            problems={found().problems}
            onTurn={(field, changes) => props.page.turn(props.doc.scenario, field, changes)}
            onSettle={props.page.settle}
          />
        )}
      </Show>
      <p class="acts-row no-print">
        <button
          type="button"
          class="act"
          aria-expanded={isOpen()}
          aria-controls={id}
          onClick={() => setOpen(!isOpen())}
        >
          {isOpen() ? "Close all fields" : "All fields"}
        </button>
        <button
          type="button"
          class="act"
          aria-expanded={isShelfOpen()}
          aria-controls={`${id}-shelf`}
          onClick={() => setShelfOpen(!isShelfOpen())}
        >
          {isShelfOpen() ? "Close the gear shelf" : "Gear shelf"}
        </button>
      </p>
      <div id={`${id}-shelf`} class="no-print">
        <Show when={isShelfOpen() && document()}>
          {(now) => (
            <Suspense fallback={<p>Fetching the shelf…</p>}>
              <GearShelf
                document={now()}
                onChanges={(changes, label) => props.page.change(props.doc.scenario, changes, label)}
              />
            </Suspense>
          )}
        </Show>
      </div>
      <div id={id} class="no-print">
        <Show when={isOpen() && document()}>
          {(now) => (
            <Suspense fallback={<p>Fetching the fields…</p>}>
              <ScenarioEditor
                document={now()}
                base={base() ?? undefined}
                problems={found().problems}
                onChanges={(changes, label) => props.page.change(props.doc.scenario, changes, label)}
              />
            </Suspense>
          )}
        </Show>
      </div>
      <Show when={props.page.room().isPhone && !isOpen()}>
        <Problems of={[found()]} />
      </Show>
    </div>
  );
}

export function scenarioSummary(props: EntryProps<"scenario">): string {
  const scenario = props.page.scenario(props.doc.scenario);
  return scenario?.name ?? "gone";
}
