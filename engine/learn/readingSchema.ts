import * as z from "zod";
import type { SchemaNode } from "../scenario/scenarioSchema.ts";
import { ReadingFields } from "./reading.ts";

/** What a reading may hold, field by field, with what each is called, its unit and its limits. */
export function readingSchema(): SchemaNode {
  return z.toJSONSchema(ReadingFields, { io: "input", target: "draft-7" }) as SchemaNode;
}
