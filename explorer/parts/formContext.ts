import { createContext, useContext } from "solid-js";
import { type Path, sameIn, valueAt } from "../../engine/fields/formPath.ts";
import { schemaAt } from "../../engine/fields/formSchema.ts";
import type { Change } from "../../engine/scenario/change.ts";
import type { Problem } from "../../engine/scenario/problem.ts";
import type { ScenarioInput } from "../../engine/scenario/scenario.ts";
import { type Wrong, wrongInWords } from "./wrongInWords.ts";

/** What every field of one form needs to know. */
export interface Form {
  document(): ScenarioInput;
  /** The document with everything filled in, as of the last time it was right; null when it never was. */
  filled(): object | null;
  base(): ScenarioInput | undefined;
  baseFilled(): object | null;
  problems(): readonly Problem[];
  isExpert(): boolean;
  /** Begins the id of every element, so that two forms on a page do not meet. */
  readonly prefix: string;
  commit(changes: Change[]): void;
  set(path: Path, value: unknown): void;
  clear(path: Path): void;
  /** Which things of lists stand open, by list and short name. */
  readonly opened: { has(key: string): boolean; add(key: string): void; delete(...keys: string[]): void };
}

const Context = createContext<Form>();
export const FormProvider = Context.Provider;

export function useForm(): Form {
  const form = useContext(Context);
  if (form === undefined) throw new Error("A field of the scenario stands outside its form.");
  return form;
}

export const same = (a: unknown, b: unknown) => JSON.stringify(a) === JSON.stringify(b);

const leadsTo = (path: Path, other: Path) => path.every((key, depth) => other[depth] === key);

/** The problems of a field, or with `within` of everything in a part. */
export function problemsAt(form: Form, path: Path, within: boolean): Problem[] {
  return form
    .problems()
    .filter((problem) => leadsTo(path, problem.path) && (within || problem.path.length === path.length));
}

/** What is wrong at a problem's place, in words, with what the results keep meanwhile. */
export function wrongAt(form: Form, problem: Problem): Wrong {
  const node = schemaAt(form.document(), problem.path);
  const wrong = wrongInWords(problem, valueAt(form.document(), problem.path), node, usualAt(form, problem.path));
  return wrong;
}

/** What the base has there, else what stood there when the document was last right. */
export function usualAt(form: Form, path: Path): unknown {
  const good = valueAt(form.filled(), path);
  if (good !== undefined) return good;
  const was = wasAt(form, path);
  return was === "new" ? undefined : was?.value;
}

/** What the base has at a place: its value (filled in where left out), "new" for what the base has not, null without a base. */
export function wasAt(form: Form, path: Path): { value: unknown; written: unknown } | "new" | null {
  const base = form.base();
  if (base === undefined) return null;
  const there = sameIn(form.document(), path, base);
  if (there === null) return "new";
  const written = valueAt(base, there);
  return { value: written ?? valueAt(form.baseFilled(), there), written };
}

/** Whether a field differs from the base. */
export function isChanged(form: Form, path: Path): boolean {
  const was = wasAt(form, path);
  if (was === null || was === "new") return false;
  const now = valueAt(form.document(), path);
  if (now === undefined && was.written === undefined) return false;
  return !same(now ?? valueAt(form.filled(), path), was.value);
}

/** The id of a field's element; `what` tells its sentences apart. */
export function elementId(form: Form, path: Path, what = "field"): string {
  return `${form.prefix}-${what}-${path.join("-").replaceAll(/[^\w-]/g, "_")}`;
}
