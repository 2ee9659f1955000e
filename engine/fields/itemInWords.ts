import { choiceLabel } from "./fieldWords.ts";
import { resolved, type SchemaNode } from "./formSchema.ts";
import { sentence } from "./sentence.ts";
import { fieldToken } from "./shownValue.ts";

/** An entry of a list in a line: what it is called and what it comes to. */
export function itemInWords(
  item: Record<string, unknown>,
  node: SchemaNode | undefined,
): { name: string; says: string } {
  const here = node === undefined ? undefined : resolved(node, item);
  const kind = choiceLabel(item.kind ?? item.id ?? "unnamed", here?.properties?.kind);
  const name = typeof item.name === "string" && item.name !== "" ? item.name : kind;
  return {
    name: name.charAt(0).toUpperCase() + name.slice(1),
    says: here?.says === undefined ? "" : (sentence(here.says, (field) => fieldToken(field, item, here)) ?? ""),
  };
}
