import { Index } from "solid-js";
import { fieldLabel } from "../../../engine/fields/fieldWords.ts";
import { pattern } from "../../../engine/fields/formPath.ts";
import { dayInWords } from "../../../engine/fields/shownValue.ts";
import { elementId, problemsAt, useForm } from "../../parts/formContext.ts";
import { Control } from "./Control.tsx";
import { FieldRow } from "./FieldRow.tsx";
import { type ListProps, makeList } from "./makeList.ts";
import { datesOf } from "./newItem.ts";

/** Single words in an order that matters: the sky of each day, what may go without first. */
export function WordLines(props: ListProps) {
  const form = useForm();
  const list = makeList(() => props.path);
  const label = () => fieldLabel(pattern(props.path));
  const isDays = () => props.node.items?.enum !== undefined;
  const name = (index: number) => {
    const date = datesOf(form.document())[index];
    return isDays() ? (date === undefined ? `day ${index + 1}` : dayInWords(date)) : `${index + 1}`;
  };
  const spare = () => {
    const names = [...(form.document().gear ?? []), ...(form.document().stations ?? [])].map((each) => each.id);
    return names.find((each) => !list().includes(each));
  };
  const next = () => (isDays() ? (list().at(-1) ?? props.node.items!.enum![0]) : spare());
  const put = (changed: unknown[]) => form.set(props.path, changed);
  const move = (index: number, by: number) => {
    const changed = [...list()];
    changed.splice(index + by, 0, ...changed.splice(index, 1));
    put(changed);
  };
  return (
    <FieldRow
      path={props.path}
      node={{ description: props.node.description ?? "" }}
      isOptional={props.isOptional}
      within={true}
    >
      <ol class="word-lines">
        <Index each={list()}>
          {(_, index) => (
            <li class="word-line">
              <span class="strip-name">{name(index)}</span>
              <Control
                path={[...props.path, index]}
                node={props.node.items!}
                label={`${label()}, ${name(index)}`}
                isOptional={false}
                isWrong={problemsAt(form, [...props.path, index], true).length > 0}
                describedBy={
                  problemsAt(form, props.path, true).length > 0 ? elementId(form, props.path, "wrong") : undefined
                }
              />
              <button
                type="button"
                class="act"
                disabled={index === 0}
                aria-label={`Earlier: ${label()}, ${name(index)}`}
                onClick={() => move(index, -1)}
              >
                ↑
              </button>
              <button
                type="button"
                class="act"
                disabled={index === list().length - 1}
                aria-label={`Later: ${label()}, ${name(index)}`}
                onClick={() => move(index, 1)}
              >
                ↓
              </button>
              <button
                type="button"
                class="act"
                disabled={list().length <= (props.node.minItems ?? 0)}
                aria-label={`Remove: ${label()}, ${name(index)}`}
                onClick={() => put(list().filter((_each, i) => i !== index))}
              >
                remove
              </button>
            </li>
          )}
        </Index>
      </ol>
      <button
        type="button"
        class="act"
        id={elementId(form, [...props.path, "add"])}
        disabled={next() === undefined || list().length >= (props.node.maxItems ?? 1000)}
        aria-label={`Add: ${label()}`}
        onClick={() => put([...list(), next()])}
      >
        add
      </button>
    </FieldRow>
  );
}
