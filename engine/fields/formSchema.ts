import { type SchemaNode, scenarioInputSchema } from "../scenario/scenarioSchema.ts";

export type { SchemaNode };

let made: SchemaNode | null = null;

/** The format as JSON Schema with the engine's facts beside each number; made once, when a form is first opened. */
export function formSchema(): SchemaNode {
  made ??= scenarioInputSchema();
  return made;
}

/** The kinds that a thing comes in ("tree", "box", "horizon"); empty where there is only one. */
export function kindsOf(node: SchemaNode): string[] {
  return (node.oneOf ?? []).map((option) => String(option.properties?.kind?.const));
}

/** The schema of the thing that stands there: for one of several kinds, that kind's. */
export function resolved(node: SchemaNode, value: unknown): SchemaNode {
  if (node.oneOf === undefined) return node;
  const kind = (value as { kind?: unknown } | undefined)?.kind;
  return node.oneOf.find((option) => option.properties?.kind?.const === kind) ?? node.oneOf[0]!;
}

/** The schema of one field or entry inside a thing. */
export function inside(node: SchemaNode, value: unknown, key: string | number): SchemaNode | undefined {
  const here = resolved(node, value);
  return typeof key === "number" ? here.items : here.properties?.[key];
}

/** The schema at a place of a document, or undefined where the format has none. */
export function schemaAt(document: unknown, path: readonly (string | number)[]): SchemaNode | undefined {
  let node: SchemaNode | undefined = formSchema();
  let value = document;
  for (const key of path) {
    if (node === undefined) return undefined;
    node = inside(node, value, key);
    value = (value as Record<string | number, unknown> | undefined)?.[key];
  }
  return node;
}

/** Whether a field is shown before anybody asks for every field: what the schema says of it, or of the nearest part that it lies in. */
export function isPlainAt(document: unknown, path: readonly (string | number)[]): boolean {
  const depths = path.map((_, depth) => schemaAt(document, path.slice(0, depth + 1))?.isPlain);
  return depths.findLast((isPlain) => isPlain !== undefined) === true;
}

/** Where a number may be a word or nothing instead, the schema of the number; else the node itself. */
export function numberPart(node: SchemaNode): SchemaNode {
  return node.anyOf?.find((option) => option.type === "number") ?? node;
}

/** Whether a field is a share of one, which people read as per cent. */
export function isShare(node: SchemaNode): boolean {
  return numberPart(node).quantity?.what.endsWith("as a share of 1") === true;
}
