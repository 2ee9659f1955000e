import { createMemo, createSignal, createUniqueId, For, Show } from "solid-js";
import { numbersOf } from "../../../engine/answers/docField.ts";
import { ReachDoc } from "../../../engine/answers/reach/ask.ts";
import { ORDER_WORDS } from "../../../engine/answers/reach/reachWords.ts";
import { REACH_ORDERS } from "../../../engine/reach/reachOrder.ts";
import type { NotebookPage } from "../../notebook/notebookPage.ts";
import { DocNumberBox } from "../../parts/DocNumberBox.tsx";

const NUMBERS = numbersOf(ReachDoc);

/** How often it is to hold, what counts most, and whose panels are at hand besides. */
export function ReachChoices(props: {
  page: NotebookPage;
  doc: ReachDoc;
  edit: (doc: ReachDoc, label: string) => void;
}) {
  const [wrong, setWrong] = createSignal<string | null>(null);
  const wrongId = createUniqueId();
  const others = createMemo(() => lenders(props.page, props.doc.scenario));
  const lend = (id: string) => {
    const { lent } = props.doc;
    const next = lent.includes(id) ? lent.filter((each) => each !== id) : [...lent, id];
    props.edit({ ...props.doc, lent: next }, "panels at hand");
  };
  return (
    <>
      <div class="choices no-print">
        <For each={NUMBERS}>
          {(number) => (
            <DocNumberBox
              number={number}
              value={props.doc[number.field] as number}
              describedBy={wrong() === null ? undefined : wrongId}
              onPut={(value) => props.edit({ ...props.doc, [number.field]: value }, "target")}
              onWrong={(sentence) => setWrong(sentence || null)}
            />
          )}
        </For>
        <fieldset class="reach-orders">
          <legend>What counts most:</legend>
          <For each={REACH_ORDERS}>
            {(order) => (
              <button
                type="button"
                class="act"
                aria-pressed={props.doc.most === order}
                onClick={() => props.edit({ ...props.doc, most: order }, "what counts most")}
              >
                {ORDER_WORDS[order]}
              </button>
            )}
          </For>
        </fieldset>
        <Show when={others().length > 0}>
          <fieldset class="reach-orders">
            <legend>Panels at hand from:</legend>
            <For each={others()}>
              {({ id, name }) => (
                <label>
                  <input
                    type="checkbox"
                    checked={props.doc.lent.includes(id)}
                    disabled={!props.doc.lent.includes(id) && props.doc.lent.length >= MOST_LENT}
                    onChange={() => lend(id)}
                  />{" "}
                  {name}
                </label>
              )}
            </For>
          </fieldset>
        </Show>
      </div>
      <Show when={wrong()}>
        {(sentence) => (
          <p class="wrong" id={wrongId} role="alert">
            {sentence()}
          </p>
        )}
      </Show>
    </>
  );
}

const MOST_LENT = 4;

/** Scenarios that have panels which a plan has not. */
function lenders(page: NotebookPage, scenario: string): { readonly id: string; readonly name: string }[] {
  const own = page.document(scenario)?.panels?.map(({ id }) => id) ?? [];
  return page.notebook().scenarios.flatMap(({ id, name }) => {
    const panels = id === scenario ? [] : (page.document(id)?.panels ?? []);
    return panels.some((group) => !own.includes(group.id)) ? [{ id, name }] : [];
  });
}
