import { createMemo, For, Index, Match, Show, Switch } from "solid-js";
import { ChangeFields } from "./ChangeFields.tsx";
import { Control, selectorInputs } from "./Control.tsx";
import { FieldRow } from "./FieldRow.tsx";
import { choiceLabel, fieldLabel } from "./fieldWords.ts";
import { elementId, problemsAt, useForm } from "./formContext.ts";
import { changeAdd, changeAway, type Path, pattern, valueAt } from "./formPath.ts";
import { kindsOf, type SchemaNode } from "./formSchema.ts";
import { ListItem } from "./ListItem.tsx";
import { copyOfItem, datesOf, firstOf, newItem } from "./newItem.ts";
import { dayInWords } from "./shownValue.ts";
import { WrongLines } from "./WrongLines.tsx";

interface ListProps {
  path: Path;
  node: SchemaNode;
  isOptional: boolean;
}

const MONTHS = ["Jan", "Feb", "Mar", "Apr", "May", "Jun", "Jul", "Aug", "Sep", "Oct", "Nov", "Dec"];

/** A list of the document: things with names of their own, short lines, single words, or one figure an hour or a month. */
export function ListFields(props: ListProps) {
  const form = useForm();
  const kind = createMemo(() => kindOf(props.node, props.path));
  const written = () => valueAt(form.document(), props.path) as unknown[] | undefined;
  const isAsked = () =>
    props.isOptional && props.node.default === undefined && written() === undefined && props.path.length > 1;
  return (
    <Show when={!isAsked()} fallback={<AskedList {...props} />}>
      <Switch>
        <Match when={kind() === "strip"}>
          <NumberStrip {...props} />
        </Match>
        <Match when={kind() === "ticks"}>
          <InputTicks {...props} />
        </Match>
        <Match when={kind() === "words"}>
          <WordLines {...props} />
        </Match>
        <Match when={kind() === "lines"}>
          <ShortLines {...props} />
        </Match>
        <Match when={kind() === "changes"}>
          <ChangeFields path={props.path} node={props.node} />
        </Match>
        <Match when={kind() === "things"}>
          <Things {...props} />
        </Match>
      </Switch>
    </Show>
  );
}

function kindOf(node: SchemaNode, path: Path): string {
  const item = node.items!;
  if (item.quantity !== undefined) return "strip";
  if (pattern(path) === "selector.inputs") return "ticks";
  if (item.properties?.at !== undefined && item.properties.remove !== undefined) return "changes";
  if (item.properties === undefined && item.oneOf === undefined) return "words";
  const fields = Object.values(item.properties ?? {});
  const isShort =
    item.oneOf === undefined && fields.length <= 4 && fields.every((field) => field.properties === undefined);
  return isShort && item.properties?.id === undefined ? "lines" : "things";
}

/** The document's list, or the one that is filled in where nothing is written. */
function makeList(path: () => Path) {
  const form = useForm();
  return () => {
    const list = valueAt(form.document(), path()) ?? valueAt(form.filled(), path());
    return Array.isArray(list) ? (list as unknown[]) : [];
  };
}

function AskedList(props: ListProps) {
  const form = useForm();
  const key = () => String(props.path.at(-1));
  const label = () => fieldLabel(pattern(props.path));
  const usual = () =>
    ({
      out: "always",
      monthlyKt: "from the climate tables",
      monthlyGhiKwhM2: "from the climate tables",
      openCircuitCurve: "the chemistry's",
    })[key()];
  const first = () =>
    key() === "inputs"
      ? selectorInputs(form.document())
          .slice(0, 2)
          .map((choice) => choice.value)
      : firstOf(key());
  return (
    <FieldRow path={props.path} node={props.node} isOptional={true}>
      <span class="fixed">{usual() ?? "as usual"}</span>
      <button
        type="button"
        class="act"
        id={elementId(form, props.path)}
        aria-label={`Give it: ${label()}`}
        onClick={() => form.set(props.path, first())}
      >
        {key() === "out" ? "set hours" : "give figures"}
      </button>
    </FieldRow>
  );
}

function UsualAct(props: { path: Path; isOptional: boolean }) {
  const form = useForm();
  return (
    <Show when={props.isOptional && props.path.length > 1 && valueAt(form.document(), props.path) !== undefined}>
      <button
        type="button"
        class="act"
        aria-label={`As usual: ${fieldLabel(pattern(props.path))}`}
        onClick={() => form.clear(props.path)}
      >
        as usual
      </button>
    </Show>
  );
}

/** One figure for each month or hour, in a grid. */
function NumberStrip(props: ListProps) {
  const form = useForm();
  const list = makeList(() => props.path);
  const label = () => fieldLabel(pattern(props.path));
  const name = (index: number) =>
    list().length === 12 ? MONTHS[index] : `${String(index).padStart(2, "0")}–${String(index + 1).padStart(2, "0")}`;
  return (
    <FieldRow
      path={props.path}
      node={{ description: props.node.description ?? "" }}
      isOptional={props.isOptional}
      within={true}
    >
      <div class="strip">
        <Index each={list()}>
          {(_, index) => (
            <span class="strip-cell">
              <span class="strip-name">{name(index)}</span>
              <Control
                path={[...props.path, index]}
                node={props.node.items!}
                label={`${label()}, ${name(index)}`}
                isOptional={valueAt(form.document(), props.path) === undefined}
                isWrong={problemsAt(form, [...props.path, index], false).length > 0}
              />
            </span>
          )}
        </Index>
      </div>
      <UsualAct {...props} />
    </FieldRow>
  );
}

/** What stands at the selector: ticks for every panel group and source there is. */
function InputTicks(props: ListProps) {
  const form = useForm();
  const list = makeList(() => props.path);
  const toggle = (name: unknown) => {
    const known = selectorInputs(form.document()).map((choice) => choice.value);
    const next = known.filter((each) => list().includes(each) !== (each === name));
    form.set(props.path, next);
  };
  return (
    <FieldRow path={props.path} node={props.node} isOptional={props.isOptional} within={true}>
      <fieldset class="weekdays">
        <legend class="unseen">{fieldLabel(pattern(props.path))}</legend>
        <For each={selectorInputs(form.document())}>
          {(choice) => (
            <label class="weekday">
              <input type="checkbox" checked={list().includes(choice.value)} onChange={() => toggle(choice.value)} />
              {choice.words}
            </label>
          )}
        </For>
      </fieldset>
      <UsualAct {...props} />
    </FieldRow>
  );
}

/** Single words in an order that matters: the sky of each day, what may go without first. */
function WordLines(props: ListProps) {
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

/** Entries of a few figures, a line each: stretches of the clock, modes, aims, losses, points. */
function ShortLines(props: ListProps) {
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
        <span class="fixed">{key() === "staffed" ? "never" : "none"}</span>
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

/** Things with names of their own, each folded to a line until it is opened. */
function Things(props: ListProps) {
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
              aria-label={`Add: ${kind === undefined ? label() : choiceLabel(kind)}`}
              onClick={() => add(kind)}
            >
              {kind === undefined
                ? "add"
                : `add ${/^[aeiou]/.test(choiceLabel(kind)) ? "an" : "a"} ${choiceLabel(kind)}`.replace(
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
