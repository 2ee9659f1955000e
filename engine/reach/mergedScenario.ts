import type { Scenario } from "../scenario/scenario.ts";

type Thing = { readonly id: string };
const isList = (value: unknown): value is readonly Thing[] =>
  Array.isArray(value) && value.every((item: { id?: unknown } | null) => typeof item?.id === "string");
const isSame = (a: unknown, b: unknown) => a === b || JSON.stringify(a) === JSON.stringify(b);

/**
 * A scenario with what several others change about it, each of which was read by itself: reading takes milliseconds, and pairs and threes are many.
 * @param others the base with one lever pulled in each
 * @returns null where two of them change the same thing, so that it has to be read
 */
export function mergedScenario(base: Scenario, others: readonly Scenario[]): Scenario | null {
  const merged: Record<string, unknown> = { ...base };
  const keys = new Set(others.flatMap((other) => Object.keys(other))) as Set<keyof Scenario>;
  for (const key of keys) {
    const news = others.map((other) => other[key]).filter((value) => !isSame(value, base[key]));
    if (news.length === 0) continue;
    if (news.length === 1) merged[key] = news[0];
    else {
      const before: unknown = base[key];
      const list = isList(before) && news.every(isList) ? mergedList(before, news as (readonly Thing[])[]) : null;
      if (list === null) return null;
      merged[key] = list;
    }
  }
  return merged as Scenario;
}

/** A list with what several others take out, put elsewhere or add; null where two of them change the same thing of it. */
function mergedList(before: readonly Thing[], others: readonly (readonly Thing[])[]): Thing[] | null {
  const merged: Thing[] = [];
  for (const thing of before) {
    const now = others.map((other) => other.find(({ id }) => id === thing.id) ?? null);
    const news = now.filter((each) => !isSame(each, thing));
    if (news.length > 1) return null;
    const kept = news.length === 1 ? news[0]! : thing;
    if (kept !== null) merged.push(kept);
  }
  const added = others.flatMap((other) => other.filter(({ id }) => before.every((each) => each.id !== id)));
  return [...merged, ...added];
}
