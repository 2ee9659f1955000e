import { For, Index, Show } from "solid-js";
import { fieldLabel } from "../../../engine/fields/fieldWords.ts";
import { changeAdd, changeAway, pattern, valueAt } from "../../../engine/fields/formPath.ts";
import { elementId, problemsAt, useForm } from "../../parts/formContext.ts";
import { Control } from "./Control.tsx";
import { FieldRow } from "./FieldRow.tsx";
import { type ListProps, makeList } from "./makeList.ts";
import { copyOfItem, newItem } from "./newItem.ts";
import { UsualAct } from "./UsualAct.tsx";

/** Entries of a few figures, a line each: stretches of the clock, modes, aims, losses, points. */
export function ShortLines(props: ListProps) {
  const form = useForm();
  const list = makeList(() => props.path);
  const label = () => fieldLabel(pattern(props.path));
  const key = () => String(props.path.at(-1));
  const fields = () => Object.entries(props.node.items!.properties!);
  const isWritten = () => valueAt(form.document(), props.path) !== undefined;
  const shown = (field: string) =>
    form.isExpert() ||
    props.node.items!.required?.includes(field) === true ||
    (isWritten() && list().some((item) => (item as Record<string, unknown>)[field] !== undefined));
  const add = (item: unknown) => form.commit([changeAdd(form.document(), props.path, item, form.filled())]);
  const remove = (index: number) => {
    const away = changeAway(form.document(), [...props.path, index]);
    if (away === null)
      form.set(
        props.path,
        list().filter((_, i) => i !== index),
      );
    else form.commit([away]);
  };
  const name = (index: number) => `${label()} ${index + 1}`;
  const isFull = () => list().length >= (props.node.maxItems ?? 1000);
  return (
    <FieldRow
      path={props.path}
      node={{ description: props.node.description ?? props.node.items?.description ?? "" }}
      isOptional={props.isOptional}
      within={true}
    >
      <ul class="short-lines">
        <Index each={list()}>
          {(_, index) => (
            <li class="short-line">
              <For each={fields()}>
                {([field, node]) => (
                  <Show when={shown(field)}>
                    <span class="cell">
                      <span class="cell-name">{fieldLabel(pattern([...props.path, index, field]))}</span>
                      <span class="cell-value">
                        <Control
                          path={[...props.path, index, field]}
                          node={node}
                          label={`${name(index)}, ${fieldLabel(pattern([...props.path, index, field])).toLowerCase()}`}
                          isOptional={!isWritten() || props.node.items!.required?.includes(field) !== true}
                          isWrong={problemsAt(form, [...props.path, index, field], true).length > 0}
                          describedBy={
                            problemsAt(form, props.path, true).length > 0
                              ? elementId(form, props.path, "wrong")
                              : undefined
                          }
                        />
                      </span>
                    </span>
                  </Show>
                )}
              </For>
              <span class="line-acts">
                <button
                  type="button"
                  class="act"
                  disabled={isFull()}
                  aria-label={`Duplicate: ${name(index)}`}
                  onClick={() => add(copyOfItem(form.document(), key(), list(), list()[index]))}
                >
                  copy
                </button>
                <button
                  type="button"
                  class="act"
                  disabled={list().length <= (props.node.minItems ?? 0)}
                  aria-label={`Remove: ${name(index)}`}
                  onClick={() => remove(index)}
                >
                  remove
                </button>
              </span>
            </li>
          )}
        </Index>
      </ul>
      <Show when={list().length === 0}>
        <span class="fixed">{props.node.empty ?? "none"}</span>
      </Show>
      <button
        type="button"
        class="act"
        id={elementId(form, [...props.path, "add"])}
        disabled={isFull()}
        aria-label={`Add: ${label()}`}
        onClick={() => add(newItem(form.document(), key(), props.node, list()))}
      >
        add
      </button>
      <UsualAct {...props} />
    </FieldRow>
  );
}
