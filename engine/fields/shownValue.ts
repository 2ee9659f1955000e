import { displayUnit, fromDisplay, inUnits, toDisplay } from "../words/displayUnits.ts";
import { figure, THIN } from "../words/numbers.ts";
import { choiceLabel } from "./fieldWords.ts";
import { inside, isShare, numberPart, resolved, type SchemaNode } from "./formSchema.ts";
import { sentence, type Token } from "./sentence.ts";

/** A number with as many places as it has, up to six significant. */
export function plainFigure(value: number): string {
  const short = Number(value.toPrecision(6));
  const decimals = /\.(\d+)/.exec(short.toString())?.[1]?.length ?? 0;
  return Math.abs(short) < 1e-4 && short !== 0 ? String(short) : figure(short, decimals);
}

const ownUnit = (node: SchemaNode) => numberPart(node).quantity?.unit ?? "";

/** The unit that stands behind a field: per cent for shares, else the document's or what people chose in its stead. */
export function shownUnit(node: SchemaNode): string {
  return isShare(node) ? "%" : displayUnit(ownUnit(node));
}

/** A stored number as the page shows it, shares as per cent. */
export function toShown(value: number, node: SchemaNode): number {
  return isShare(node) ? Number((value * 100).toPrecision(12)) : toDisplay(value, ownUnit(node));
}

/** A number from the page as the document stores it. */
export function toStored(value: number, node: SchemaNode): number {
  return isShare(node) ? Number((value / 100).toPrecision(12)) : fromDisplay(value, ownUnit(node));
}

interface Clocked {
  from: string;
  to: string;
  days?: string[];
}

const hasKeys = (value: unknown, ...keys: string[]): value is Record<string, unknown> =>
  typeof value === "object" && value !== null && keys.every((key) => key in value);

function windowInWords({ from, to, days }: Clocked): string {
  return `${from}\u2013${to}${days === undefined ? "" : ` ${days.map((day) => choiceLabel(day)).join(", ")}`}`;
}

const spaced = (number: string, unit: string) =>
  unit === "" ? number : unit === "°" ? `${number}°` : `${number}${THIN}${unit}`;

/** A draw in short: "12 W", "1.2 A at 13.8 V". */
export function drawInWords(draw: {
  drawW?: number | undefined;
  drawA?: number | undefined;
  atV?: number | undefined;
}): string {
  if (typeof draw.drawW === "number") return `${plainFigure(draw.drawW)}${THIN}W`;
  if (typeof draw.drawA !== "number") return "nothing";
  const at = typeof draw.atV === "number" ? ` at ${plainFigure(draw.atV)}${THIN}V` : "";
  return `${plainFigure(draw.drawA)}${THIN}A${at}`;
}

/** Any value of the document in a few words, for the column of what was and for what changed. */
export function shownValue(value: unknown, node: SchemaNode | undefined): string {
  if (value === undefined) return "as usual";
  if (value === null) return "none";
  if (typeof value === "boolean") return value ? "yes" : "no";
  if (typeof value === "number") {
    if (node === undefined) return plainFigure(value);
    return spaced(plainFigure(toShown(value, node)), shownUnit(node));
  }
  if (typeof value === "string") {
    const isChoice = node?.enum !== undefined || node?.anyOf !== undefined || node?.const !== undefined;
    if (isChoice) return choiceLabel(value, node);
    const moment = /^(\d{4}-\d{2}-\d{2})(?:T(\d{2}:\d{2}))?$/.exec(value);
    return moment === null
      ? value
      : [dayInWords(moment[1]!), ...(moment[2] === undefined ? [] : [moment[2]])].join(" ");
  }
  if (Array.isArray(value)) return listInWords(value, node);
  const said = partInWords(value, node);
  if (said !== null) return said;
  if (hasKeys(value, "drawW") || hasKeys(value, "drawA")) return drawInWords(value);
  if (hasKeys(value, "name")) return String(value.name);
  if (hasKeys(value, "kind")) {
    return choiceLabel(value.kind, node === undefined ? undefined : resolved(node, value).properties?.kind);
  }
  if (hasKeys(value, "maxC", "minC"))
    return `${plainFigure(toDisplay(Number(value.minC), "°C"))} to ${plainFigure(toDisplay(Number(value.maxC), "°C"))}${THIN}${displayUnit("°C")}`;
  return "something else";
}

/** A part in the words that its schema has for it; null where it has none. */
function partInWords(part: unknown, node: SchemaNode | undefined): string | null {
  const here = node === undefined ? undefined : resolved(node, part);
  return here?.says === undefined ? null : sentence(here.says, (field) => fieldToken(field, part, here));
}

/** Whether a field counts beside the others of its part. */
export function counts({ onlyWith = {} }: SchemaNode, part: unknown): boolean {
  return Object.entries(onlyWith).every(([key, word]) => (part as Record<string, unknown> | undefined)?.[key] === word);
}

/**
 * A field of a part, as written or as it is when left out.
 * @param name with dots to go deeper
 * @returns null where it is not there or an empty list
 */
export function fieldToken(name: string, part: unknown, node: SchemaNode | undefined): Token | null {
  let value = part;
  let at = node;
  for (const key of name.split(".")) {
    at = at === undefined ? undefined : inside(at, value, key);
    value = (value as Record<string, unknown> | null | undefined)?.[key] ?? at?.default;
  }
  if (value === undefined || (Array.isArray(value) && value.length === 0)) return null;
  if (at !== undefined && !counts(at, part)) return null;
  const isUsual = at?.default !== undefined && JSON.stringify(value) === JSON.stringify(at.default);
  const ways = typeof at?.change === "object" ? at.change.ways : undefined;
  if (ways === undefined || typeof value !== "number") return { words: shownValue(value, at), value, isUsual };
  return { words: `${inUnits(Math.abs(value), "m", 2)} ${value < 0 ? ways[1] : ways[0]}`, value, isUsual };
}

/** "2026-10-09" as "Fri 9 Oct". */
export function dayInWords(date: string): string {
  const ms = Date.parse(`${date}T00:00Z`);
  if (Number.isNaN(ms)) return date;
  const parts = new Intl.DateTimeFormat("en-GB", { weekday: "short", day: "numeric", month: "short", timeZone: "UTC" });
  return parts.format(ms).replace(",", "");
}

function listInWords(list: readonly unknown[], node: SchemaNode | undefined): string {
  if (list.length === 0) return node?.empty ?? "none";
  if (list.every((item) => hasKeys(item, "from", "to")))
    return list.map((item) => windowInWords(item as unknown as Clocked)).join(", ");
  if (list.every((item) => hasKeys(item, "mode"))) {
    return list
      .map((item) => item as { mode: string; share: number })
      .map(({ mode, share }) =>
        list.length === 1 ? choiceLabel(mode) : `${choiceLabel(mode)} ${plainFigure(share * 100)}${THIN}%`,
      )
      .join(", ");
  }
  const said = list.map((item) => (hasKeys(item, "id") ? null : partInWords(item, node?.items)));
  if (said.every((words) => words !== null)) return said.join(", ");
  if (list.every((item) => typeof item === "string")) {
    const words = list.map((item) => (node?.items?.enum === undefined ? String(item) : choiceLabel(item, node.items)));
    return new Set(words).size === 1 && words.length > 2 ? `${words[0]} all ${words.length}` : words.join(", ");
  }
  if (list.every((item) => typeof item === "number") && list.length <= 3)
    return list.map((item) => plainFigure(item as number)).join(", ");
  return `${list.length} ${list.length === 1 ? "entry" : "entries"}`;
}
