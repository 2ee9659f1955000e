import type { ScenarioInput } from "../scenario/scenario.ts";

/** A panel group or a source as it may be written. */
export type Written = Record<string, unknown> & { readonly id: string };

/** Panel groups, or sources, of the plan as they are written, then of its variants, then of other plans; each once. */
export function knownParts(
  document: ScenarioInput,
  others: readonly ScenarioInput[],
  list: "panels" | "sources",
): Written[] {
  const added = (document.variants ?? []).flatMap(({ changes }) =>
    changes.flatMap(({ at, add }) => (at === list && add !== undefined ? [add] : [])),
  );
  const all: unknown[] = [document, ...others].flatMap((each): readonly unknown[] => each[list] ?? []);
  all.splice(document[list]?.length ?? 0, 0, ...added);
  const idOf = (thing: unknown) => (thing as { readonly id?: unknown } | null)?.id;
  return all.filter(
    (thing, k): thing is Written =>
      typeof idOf(thing) === "string" && all.findIndex((each) => idOf(each) === idOf(thing)) === k,
  );
}
