import { type Path, valueAt } from "../../../engine/fields/formPath.ts";
import type { SchemaNode } from "../../../engine/fields/formSchema.ts";
import { useForm } from "../../parts/formContext.ts";

/** What a list of the form is told. */
export interface ListProps {
  path: Path;
  node: SchemaNode;
  isOptional: boolean;
}

/** The document's list, or the one that is filled in where nothing is written. */
export function makeList(path: () => Path) {
  const form = useForm();
  return () => {
    const list = valueAt(form.document(), path()) ?? valueAt(form.filled(), path());
    return Array.isArray(list) ? (list as unknown[]) : [];
  };
}
