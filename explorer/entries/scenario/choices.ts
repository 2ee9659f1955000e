import { type Path, pattern } from "../../../engine/fields/formPath.ts";
import type { SchemaNode } from "../../../engine/fields/formSchema.ts";
import { dayInWords } from "../../../engine/fields/shownValue.ts";
import type { ScenarioInput } from "../../../engine/scenario/scenario.ts";
import { datesOf } from "./newItem.ts";

export interface Choice {
  value: string | number | boolean;
  words: string;
}

/** Fields that name something that stands elsewhere in the document, and what there is to name; null for all others. */
export function namedChoices(document: ScenarioInput, path: Path, node: SchemaNode): Choice[] | null {
  if (pattern(path) === "knownDays[].date")
    return datesOf(document).map((date) => ({ value: date, words: dayInWords(date) }));
  if (node.refersTo === undefined) return null;
  const own = Object.entries(node.choices ?? {}).map(([value, words]) => ({ value, words }));
  const lists = document as unknown as Record<string, readonly { id: string; name?: string }[] | undefined>;
  const items = node.refersTo.flatMap((list) => lists[list] ?? []);
  return [...own, ...items.map(({ id, name }) => ({ value: id, words: name ?? id }))];
}
