import type { Shape } from "../engine/notebook/documentShape.ts";
import { type SchemaNode, scenarioInputSchema } from "../engine/scenario/scenarioSchema.ts";

/** The frame of the engine's own schema, as `engine/notebook/documentShape.json` has it. */
function frame(node: SchemaNode): Shape {
  if (node.oneOf !== undefined) {
    return {
      kinds: Object.fromEntries(node.oneOf.map((each) => [String(each.properties?.kind?.const), fields(each)])),
    };
  }
  if (node.anyOf !== undefined) {
    return node.anyOf.some(({ type }) => type === "null") ? "number or nothing" : "number";
  }
  if (node.type === "object") return fields(node);
  if (node.type === "array") return [frame(node.items!)];
  const type = node.type ?? typeof (node.const ?? node.enum?.[0]);
  if (type === "string") return "text";
  if (type === "number" || type === "integer") return "number";
  return type === "boolean" ? "yes or no" : "anything";
}

function fields(node: SchemaNode): { [field: string]: Shape } {
  const needed = (node as { required?: readonly string[] }).required ?? [];
  return Object.fromEntries(
    Object.entries(node.properties ?? {}).map(([name, each]) => [
      needed.includes(name) ? name : `${name}?`,
      frame(each),
    ]),
  );
}

/** The text of `engine/notebook/documentShape.json`. */
export const documentShapeText = (): string => `${JSON.stringify(frame(scenarioInputSchema()))}\n`;
