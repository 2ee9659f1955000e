import { readdirSync, readFileSync } from "node:fs";
import { type SchemaNode, scenarioInputSchema } from "../engine/scenario/scenarioSchema.ts";
import { filledInByKind } from "./filledInByKind.ts";
import { mdTable } from "./mdTable.ts";

/** One section of the page: a group of fields with a name of its own. */
interface Part {
  readonly title: string;
  readonly meaning: string;
  readonly fields: readonly Field[];
  /** 2 for a section, 3 for one kind of a thing. */
  readonly level: 2 | 3;
}

interface Field {
  readonly name: string;
  readonly node: SchemaNode;
  readonly isNeeded: boolean;
}

/** The page that explains the scenario format: a hand-written head, a section for each part, what is filled in by kind. */
export function scenarioFormatText(): string {
  const head = readFileSync(new URL("parts/scenario-format.md", import.meta.url), "utf8");
  const parts = partsOf(scenarioInputSchema());
  const examples = examplesFrom(scenarioInputSchema());
  return [head.trimEnd(), contents(parts), ...parts.map((part) => section(part, examples)), filledInByKind(), ""].join(
    "\n\n",
  );
}

/** Every part once, in the order in which a document first meets it. */
function partsOf(root: SchemaNode): Part[] {
  const parts: Part[] = [];
  const add = (title: string, node: SchemaNode, fields: Field[], level: Part["level"]) => {
    parts.push({ title, meaning: meaningOf(node), fields, level });
    return fields;
  };
  const visit = (node: SchemaNode): void => {
    if (parts.some((known) => known.title === node.title)) return;
    const kinds = kindsOf(node);
    if (kinds !== null) {
      const shared = sharedFields(kinds);
      const isShared = (field: Field) => shared.includes(field.name);
      const inAll = add(node.title!, node, fieldsOf(kinds[0]!).filter(isShared), 2);
      const inOne = kinds.flatMap((kind) =>
        add(
          kind.title!,
          kind,
          fieldsOf(kind).filter((field) => !isShared(field)),
          3,
        ),
      );
      for (const field of [...inAll, ...inOne]) visit(field.node);
    } else if (node.properties !== undefined) {
      for (const field of add(node.title!, node, fieldsOf(node), 2)) visit(field.node);
    } else if (node.items !== undefined) visit(node.items);
  };
  visit(root);
  return parts;
}

function kindsOf(node: SchemaNode): SchemaNode[] | null {
  return node.oneOf?.every((option) => option.properties?.kind !== undefined) === true ? node.oneOf : null;
}

function fieldsOf(node: SchemaNode): Field[] {
  const needed = node.required ?? [];
  return Object.entries(node.properties ?? {}).map(([name, field]) => ({
    name,
    node: field,
    isNeeded: needed.includes(name),
  }));
}

/** Names of the fields that every kind has and that mean the same in each. */
function sharedFields(kinds: readonly SchemaNode[]): string[] {
  const same = (name: string) => new Set(kinds.map((kind) => JSON.stringify(kind.properties?.[name]))).size === 1;
  return Object.keys(kinds[0]!.properties ?? {}).filter(same);
}

/** What a part is; a default that a field adds in front belongs to the field. */
function meaningOf(node: SchemaNode): string {
  return node.part ?? node.description ?? "";
}

function contents(parts: readonly Part[]): string {
  const links = parts.filter((part) => part.level === 2).map((part) => link(part.title));
  return `Parts: ${links.join(" · ")} · [What is filled in by kind](#what-is-filled-in-by-kind)`;
}

function link(title: string): string {
  const anchor = title
    .toLowerCase()
    .replace(/[^a-z0-9 -]/g, "")
    .replaceAll(" ", "-");
  return `[${title}](#${anchor})`;
}

function section(part: Part, examples: ReadonlyMap<string, string>): string {
  const heading = `${"#".repeat(part.level)} ${part.title}\n\n${part.meaning}`;
  if (part.fields.length === 0) return heading;
  return `${heading}\n\n${mdTable(
    ["field", "meaning", "unit", "allowed", "usual", "left out", "example"],
    part.fields.map(({ name, node, isNeeded }) => [
      `\`${name}\``,
      fieldMeaning(node),
      numberOf(node)?.quantity?.unit ?? "",
      allowed(node),
      usual(node),
      isNeeded ? "needed" : leftOut(node),
      examples.get(`${part.title}.${name}`) ?? fallbackExample(node),
    ]),
  )}`;
}

function leftOut(node: SchemaNode): string {
  if (node.default === undefined) return "–";
  const text = JSON.stringify(node.default);
  return `\`${text.length > 40 ? `${text.slice(0, 26)}…` : text}\``;
}

