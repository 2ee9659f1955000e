import { createMemo, createSignal, createUniqueId, For, Show } from "solid-js";
import type { ReachDoc } from "../../../engine/answers/reach/ask.ts";
import { ORDER_WORDS } from "../../../engine/answers/reach/reachWords.ts";
import { REACH_ORDERS } from "../../../engine/reach/reachOrder.ts";
import type { NotebookPage } from "../../notebook/notebookPage.ts";

/** How often it is to hold, what counts most, and whose panels are at hand besides. */
export function ReachChoices(props: {
  page: NotebookPage;
  doc: ReachDoc;
  edit: (doc: ReachDoc, label: string) => void;
}) {
  const [wrong, setWrong] = createSignal<string | null>(null);
  const wrongId = createUniqueId();
  const setTarget = (field: HTMLInputElement) => {
    const text = field.value.trim().replace(",", ".");
    const value = Number(text);
    if (text === "" || !(value >= 1 && value <= 100)) {
      setWrong(`Target: “${text}” must be a number from 1 to 100; ${props.doc.targetIn100} is used meanwhile.`);
      field.value = String(props.doc.targetIn100);
      return;
    }
    setWrong(null);
    props.edit({ ...props.doc, targetIn100: value }, "target");
  };
  const others = createMemo(() => lenders(props.page, props.doc.scenario));
  const lend = (id: string) => {
    const { lent } = props.doc;
    const next = lent.includes(id) ? lent.filter((each) => each !== id) : [...lent, id];
    props.edit({ ...props.doc, lent: next }, "panels at hand");
  };
  return (
    <>
      <div class="choices no-print">
        <label class="name-field">
          Target
          <input
            class="size-number"
            type="text"
            inputmode="decimal"
            autocomplete="off"
            value={props.doc.targetIn100}
            aria-describedby={wrong() === null ? undefined : wrongId}
            onChange={(event) => setTarget(event.currentTarget)}
          />
          of 100
        </label>
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
