import * as z from "zod";
import { FIELD_META, type FieldMeta } from "./fieldMeta.ts";
import type { QuantityFacts } from "./quantity.ts";
import { Scenario } from "./scenario.ts";

/** The part of JSON Schema that the format uses, with what the engine's schema says besides. */
export interface SchemaNode extends FieldMeta {
  title?: string;
  description?: string;
  type?: string;
  properties?: Record<string, SchemaNode>;
  required?: string[];
  items?: SchemaNode;
  anyOf?: SchemaNode[];
  oneOf?: SchemaNode[];
  enum?: (string | number)[];
  const?: string | number | boolean;
  default?: unknown;
  minimum?: number;
  maximum?: number;
  minLength?: number;
  maxLength?: number;
  minItems?: number;
  maxItems?: number;
  pattern?: string;
  quantity?: QuantityFacts;
  $ref?: string;
  allOf?: unknown;
  definitions?: unknown;
}

/** What a scenario may hold as it is written, defaults left out, as the engine's own schema says it. */
export function scenarioInputSchema(): SchemaNode {
  const schema = z.toJSONSchema(Scenario, { io: "input", target: "draft-7" }) as SchemaNode;
  delete schema.definitions;
  eachNode(schema, (node) => {
    // "Any JSON" needs no definition, and a choice of plain values is an enumeration to an editor.
    delete node.$ref;
    delete node.allOf;
    const options = node.anyOf;
    if (options?.every((option) => option.const !== undefined) !== true) return;
    node.enum = options.map((option) => option.const as number);
    delete node.anyOf;
  });
  return schema;
}

/** The schema that editors load: without what only we understand, and with the usual range in each description. */
export function scenarioSchemaText(): string {
  const schema = scenarioInputSchema();
  eachNode(schema, (node) => {
    if (node.quantity?.typical !== undefined) {
      const [low, high] = node.quantity.typical;
      const why = node.quantity.why === undefined ? "" : ` (${node.quantity.why})`;
      node.description = `${node.description}; usually ${low} to ${high}${why}`;
    }
    node.description ??= node.part!;
    for (const name of FIELD_META) delete node[name];
    delete node.quantity;
  });
  return `${JSON.stringify(schema, null, 1)}\n`;
}

/** Calls `visit` for a schema and all that lies in it. */
function eachNode(node: SchemaNode, visit: (node: SchemaNode) => void): void {
  visit(node);
  for (const inner of [...Object.values(node.properties ?? {}), ...(node.anyOf ?? []), ...(node.oneOf ?? [])])
    eachNode(inner, visit);
  if (node.items !== undefined) eachNode(node.items, visit);
}
