import type { QuantityFacts } from "../../engine/scenario/quantity.ts";
import { type SchemaNode, scenarioInputSchema } from "../../engine/scenario/scenarioSchema.ts";

/** One step from a part of the schema into what it holds. */
export type Step = { readonly key: string } | { readonly item: true } | { readonly option: number };

/** A number that a scenario may hold, and how to reach it. */
export interface NumberField {
  /** "weather(typical).monthlyKt[]": for the name of a test. */
  readonly name: string;
  readonly steps: readonly Step[];
  readonly facts: QuantityFacts;
  readonly isNeeded: boolean;
}

/** Values without which a sample would contradict itself or its neighbours; every other field is sampled from its schema. */
const HINTS: Readonly<Record<string, unknown>> = {
  "Time.start": "2026-06-20T12:00",
  "Time.end": "2026-06-21T12:00",
  "Time.stepMinutes": 60,
  "Place.zone": "Europe/Oslo",
  "Place.latitudeDeg": 60,
  "Place.longitudeDeg": 10,
  "Air.maxC": 20,
  "Air.minC": 10,
  "Weather: words.days": ["mixed", "clear"],
  "Stretch of the clock.to": "18:00",
  "Mode.share": 1,
  "Obstacle: tree.eastM": 9,
  "Obstacle: box.eastM": -9,
  "Obstacle: box.heightM": 3,
  "Obstacle: box.lengthM": 2,
  "Obstacle: box.widthM": 2,
  "Position.eastM": 0,
  "Position.northM": 0,
  "Position.heightM": 1,
  "Bank.startShare": 0.9,
  "Bank.reserveShare": 0.2,
  "Source: generator.startShare": 0.4,
  "Source: generator.stopShare": 0.9,
  "Bank.openCircuitCurve": [
    { share: 0, cellV: 2.5 },
    { share: 1, cellV: 3.5 },
  ],
};

/** Fields that a part needs on top of those its schema requires: one of two ways, or both of a pair. */
const EXTRAS: Readonly<Record<string, (forced: string | undefined) => object>> = {
  Draw: (forced) => (forced === "drawA" || forced === "atV" ? { drawA: 1, atV: 12 } : { drawW: 10 }),
  Cable: (forced) => (forced === "mm2" ? { mm2: 6 } : { awg: "10" }),
  Aim: (forced) => (forced === "tiltDeg" || forced === "azimuthDeg" ? { tiltDeg: 30, azimuthDeg: 180 } : {}),
  Place: () => ({ zone: "Europe/Oslo" }),
  Time: () => ({ stepMinutes: 60 }),
  "Weather: clear": () => ({ air: { maxC: 20, minC: 10 } }),
  "Weather: words": () => ({ air: { maxC: 20, minC: 10 } }),
  Radio: () => ({ receive: { drawW: 10 }, fullPower: { drawW: 100 } }),
  Use: () => ({ when: "always" }),
};

/** Made once: working it out takes longer than reading a scenario. */
const SCHEMA = scenarioInputSchema();

const TEXTS = ["one", "08:00", "2026-06-20T12:00", "2026-06-20"];

/** Something the schema allows, with only what it requires. */
export function sample(node: SchemaNode, hint?: unknown, forced?: string): unknown {
  if (hint !== undefined) return structuredClone(hint);
  if (node.const !== undefined) return node.const;
  if (node.default !== undefined && node.properties === undefined) return structuredClone(node.default);
  if (node.enum !== undefined) return node.enum[0];
  const options = node.oneOf ?? node.anyOf;
  if (options !== undefined) return sample(options[0]!);
  if (node.quantity !== undefined) return node.quantity.typical?.[0] ?? middle(node.quantity, node.type === "integer");
  if (node.properties !== undefined) return sampleObject(node, forced);
  if (node.type === "array") return Array.from({ length: node.minItems ?? 0 }, () => sample(node.items!));
  if (node.type === "boolean") return true;
  const text = TEXTS.find((each) => new RegExp(node.pattern ?? "").test(each));
  if (text === undefined) throw new Error(`The sampler knows no text for ${JSON.stringify(node)}.`);
  return text;
}

function middle({ low, high }: QuantityFacts, isWhole: boolean): number {
  const value = low >= 0 && high / Math.max(low, 1) > 20 ? Math.sqrt(Math.max(low, 0.5) * high) : (low + high) / 2;
  return isWhole ? Math.round(value) : value;
}

function sampleObject(node: SchemaNode, forced: string | undefined): object {
  const object: Record<string, unknown> = {};
  for (const key of node.required ?? []) object[key] = sample(node.properties![key]!, HINTS[`${node.title}.${key}`]);
  return { ...object, ...EXTRAS[node.title ?? ""]?.(forced) };
}

/** A scenario that reads, in which the field exists, and the path at which it stands. */
export function scenarioWith(steps: readonly Step[]): { document: unknown; path: (string | number)[] } {
  const path = steps.flatMap((step): (string | number)[] => ("key" in step ? [step.key] : "item" in step ? [0] : []));
  return { document: along(SCHEMA, steps), path };
}

function along(node: SchemaNode, steps: readonly Step[], hint?: unknown): unknown {
  const [step, ...rest] = steps;
  if (step === undefined) return sample(node, hint);
  if ("option" in step) return along((node.oneOf ?? node.anyOf)![step.option]!, rest, hint);
  if ("item" in step) {
    const items = sample(node, hint) as unknown[];
    items[0] = along(node.items!, rest, hint !== undefined || onlyChoices(rest) ? items[0] : undefined);
    return items;
  }
  const object = (hint === undefined ? sample(node, undefined, step.key) : structuredClone(hint)) as Record<
    string,
    unknown
  >;
  // What leads on to a number is sampled again, so that it can make room for it; the number itself keeps what is there.
  const known = HINTS[`${node.title}.${step.key}`];
  object[step.key] = along(node.properties![step.key]!, rest, onlyChoices(rest) ? (object[step.key] ?? known) : known);
  return object;
}

const onlyChoices = (steps: readonly Step[]) => steps.every((step) => "option" in step);

/** Every number the format has, found in its schema. */
export function numberFields(): NumberField[] {
  const fields: NumberField[] = [];
  const visit = (node: SchemaNode, steps: readonly Step[], name: string, isNeeded: boolean): void => {
    if (node.quantity !== undefined) fields.push({ name, steps, facts: node.quantity, isNeeded });
    for (const [key, field] of Object.entries(node.properties ?? {})) {
      const needed = node.required?.includes(key) === true;
      visit(field, [...steps, { key }], name === "" ? key : `${name}.${key}`, needed);
    }
    (node.oneOf ?? node.anyOf ?? []).forEach((inner, option) => {
      const kind = inner.properties?.kind?.const;
      visit(inner, [...steps, { option }], kind === undefined ? name : `${name}(${kind})`, isNeeded);
    });
    if (node.items !== undefined) visit(node.items, [...steps, { item: true }], `${name}[]`, false);
  };
  visit(SCHEMA, [], "", true);
  return fields;
}

/** Puts a value at a path of a document, in place; `undefined` takes out what stands there. */
export function put(document: unknown, path: readonly (string | number)[], value: unknown): void {
  let parent = document as Record<string | number, unknown>;
  for (const key of path.slice(0, -1)) parent = parent[key] as Record<string | number, unknown>;
  if (value === undefined) delete parent[path.at(-1)!];
  else parent[path.at(-1)!] = value;
}

/** Takes a value out of a document. */
export function valueAt(document: unknown, path: readonly (string | number)[]): unknown {
  return path.reduce<unknown>((value, key) => (value as Record<string | number, unknown>)[key], document);
}