/** The number among what a field may hold, if there is one. */
function numberOf(node: SchemaNode): SchemaNode | undefined {
  if (node.quantity !== undefined) return node;
  return [...(node.anyOf ?? []), ...(node.items ? [node.items] : [])].find((option) => option.quantity !== undefined);
}

function fieldMeaning(node: SchemaNode): string {
  const said = node.quantity?.what ?? node.description ?? node.part ?? "";
  // What is allowed has a column of its own.
  return said.replace(/, (from -?[\d.]+ to [^;]*|at most \d+)$/, "").replace(/, from -?[\d.]+ to [^;]*;/, ";");
}

function allowed(node: SchemaNode): string {
  const part = partTitle(node);
  if (part !== null) return node.type === "array" ? `list of ${link(part)}${howMany(node)}` : link(part);
  if (node.type === "array") return `list of ${allowed(node.items!)}${howMany(node)}`;
  if (node.enum !== undefined) return node.enum.map((value) => `\`${value}\``).join(", ");
  if (node.const !== undefined) return `\`${JSON.stringify(node.const)}\``;
  if (node.anyOf !== undefined) return node.anyOf.map(allowed).join(" or ");
  if (node.quantity !== undefined)
    return `${node.type === "integer" ? "whole, " : ""}${node.quantity.low} to ${node.quantity.high}`;
  if (node.type === "null") return "`null`";
  if (node.type === "boolean") return "`true`, `false`";
  if (node.type === "string") return textForm(node);
  return "anything";
}

function partTitle(node: SchemaNode): string | null {
  if (node.title !== undefined) return node.title;
  return node.items === undefined ? null : (node.items.title ?? null);
}

function howMany({ minItems, maxItems }: SchemaNode): string {
  if (minItems !== undefined && minItems === maxItems) return `, ${minItems} of them`;
  const least = minItems === undefined || minItems < 1 ? "" : `, at least ${minItems}`;
  return maxItems === undefined ? least : `${least}, at most ${maxItems}`;
}

function textForm(node: SchemaNode): string {
  if (node.pattern?.includes("24:00") === true) return '"HH:MM", "00:00" to "24:00"';
  if (node.pattern?.includes("T") === true) return '"YYYY-MM-DDTHH:MM"';
  if (node.pattern !== undefined) return "letters, digits and dashes, up to 40";
  return node.maxLength === undefined ? "text" : `text, up to ${node.maxLength} characters`;
}

function usual(node: SchemaNode): string {
  const facts = numberOf(node)?.quantity;
  if (facts === undefined) return "";
  const range = facts.typical === undefined ? [] : [`${facts.typical[0]} to ${facts.typical[1]}`];
  return [...range, ...(facts.why === undefined ? [] : [facts.why])].join(": ");
}

/** Where no scenario of ours writes a field: something that may stand there. */
function fallbackExample(node: SchemaNode): string {
  const facts = numberOf(node)?.quantity;
  const value =
    node.const ??
    node.enum?.[0] ??
    (typeof node.default === "object" ? undefined : node.default) ??
    facts?.typical?.[0];
  return value === undefined ? "" : `\`${JSON.stringify(value)}\``;
}

/** The first value that the example scenarios write in each field, by part and field. */
function examplesFrom(root: SchemaNode): Map<string, string> {
  const examples = new Map<string, string>();
  const folder = new URL("../scenarios/", import.meta.url);
  const visit = (node: SchemaNode, value: unknown): void => {
    if (Array.isArray(value)) {
      for (const item of value) visit(node.items ?? {}, item);
      return;
    }
    if (typeof value !== "object" || value === null) return;
    const kinds = kindsOf(node);
    const { kind } = value as { kind?: unknown };
    const part = kinds?.find((option) => option.properties!.kind!.const === kind) ?? node;
    for (const [name, inner] of Object.entries(value)) {
      const field = part.properties?.[name];
      if (field === undefined) continue;
      for (const title of new Set([part.title, node.title])) {
        const key = `${title}.${name}`;
        if (!examples.has(key) && isShort(inner)) examples.set(key, `\`${written(inner)}\``);
      }
      visit(field, inner);
    }
  };
  for (const name of readdirSync(folder).sort()) {
    if (name.endsWith(".json")) visit(root, JSON.parse(readFileSync(new URL(name, folder), "utf8")));
  }
  return examples;
}

function isShort(value: unknown): boolean {
  return typeof value !== "object" || JSON.stringify(value).length <= 48;
}

function written(value: unknown): string {
  const text = JSON.stringify(value);
  return text.length > 60 ? `${text.slice(0, 56)}…"` : text;
}
