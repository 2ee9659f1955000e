import { fieldLabel } from "../../fields/fieldWords.ts";
import { pattern } from "../../fields/formPath.ts";
import { schemaAt } from "../../fields/formSchema.ts";
import { formGroups } from "../../fields/groups.ts";
import { itemInWords } from "../../fields/itemInWords.ts";
import { shownValue } from "../../fields/shownValue.ts";
import type { ScenarioInput } from "../../scenario/scenario.ts";

/** A figure that a scenario was worked out with. */
export interface ScenarioFigure {
  readonly name: string;
  readonly says: string;
}

/** Fields that say what the document is and not what is planned. */
const NOT_PLANNED = /^(\$schema|format|version|name|note|variants)$/;
const LISTS = /^(gear|stations|panels|obstacles|sources)$/;

/** The figures of a scenario by group, as written: things in a line each, other fields with what they say. */
export function scenarioFigures(
  document: ScenarioInput,
): { readonly group: string; readonly figures: readonly ScenarioFigure[] }[] {
  return formGroups()
    .map(({ name, keys }) => ({
      group: name,
      figures: keys.filter((key) => !NOT_PLANNED.test(key)).flatMap((key) => figuresAt(document, [key])),
    }))
    .filter(({ figures }) => figures.length > 0);
}

function figuresAt(document: ScenarioInput, path: readonly string[]): ScenarioFigure[] {
  const value = path.reduce<unknown>(
    (at, key) => (at as Record<string, unknown> | undefined)?.[key],
    document as unknown,
  );
  if (value === undefined) return [];
  if (LISTS.test(path.join(".")) && Array.isArray(value)) {
    return value.map((item) => itemInWords(item, schemaAt(document, path)?.items));
  }
  const isGroup = typeof value === "object" && value !== null && !Array.isArray(value);
  if (isGroup && !("drawW" in value) && !("drawA" in value)) {
    return Object.keys(value).flatMap((key) => figuresAt(document, [...path, key]));
  }
  return [{ name: fieldLabel(pattern(path)), says: shownValue(value, schemaAt(document, path)) }];
}
