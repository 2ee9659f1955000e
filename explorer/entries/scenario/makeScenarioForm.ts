import { batch, createMemo, createSignal, createUniqueId } from "solid-js";
import { changesInWords } from "../../../engine/fields/changesInWords.ts";
import { fieldLabel } from "../../../engine/fields/fieldWords.ts";
import { changeAway, changeTo, type Path, pattern, valueAt } from "../../../engine/fields/formPath.ts";
import { applyChanges } from "../../../engine/scenario/applyChanges.ts";
import type { Change } from "../../../engine/scenario/change.ts";
import type { Problem } from "../../../engine/scenario/problem.ts";
import { readScenario } from "../../../engine/scenario/readScenario.ts";
import type { ScenarioInput } from "../../../engine/scenario/scenario.ts";
import type { Form } from "../../parts/formContext.ts";
import { referenceChanges } from "./references.ts";
import { usualValues } from "./usualValues.ts";

/** What the form edits. It holds no document: each edit goes out as changes, with a short label for the list of what can be undone. */
export interface FormOf {
  readonly document: ScenarioInput;
  readonly base?: ScenarioInput | undefined;
  readonly problems: readonly Problem[];
  onChanges(changes: Change[], label: string): void;
}

/** What the fields of a scenario's form share: the document as filled in, and how an edit of it becomes changes. */
export function makeScenarioForm(of: FormOf, isExpert: () => boolean): Form {
  const [open, setOpen] = createSignal<ReadonlySet<string>>(new Set(), { equals: false });
  // The last good reading stays while something is wrong, so that what is filled in does not vanish.
  const filled = createMemo<object | null>((before) => usual(of.document) ?? before, null);
  const baseFilled = createMemo(() => (of.base === undefined ? null : usual(of.base)));

  const commit = (changes: Change[]) => {
    if (changes.length === 0) return;
    const applied = applyChanges(of.document, changes);
    const words = applied.ok ? changesInWords(changes, of.document, applied.document as ScenarioInput) : [];
    of.onChanges(changes, words.join("; ") || fieldLabel(changes[0]!.at.replace(/\.\d+/g, "[]")));
  };
  /** Gives something in a list another name; what refers to it follows. */
  const rename = (path: Path, name: string) => {
    const list = String(path[0]);
    const twins = (valueAt(of.document, [list]) as { id: string }[]).some(({ id }) => id === name);
    const isName = /^[A-Za-z0-9][A-Za-z0-9-]{0,39}$/.test(name) && !twins;
    const old = String(valueAt(of.document, path));
    const followers = isName ? referenceChanges(of.document, list, old, name) : [];
    // Others are renamed first: after its own change the old name is gone.
    batch(() => {
      setOpen((now) => new Set([...now, `${list}.${name}`]));
      commit([...followers, changeTo(of.document, path, name, filled())]);
    });
  };
  return {
    document: () => of.document,
    filled,
    base: () => of.base,
    baseFilled,
    problems: () => of.problems,
    isExpert,
    prefix: createUniqueId(),
    commit,
    set: (path, value) => {
      if (value !== undefined && JSON.stringify(valueAt(of.document, path)) === JSON.stringify(value)) return;
      if (path.length === 3 && path[2] === "id" && typeof value === "string") return rename(path, value);
      commit([changeTo(of.document, path, value, filled()), ...pairOf(path, of.document)]);
    },
    clear: (path) => {
      const away = changeAway(of.document, path);
      if (away !== null) commit([away]);
    },
    opened: {
      has: (key) => open().has(key),
      add: (key) => setOpen((now) => new Set([...now, key])),
      delete: (...keys) => setOpen((now) => new Set([...now].filter((key) => !keys.includes(key)))),
    },
  };
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
