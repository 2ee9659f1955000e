import { createMemo, createSignal, createUniqueId, For, Show } from "solid-js";
import { numbersOf } from "../../../engine/answers/docField.ts";
import { PackingDoc } from "../../../engine/answers/packing/ask.ts";
import { PACK_ORDER_WORDS } from "../../../engine/answers/packing/packingWords.ts";
import { PACK_ORDERS } from "../../../engine/packing/thingPrice.ts";
import type { NotebookPage } from "../../notebook/notebookPage.ts";
import { DocNumberBox } from "../../parts/DocNumberBox.tsx";

const NUMBERS = numbersOf(PackingDoc);
const MOST_LENT = 4;

/** How often it is to hold, how much may be carried, done and spent, what counts most, and where panels may stand. */
export function PackingChoices(props: {
  page: NotebookPage;
  doc: PackingDoc;
  edit: (doc: PackingDoc, label: string) => void;
}) {
  const [wrong, setWrong] = createSignal<string | null>(null);
  const wrongId = createUniqueId();
  const others = createMemo(() =>
    props.page
      .notebook()
      .scenarios.filter(({ id }) => id !== props.doc.scenario && (props.page.document(id)?.panels ?? []).length > 0),
  );
  const put = (field: string, value: number | undefined) => {
    const { [field as "mostMassKg"]: _, ...rest } = props.doc;
    props.edit((value === undefined ? rest : { ...rest, [field]: value }) as PackingDoc, "limit");
  };
  const lend = (id: string) => {
    const { lent } = props.doc;
    const next = lent.includes(id) ? lent.filter((each) => each !== id) : [...lent, id];
    props.edit({ ...props.doc, lent: next }, "where panels stand");
  };
  return (
    <>
      <div class="choices no-print">
        <For each={NUMBERS}>
          {(number) => (
            <DocNumberBox
              number={number}
              value={props.doc[number.field] as number | undefined}
              {...(number.leftOut === undefined ? {} : { usual: number.leftOut })}
              describedBy={wrong() === null ? undefined : wrongId}
              onPut={(value) => put(number.field, value)}
              onWrong={(sentence) => setWrong(sentence || null)}
            />
          )}
        </For>
        <fieldset class="packing-orders">
          <legend>What counts most:</legend>
          <For each={PACK_ORDERS}>
            {(order) => (
              <button
                type="button"
                class="act"
                aria-pressed={props.doc.most === order}
                onClick={() => props.edit({ ...props.doc, most: order }, "what counts most")}
              >
                {PACK_ORDER_WORDS[order]}
              </button>
            )}
          </For>
        </fieldset>
        <Show when={others().length > 0}>
          <fieldset class="packing-orders">
            <legend>Panels may stand as in:</legend>
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
