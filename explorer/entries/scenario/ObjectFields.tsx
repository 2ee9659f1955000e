import { createMemo, For, Match, Show, Switch } from "solid-js";
import { choiceLabel, fieldLabel } from "../../../engine/fields/fieldWords.ts";
import { type Path, pattern, valueAt } from "../../../engine/fields/formPath.ts";
import { isPlainAt, kindsOf, resolved, type SchemaNode, schemaAt } from "../../../engine/fields/formSchema.ts";
import { counts, shownValue } from "../../../engine/fields/shownValue.ts";
import { elementId, isChanged, problemsAt, useForm } from "../../parts/formContext.ts";
import { WrongLines } from "../../parts/WrongLines.tsx";
import { ConductorRow } from "./ConductorRow.tsx";
import { DrawRow } from "./DrawRow.tsx";
import { FieldRow } from "./FieldRow.tsx";
import { ListFields } from "./ListFields.tsx";
import { datesOf, firstOf } from "./newItem.ts";
import { switchKind } from "./switchKind.ts";

/** Parts that stand open although nothing is written in them; the rest of the optional ones are asked for first. */
const ALWAYS_OPEN = ["bring"];

/** The fields of a part, the kind first, each by its schema. */
export function ObjectFields(props: { path: Path; node: SchemaNode; skip?: readonly string[] }) {
  const form = useForm();
  const value = () => valueAt(form.document(), props.path) ?? valueAt(form.filled(), props.path);
  const here = createMemo(() => resolved(props.node, value()));
  const isSeveral = () => props.node.oneOf !== undefined;
  const keys = createMemo(
    () =>
      Object.keys(here().properties ?? {}).filter(
        (key) =>
          !(key === "kind" && isSeveral()) && props.skip?.includes(key) !== true && applies(key, here(), value()),
      ),
    [] as string[],
    { equals: (a, b) => a.join() === b.join() },
  );
  return (
    <>
      <Show when={isSeveral()}>
        <KindRow path={props.path} node={props.node} />
      </Show>
      <For each={keys()}>
        {(key) => (
          <Show when={here().properties?.[key]}>
            {(node) => (
              <AnyField
                path={[...props.path, key]}
                node={node()}
                isOptional={here().required?.includes(key) !== true}
              />
            )}
          </Show>
        )}
      </For>
      <Show when={props.path.length > 0 && problemsAt(form, props.path, false).length > 0}>
        <WrongLines path={props.path} problems={problemsAt(form, props.path, false)} />
      </Show>
    </>
  );
}

/** Fields that count only beside a certain other one, and one of a pair that is shown with the other. */
function applies(key: string, part: SchemaNode, value: unknown): boolean {
  if (key === "mm2" && part.properties?.awg !== undefined) return false;
  return counts(part.properties![key]!, value) || (value as Record<string, unknown> | undefined)?.[key] !== undefined;
}

/** Whether a field is on the page: at plain depth those that most people need, and any that is changed or wrong. */
function isShown(form: ReturnType<typeof useForm>, path: Path, node: SchemaNode): boolean {
  if (form.isExpert()) return true;
  if (isPlainAt(form.document(), path)) return true;
  if (problemsAt(form, path, true).length > 0) return true;
  if (node.properties !== undefined || node.oneOf !== undefined || node.type === "array") {
    return hasPlain(node) || (node.type === "array" && isChanged(form, path));
  }
  return isChanged(form, path);
}

function hasPlain(node: SchemaNode): boolean {
  if (node.isPlain === true) return true;
  const inner = [...Object.values(node.properties ?? {}), ...(node.oneOf ?? []), ...(node.items ? [node.items] : [])];
  return inner.some(hasPlain);
}

/** One field, whatever it is. */
export function AnyField(props: { path: Path; node: SchemaNode; isOptional: boolean }) {
  const form = useForm();
  const shape = createMemo(() => shapeOf(props.node, props.path, props.isOptional));
  const is = (what: string) => shape() === what;
  return (
    <Show when={isShown(form, props.path, props.node)}>
      <Switch fallback={<ScalarRow {...props} />}>
        <Match when={is("draw")}>
          <DrawRow {...props} />
        </Match>
        <Match when={is("conductor")}>
          <ConductorRow path={props.path.slice(0, -1)} node={schemaAt(form.document(), props.path.slice(0, -1))!} />
        </Match>
        <Match when={is("asked")}>
          <AskedPart {...props} />
        </Match>
        <Match when={is("part")}>
          <Part {...props} />
        </Match>
        <Match when={is("list")}>
          <ListFields {...props} />
        </Match>
      </Switch>
    </Show>
  );
}

