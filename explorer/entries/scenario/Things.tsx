import { For, Index } from "solid-js";
import { choiceLabel, fieldLabel } from "../../../engine/fields/fieldWords.ts";
import { changeAdd, pattern } from "../../../engine/fields/formPath.ts";
import { kindsOf } from "../../../engine/fields/formSchema.ts";
import { elementId, problemsAt, useForm } from "../../parts/formContext.ts";
import { WrongLines } from "../../parts/WrongLines.tsx";
import { ListItem } from "./ListItem.tsx";
import { type ListProps, makeList } from "./makeList.ts";
import { newItem } from "./newItem.ts";

/** Things with names of their own, each folded to a line until it is opened. */
export function Things(props: ListProps) {
  const form = useForm();
  const list = makeList(() => props.path);
  const key = () => String(props.path.at(-1));
  const label = () => fieldLabel(pattern(props.path));
  const kinds = () => kindsOf(props.node.items!);
  const isFull = () => list().length >= (props.node.maxItems ?? 1000);
  const add = (kind?: string) => {
    const item = newItem(form.document(), key(), props.node, list(), kind);
    form.opened.add((item as { id: string }).id);
    form.commit([changeAdd(form.document(), props.path, item, form.filled())]);
    // The new thing is where one goes on typing.
    queueMicrotask(() => document.getElementById(elementId(form, [...props.path, list().length - 1], "open"))?.focus());
  };
  const adds = () => (kinds().length > 0 ? kinds() : [undefined]);
  return (
    <section class="things" aria-label={label()}>
      <header class="things-head">
        <h4>
          {label()} <span class="things-count">{list().length === 0 ? "none" : list().length}</span>
        </h4>
        <For each={adds()}>
          {(kind) => (
            <button
              type="button"
              class="act"
              disabled={isFull()}
              aria-label={`Add: ${kind === undefined ? label() : choiceLabel(kind, props.node.items)}`}
              onClick={() => add(kind)}
            >
              {kind === undefined
                ? "add"
                : `add ${/^[aeiou]/.test(choiceLabel(kind, props.node.items)) ? "an" : "a"} ${choiceLabel(kind, props.node.items)}`.replace(
                    "a mains",
                    "mains",
                  )}
            </button>
          )}
        </For>
      </header>
      <WrongLines path={props.path} problems={problemsAt(form, props.path, false)} />
      <Index each={list()}>
        {(_, index) => <ListItem path={[...props.path, index]} node={props.node.items!} length={list().length} />}
      </Index>
    </section>
  );
}
