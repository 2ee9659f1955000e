import { fieldLabel } from "../../fields/fieldWords.ts";
import { numberPart, schemaAt } from "../../fields/formSchema.ts";
import { plainFigure, shownUnit, shownValue } from "../../fields/shownValue.ts";
import { readScenario } from "../../scenario/readScenario.ts";
import type { ScenarioInput } from "../../scenario/scenario.ts";
import type { SizeWish } from "../../size/sizeAxis.ts";

/** A number of a scenario that can be a direction of a map. */
export interface SizeField {
  /** Place in the document with dots and ids, as changes write it. */
  readonly at: string;
  /** What it belongs to: "Bank", "Van roof"; and its own name. */
  readonly of: string;
  readonly label: string;
  readonly present: number;
}

type Part = Record<string, unknown>;
const isPart = (value: unknown): value is Part => typeof value === "object" && value !== null && !Array.isArray(value);

/** Parts in the order in which people size: what is bought, then what is done, then the rest. */
const PARTS = ["bank", "panels", "stations", "gear", "sources", "converter", "operators", "obstacles", "weather"];
const PART_WORDS: Readonly<Record<string, string>> = { bank: "Bank", converter: "Converter", weather: "Sky" };

/** Every number of a scenario that somebody could want to look along. */
export function sizeFields(document: ScenarioInput): SizeField[] {
  const read = readScenario(document);
  const filled = (read.ok ? read.scenario : document) as unknown as Part;
  const fields: SizeField[] = [];
  const walk = (value: unknown, names: readonly string[], pattern: string, of: string): void => {
    if (typeof value === "number") {
      fields.push({ at: names.join("."), of, label: fieldLabel(pattern), present: value });
    } else if (Array.isArray(value)) {
      for (const item of value) {
        if (!isPart(item) || typeof item.id !== "string") continue;
        const name = typeof item.name === "string" ? item.name : item.id;
        walk(item, [...names, item.id], `${pattern}[]`, names.length === 1 ? name : `${of}, ${name}`);
      }
    } else if (isPart(value)) {
      for (const [key, inner] of Object.entries(value)) walk(inner, [...names, key], `${pattern}.${key}`, of);
    }
  };
  for (const part of PARTS) walk(filled[part], [part], part, PART_WORDS[part] ?? fieldLabel(part));
  return fields;
}

/** What a field's value is called: "350 Ah", "40 %", "1.2 A". */
export function sizeValueWords(document: ScenarioInput, at: string, value: number): string {
  const path = pathOf(document, at);
  const node = schemaAt(document, path);
  return node === undefined ? plainFigure(value) : shownValue(value, numberPart(node));
}

/** The unit of a field as the page shows it; empty where it has none. */
export function sizeUnit(document: ScenarioInput, at: string): string {
  const node = schemaAt(document, pathOf(document, at));
  return node === undefined ? "" : shownUnit(node);
}

/** A place of the document with numbers inside lists. */
function pathOf(document: ScenarioInput, at: string): (string | number)[] {
  const path: (string | number)[] = [];
  let value: unknown = document;
  for (const name of at.split(".")) {
    if (Array.isArray(value)) {
      const index = value.findIndex((item) => isPart(item) && item.id === name);
      path.push(index < 0 ? Number(name) : index);
      value = value[index];
    } else {
      path.push(name);
      value = isPart(value) ? value[name] : undefined;
    }
  }
  return path;
}

const FACTORS = [0.5, 0.75, 1, 1.25, 1.5, 2];

/** Values to look at about the present one, inside what the field may be. */
export function valuesAbout(document: ScenarioInput, field: SizeField): SizeWish {
  const path = pathOf(document, field.at);
  const node = schemaAt(document, path);
  const number = node === undefined ? undefined : numberPart(node);
  const { low = Number.NEGATIVE_INFINITY, high = Number.POSITIVE_INFINITY } = number?.quantity ?? {};
  const isWhole = number?.type === "integer";
  const about = FACTORS.map((factor) => (field.present === 0 ? factor * Math.min(1, high) : factor * field.present));
  const held = about.map((value) => {
    const rounded = isWhole ? Math.round(value) : Number(value.toPrecision(3));
    return Math.min(high, Math.max(low, rounded));
  });
  return { at: field.at, values: [...new Set([...held, field.present])].sort((a, b) => a - b) };
}
