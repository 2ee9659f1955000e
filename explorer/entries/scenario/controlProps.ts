import type { Path } from "../../../engine/fields/formPath.ts";
import type { SchemaNode } from "../../../engine/fields/formSchema.ts";

/** What the box, list of choices or tick of one field is told. */
export interface ControlProps {
  path: Path;
  node: SchemaNode;
  label: string;
  isOptional: boolean;
  isWrong: boolean;
  describedBy?: string | undefined;
}
