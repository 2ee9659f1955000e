import type { SchemaNode } from "./formSchema.ts";
import { inSentence } from "./sentence.ts";
import { shownValue } from "./shownValue.ts";

const PLACE = /^(.*?)(?: ((?:in|on|at|by|under|behind|beside|near|along|over) .*))?$/;

/** "Folding panels in the meadow" and 2: "2 folding panels added, in the meadow". */
export function panelsCame(group: Record<string, unknown>, node: SchemaNode): string {
  const count = Number(group.count);
  const [, thing, where] = PLACE.exec(String(group.name))!;
  const noun = count === 1 ? "panel" : "panels";
  const what = /panels?$/i.test(thing!)
    ? `${count} ${inSentence(thing!).replace(/panels?$/i, noun)} added`
    : `${count} ${noun} added, ${thing}`;
  return [what, ...(where === undefined ? [] : [where]), shownValue(group.mount, node.properties!.mount)].join(", ");
}