function shapeOf(node: SchemaNode, path: Path, isOptional: boolean): string {
  if (node.title === "Draw" || node.properties?.drawW !== undefined) return "draw";
  if (path.at(-1) === "awg" && path.at(-2) === "cable") return "conductor";
  const isPart = node.properties !== undefined || node.oneOf !== undefined;
  const isAsked = isOptional && node.default === undefined && !ALWAYS_OPEN.includes(String(path.at(-1)));
  if (isPart) return isAsked ? "asked" : "part";
  if (node.type === "array" && path.at(-1) === "days" && node.items?.enum?.includes("mon")) return "scalar";
  if (node.type === "array") return "list";
  return "scalar";
}

function Part(props: { path: Path; node: SchemaNode }) {
  const form = useForm();
  const label = () => fieldLabel(pattern(props.path));
  return (
    <fieldset class="part" classList={{ "part-expert": form.isExpert() }}>
      <legend class={form.isExpert() ? "part-name" : "unseen"}>{label()}</legend>
      <ObjectFields path={props.path} node={props.node} />
    </fieldset>
  );
}

/** A part that may be left out: said in a line, and opened on demand. */
function AskedPart(props: { path: Path; node: SchemaNode }) {
  const form = useForm();
  const label = () => fieldLabel(pattern(props.path));
  const isThere = () => valueAt(form.document(), props.path) !== undefined;
  return (
    <>
      <FieldRow path={props.path} node={props.node} isOptional={true}>
        <Show
          when={isThere()}
          fallback={
            <>
              <span class="fixed">{props.node.leftOut ?? "as usual"}</span>
              <button
                type="button"
                class="act"
                id={elementId(form, props.path)}
                aria-label={`Give figures: ${label()}`}
                onClick={() => form.set(props.path, firstOf(String(props.path.at(-1))))}
              >
                give figures
              </button>
            </>
          }
        >
          <button
            type="button"
            class="act"
            id={elementId(form, props.path)}
            aria-label={`Leave out: ${label()}`}
            onClick={() => form.clear(props.path)}
          >
            {props.node.leftOut === "none" ? "leave it out" : "as usual"}
          </button>
        </Show>
      </FieldRow>
      <Show when={isThere()}>
        <ObjectFields path={props.path} node={props.node} />
      </Show>
    </>
  );
}

/** Which of several kinds a thing is; what fits the new kind is kept. */
function KindRow(props: { path: Path; node: SchemaNode }) {
  const form = useForm();
  const path = () => [...props.path, "kind"];
  const label = () => fieldLabel(pattern(path()));
  const value = () => valueAt(form.document(), props.path) as { kind?: string } | undefined;
  return (
    <FieldRow
      path={path()}
      node={{ enum: kindsOf(props.node), description: props.node.description ?? "" }}
      isOptional={false}
    >
      <select
        class="box"
        id={elementId(form, path())}
        aria-label={label()}
        onChange={(event) =>
          form.set(
            props.path,
            switchKind(props.node, value(), event.currentTarget.value, datesOf(form.document()).length),
          )
        }
      >
        <For each={kindsOf(props.node)}>
          {(kind) => (
            <option value={kind} selected={value()?.kind === kind}>
              {choiceLabel(kind, props.node)}
            </option>
          )}
        </For>
      </select>
    </FieldRow>
  );
}

function ScalarRow(props: { path: Path; node: SchemaNode; isOptional: boolean }) {
  const form = useForm();
  // Whether a thing works by the clock decides what else is asked of it, so those answers come and go with it.
  const isUse = () => props.path.at(-1) === "when" && props.path.at(-2) === "use";
  const use = () => valueAt(form.document(), props.path.slice(0, -1)) as Record<string, unknown> | undefined;
  const pick = (when: string) => {
    const { windows, station, ...rest } = use() ?? {};
    const extra =
      when === "byTheClock"
        ? { windows: windows ?? firstOf("windows") }
        : when === "whenStaffed" && station !== undefined
          ? { station }
          : {};
    form.set(props.path.slice(0, -1), { ...rest, when, ...extra });
  };
  return (
    <Show when={isUse()} fallback={<FieldRow {...props} />}>
      <FieldRow {...props}>
        <select
          class="box"
          id={elementId(form, props.path)}
          aria-label={fieldLabel(pattern(props.path))}
          onChange={(event) => pick(event.currentTarget.value)}
        >
          <For each={props.node.enum}>
            {(word) => (
              <option value={word} selected={use()?.when === word}>
                {shownValue(word, props.node)}
              </option>
            )}
          </For>
        </select>
      </FieldRow>
    </Show>
  );
}
