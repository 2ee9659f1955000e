import type { Change } from "./change.ts";
import type { Problem } from "./problem.ts";

type Container = Record<string, unknown> | unknown[];

function isContainer(value: unknown): value is Container {
  return typeof value === "object" && value !== null;
}

/** The key under which `segment` stands in `parent`: a field's name, or the place in the list of what has that id. */
function keyIn(parent: Container, segment: string): string | number | null {
  if (!Array.isArray(parent)) return segment;
  const byId = parent.findIndex((item) => isContainer(item) && (item as { id?: unknown }).id === segment);
  if (byId >= 0) return byId;
  return /^\d+$/.test(segment) && Number(segment) < parent.length ? Number(segment) : null;
}

function child(parent: Container, key: string | number): unknown {
  return Object.hasOwn(parent, key) ? (parent as Record<string | number, unknown>)[key] : undefined;
}

/**
 * Works a list of changes into a copy of a scenario document; the document itself stays as it is.
 * @param document a scenario as written (defaults may be left out)
 * @param changes in order: a value put at a place, something added to a list, or something taken out; units as in the fields they name
 * @returns the changed copy, not yet validated, or the changes whose place does not exist
 * @throws TypeError if the document holds itself or a bigint, and so is no JSON
 * @see docs/scenario-format.md for how a place is written
 */
export function applyChanges(
  document: unknown,
  changes: readonly Change[],
): { ok: true; document: unknown } | { ok: false; problems: Problem[] } {
  const copy = copyOf(document);
  const problems: Problem[] = [];
  changes.forEach((change, index) => {
    if (change.to === undefined && change.add === undefined && change.remove !== true) {
      const message = `The change at "${change.at}" does not say what becomes of it; give to (a new value), add (something for a list) or remove (true).`;
      problems.push({ code: "empty-change", path: ["changes", index], message });
      return;
    }
    const missing = applyChange(copy, change);
    if (missing === null) return;
    const message = `The change at "${change.at}" finds no "${missing}" in the scenario; check the names, and inside a list write the id of what you mean.`;
    problems.push({ code: "no-such-place", path: ["changes", index, "at"], message });
  });
  return problems.length > 0 ? { ok: false, problems } : { ok: true, document: copy };
}

/** A document is JSON, so its text is a faithful copy; what a change brings is copied too, or later changes would write into it. */
function copyOf(value: unknown): unknown {
  return JSON.parse(JSON.stringify(value));
}

/** @returns null when done, else the part of the place that does not exist */
function applyChange(root: unknown, change: Change): string | null {
  const segments = change.at.split(".");
  const last = segments.pop()!;
  let parent: unknown = root;
  for (const segment of segments) {
    const key = isContainer(parent) ? keyIn(parent, segment) : null;
    parent = key === null ? undefined : child(parent as Container, key);
    if (!isContainer(parent)) return segment;
  }
  const key = keyIn(parent as Container, last);
  if (key === null || key === "__proto__") return last;
  const target = parent as Record<string | number, unknown>;
  if (change.add !== undefined) {
    const list = child(target, key) ?? [];
    if (!Array.isArray(list)) return last;
    target[key] = [...list, copyOf(change.add)];
  } else if (change.remove === true) {
    if (child(target, key) === undefined) return last;
    if (Array.isArray(target)) target.splice(Number(key), 1);
    else delete target[key];
  } else {
    target[key] = copyOf(change.to);
  }
  return null;
}
