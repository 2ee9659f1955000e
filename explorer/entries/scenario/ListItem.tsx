import { createMemo, Show } from "solid-js";
import { changeAdd, changeAway, type Path, valueAt } from "../../../engine/fields/formPath.ts";
import { type SchemaNode, schemaAt } from "../../../engine/fields/formSchema.ts";
import { itemInWords } from "../../../engine/fields/itemInWords.ts";
import { elementId, isChanged, problemsAt, useForm, wasAt } from "../../parts/formContext.ts";
import { WarningSign } from "../../parts/WrongLines.tsx";
import { copyOfItem } from "./newItem.ts";
import { ObjectFields } from "./ObjectFields.tsx";
import { referenceChanges } from "./references.ts";

/** A thing in a list: a line that says what it is, and its fields when it is opened. */
export function ListItem(props: { path: Path; node: SchemaNode; length: number }) {
  const form = useForm();
  const listPath = () => props.path.slice(0, -1);
  const key = () => String(listPath().at(-1));
  const index = () => props.path.at(-1) as number;
  const item = () => (valueAt(form.document(), props.path) ?? {}) as Record<string, unknown>;
  const id = () => String(item().id);
  const words = createMemo(() => itemInWords(item(), props.node));
  const openKey = () => `${listPath().join(".")}.${id()}`;
  const isOpen = () => form.opened.has(openKey()) || form.opened.has(id());
  const wrongs = () => problemsAt(form, props.path, true).length;
  const change = () => {
    const was = wasAt(form, props.path);
    if (was === null) return "";
    return was === "new" ? "new" : isChanged(form, props.path) ? "changed" : "";
  };
  const list = () => valueAt(form.document(), listPath()) as unknown[];
  const remove = () => {
    const away = changeAway(form.document(), props.path);
    if (away !== null)
      form.commit([away, ...(listPath().length === 1 ? referenceChanges(form.document(), key(), id(), null) : [])]);
    queueMicrotask(() => {
      const left = [index(), index() - 1].map((at) =>
        document.getElementById(elementId(form, [...listPath(), at], "open")),
      );
      left.find((element) => element !== null)?.focus();
    });
  };
  const duplicate = () => {
    form.commit([
      changeAdd(form.document(), listPath(), copyOfItem(form.document(), key(), list(), item()), form.filled()),
    ]);
  };
  const move = (by: number) => {
    const moved = [...list()];
    moved.splice(index() + by, 0, ...moved.splice(index(), 1));
    form.set(listPath(), moved);
  };
  const most = () => schemaAt(form.document(), listPath())?.maxItems ?? 1000;
  return (
    <div class="thing">
      <div class="thing-head">
        <button
          type="button"
          class="thing-open"
          id={elementId(form, props.path, "open")}
          aria-expanded={isOpen()}
          onClick={() => (isOpen() ? form.opened.delete(openKey(), id()) : form.opened.add(openKey()))}
        >
          <span class="thing-sign" aria-hidden="true">
            {isOpen() ? "−" : "+"}
          </span>
          <span class="thing-name">
            <Show when={change() === "changed"}>
              <i class="changed" aria-hidden="true" />
            </Show>
            {words().name}
          </span>{" "}
          <span class="thing-says">
            {words().says}
            <Show when={change() !== ""}>
              <span class="thing-change"> {change()}</span>
            </Show>
          </span>
          <Show when={wrongs() > 0}>
            <span class="wrong">
              {" "}
              <WarningSign /> {wrongs()} to put right
            </span>
          </Show>
        </button>
        <span class="thing-acts">
          <Show when={key() === "variants" || key() === "companions"}>
            <button
              type="button"
              class="act"
              disabled={index() === 0}
              aria-label={`Earlier: ${words().name}`}
              onClick={() => move(-1)}
            >
              ↑
            </button>
            <button
              type="button"
              class="act"
              disabled={index() === props.length - 1}
              aria-label={`Later: ${words().name}`}
              onClick={() => move(1)}
            >
              ↓
            </button>
          </Show>
          <button
            type="button"
            class="act"
            disabled={props.length >= most()}
            aria-label={`Duplicate: ${words().name}`}
            onClick={duplicate}
          >
            copy
          </button>
          <button type="button" class="act" aria-label={`Remove: ${words().name}`} onClick={remove}>
            remove
          </button>
        </span>
      </div>
      <Show when={isOpen()}>
        <div class="thing-fields">
          <ObjectFields path={props.path} node={props.node} />
        </div>
      </Show>
    </div>
  );
}
