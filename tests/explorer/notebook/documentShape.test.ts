import { expect, test } from "vitest";
import { DOCUMENT_SHAPE, type Shape } from "../../../engine/notebook/documentShape.ts";
import { type SchemaNode, scenarioInputSchema } from "../../../engine/scenario/scenarioSchema.ts";

/** The frame of the engine's own schema, written as `documentShape.ts` writes it. */
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

test("the frame that documents are held against is the engine's own", () => {
  const schema = JSON.parse(JSON.stringify(frame(scenarioInputSchema())), (_, value) => value);
  expect(JSON.parse(JSON.stringify(DOCUMENT_SHAPE))).toEqual(schema);
});
