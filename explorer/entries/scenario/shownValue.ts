import { displayUnit, fromDisplay, toDisplay } from "../../words/displayUnits.ts";
import { figure, THIN } from "../../words/numbers.ts";
import { choiceLabel } from "./fieldWords.ts";
import { isShare, numberPart, type SchemaNode } from "./formSchema.ts";

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
export function shownValue(value: unknown, node: SchemaNode | undefined, pattern = ""): string {
  if (value === undefined) return "as usual";
  if (value === null) return "none";
  if (typeof value === "boolean") return value ? "yes" : "no";
  if (typeof value === "number") {
    if (node === undefined) return plainFigure(value);
    return spaced(plainFigure(toShown(value, node)), shownUnit(node));
  }
  if (typeof value === "string") {
    const isChoice = node?.enum !== undefined || node?.anyOf !== undefined || node?.const !== undefined;
    if (isChoice) return choiceLabel(value, pattern);
    const moment = /^(\d{4}-\d{2}-\d{2})T(\d{2}:\d{2})$/.exec(value);
    return moment === null ? value : `${dayInWords(moment[1]!)} ${moment[2]}`;
  }
  if (Array.isArray(value)) return listInWords(value, node, pattern);
  if (hasKeys(value, "drawW") || hasKeys(value, "drawA")) return drawInWords(value);
  if (hasKeys(value, "name")) return String(value.name);
  if (hasKeys(value, "kind")) return choiceLabel(value.kind, pattern);
  if (hasKeys(value, "maxC", "minC"))
    return `${plainFigure(toDisplay(Number(value.minC), "°C"))} to ${plainFigure(toDisplay(Number(value.maxC), "°C"))}${THIN}${displayUnit("°C")}`;
  return "something else";
}

/** "2026-10-09" as "Fri 9 Oct". */
export function dayInWords(date: string): string {
  const ms = Date.parse(`${date}T00:00Z`);
  if (Number.isNaN(ms)) return date;
  const parts = new Intl.DateTimeFormat("en-GB", { weekday: "short", day: "numeric", month: "short", timeZone: "UTC" });
  return parts.format(ms).replace(",", "");
}

function listInWords(list: readonly unknown[], node: SchemaNode | undefined, pattern: string): string {
  if (list.length === 0) return "none";
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
  if (list.every((item) => hasKeys(item, "at")))
    return list.map((item) => String((item as { at: unknown }).at)).join(", ");
  if (list.every((item) => typeof item === "string")) {
    const words = list.map((item) => (node?.items?.enum === undefined ? String(item) : choiceLabel(item, pattern)));
    return new Set(words).size === 1 && words.length > 2 ? `${words[0]} all ${words.length}` : words.join(", ");
  }
  if (list.every((item) => typeof item === "number") && list.length <= 3)
    return list.map((item) => plainFigure(item as number)).join(", ");
  return `${list.length} ${list.length === 1 ? "entry" : "entries"}`;
}
