import "../../../engine/scenario/zonesHere.ts";
import { batch, createMemo, createSignal, createUniqueId, For, Show } from "solid-js";
import { changesInWords } from "../../../engine/fields/changesInWords.ts";
import { fieldLabel } from "../../../engine/fields/fieldWords.ts";
import { changeAway, changeTo, type Path, pattern, valueAt } from "../../../engine/fields/formPath.ts";
import { formSchema } from "../../../engine/fields/formSchema.ts";
import { type FormGroup, formGroups, problemsIn } from "../../../engine/fields/groups.ts";
import { applyChanges } from "../../../engine/scenario/applyChanges.ts";
import type { Change } from "../../../engine/scenario/change.ts";
import type { Problem } from "../../../engine/scenario/problem.ts";
import { readScenario } from "../../../engine/scenario/readScenario.ts";
import type { ScenarioInput } from "../../../engine/scenario/scenario.ts";
import { type Form, FormProvider } from "../../parts/formContext.ts";
import { WarningSign } from "../../parts/WrongLines.tsx";
import { AnyField } from "./ObjectFields.tsx";
import { referenceChanges } from "./references.ts";
import { usualValues } from "./usualValues.ts";
import "./scenario.css";

/**
 * The form of a scenario: groups at the left with a line each, and the fields of one group as ruled lines. It holds no
 * document: each edit goes out as changes, with a short label for the list of what can be undone.
 */
export function ScenarioEditor(props: {
  document: ScenarioInput;
  base?: ScenarioInput | undefined;
  problems: readonly Problem[];
  onChanges(changes: Change[], label: string): void;
}) {
  const groups = formGroups();
  const [current, setCurrent] = createSignal(groups[0]!.name);
  const [isExpert, setExpert] = createSignal(false);
  const [open, setOpen] = createSignal<ReadonlySet<string>>(new Set(), { equals: false });
  // The last good reading stays while something is wrong, so that what is filled in does not vanish.
  const filled = createMemo<object | null>((before) => usual(props.document) ?? before, null);
  const baseFilled = createMemo(() => (props.base === undefined ? null : usual(props.base)));

  const commit = (changes: Change[]) => {
    if (changes.length === 0) return;
    const applied = applyChanges(props.document, changes);
    const words = applied.ok ? changesInWords(changes, props.document, applied.document as ScenarioInput) : [];
    props.onChanges(changes, words.join("; ") || fieldLabel(changes[0]!.at.replace(/\.\d+/g, "[]")));
  };
  const set = (path: Path, value: unknown) => {
    if (value !== undefined && JSON.stringify(valueAt(props.document, path)) === JSON.stringify(value)) return;
    if (path.length === 3 && path[2] === "id" && typeof value === "string") {
      const old = String(valueAt(props.document, path));
      const list = String(path[0]);
      const twins = (valueAt(props.document, [list]) as { id: string }[]).some(({ id }) => id === value);
      const followers =
        /^[A-Za-z0-9][A-Za-z0-9-]{0,39}$/.test(value) && !twins
          ? referenceChanges(props.document, list, old, value)
          : [];
      // Others are renamed first: after its own change the old name is gone.
      batch(() => {
        setOpen((now) => new Set([...now, `${list}.${value}`]));
        commit([...followers, changeTo(props.document, path, value, filled())]);
      });
      return;
    }
    commit([changeTo(props.document, path, value, filled()), ...pairOf(path, props.document)]);
  };
  const form: Form = {
    document: () => props.document,
    filled,
    base: () => props.base,
    baseFilled,
    problems: () => props.problems,
    isExpert,
    prefix: createUniqueId(),
    commit,
    set,
    clear: (path) => {
      const away = changeAway(props.document, path);
      if (away !== null) commit([away]);
    },
    opened: {
      has: (key) => open().has(key),
      add: (key) => setOpen((now) => new Set([...now, key])),
      delete: (...keys) => setOpen((now) => new Set([...now].filter((key) => !keys.includes(key)))),
    },
  };
  const isThere = (group: FormGroup) =>
    group.name !== "Variants" || isExpert() || (props.document.variants ?? []).length > 0;
  const changedIn = (group: FormGroup) => {
    if (props.base === undefined) return 0;
    const base = props.base as Record<string, unknown>;
    const now = props.document as Record<string, unknown>;
    return group.keys.filter((key) => JSON.stringify(base[key]) !== JSON.stringify(now[key])).length;
  };
  const says = (group: FormGroup) => {
    try {
      return group.summary(props.document);
    } catch {
      return ""; // a document that is wrong all through has nothing to sum up
    }
  };
  return (
    <FormProvider value={form}>
      <div class="scenario-form">
        <div class="form-groups">
          <For each={groups}>
            {(group, index) => (
              <Show when={isThere(group)}>
                <button
                  type="button"
                  class="group"
                  style={{ "grid-row": index() + 1 }}
                  aria-expanded={current() === group.name}
                  aria-controls={current() === group.name ? `${form.prefix}-group` : undefined}
                  onClick={() => setCurrent(group.name)}
                >
                  <span class="group-name">{group.name}</span>
                  <span class="group-says">
                    {says(group)}
                    <Show when={changedIn(group) > 0}>, changed</Show>
                  </span>
                  <Show when={problemsIn(group, props.problems) > 0}>
                    <span class="wrong">
                      <WarningSign /> {problemsIn(group, props.problems)} to put right
                    </span>
                  </Show>
                </button>
                <Show when={current() === group.name}>
                  <section class="group-fields" id={`${form.prefix}-group`} aria-label={group.name}>
                    <div class="columns">
                      <h3>{group.name}</h3>
                      <span>Value</span>
                      <span>Allowed, usual boxed</span>
                      <span>Why</span>
                      <span>{props.base === undefined ? "" : "Was"}</span>
                    </div>
                    <For each={group.keys}>
                      {(key) => (
                        <AnyField
                          path={[key]}
                          node={formSchema().properties![key]!}
                          isOptional={formSchema().required?.includes(key) !== true}
                        />
                      )}
                    </For>
                  </section>
                </Show>
              </Show>
            )}
          </For>
        </div>
        <p class="depth">
          <button type="button" class="act" aria-pressed={isExpert()} onClick={() => setExpert(!isExpert())}>
            {isExpert() ? "Show the plain fields" : "Show every field"}
          </button>
        </p>
      </div>
    </FormProvider>
  );
}

function usual(document: ScenarioInput): object | null {
  const result = readScenario(document);
  return result.ok ? usualValues(result.scenario) : null;
}

/** Half of a pair says nothing: an aim with a tilt needs a bearing too. */
function pairOf(path: Path, document: ScenarioInput): Change[] {
  const where = pattern(path);
  if (!/aims\[\]\.(tiltDeg|azimuthDeg)$/.test(where)) return [];
  const key = path.at(-1) === "tiltDeg" ? "azimuthDeg" : "tiltDeg";
  const twin = [...path.slice(0, -1), key];
  if (valueAt(document, twin) !== undefined) return [];
  return [changeTo(document, twin, key === "tiltDeg" ? 40 : 180, document)];
}
