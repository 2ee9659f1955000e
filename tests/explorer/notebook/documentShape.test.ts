import { readFileSync } from "node:fs";
import { expect, test } from "vitest";
import { documentShapeText } from "../../../docs/documentFrame.ts";

test("the frame that documents are held against is the engine's own; else run npm run docs", () => {
  expect(readFileSync("engine/notebook/documentShape.json", "utf8")).toBe(documentShapeText());
});
