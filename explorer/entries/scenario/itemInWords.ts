import { inUnits } from "../../words/displayUnits.ts";
import { THIN } from "../../words/numbers.ts";
import { choiceLabel } from "./fieldWords.ts";
import { drawInWords, plainFigure, shownValue } from "./shownValue.ts";

type Item = Record<string, unknown>;
const part = (value: unknown) => (typeof value === "object" && value !== null ? value : {}) as Item;
const number = (value: unknown) => (typeof value === "number" ? plainFigure(value) : String(value));
const metres = (value: number) => inUnits(value, "m", 2);
const share = (value: unknown) => (typeof value === "number" ? `${plainFigure(value * 100)}${THIN}%` : String(value));

function useInWords(use: Item): string {
  if (use.when === "byTheClock") return shownValue(use.windows, undefined);
  const when = choiceLabel(use.when);
  return typeof use.share === "number" && use.share < 1 ? `${when}, on ${share(use.share)} of it` : when;
}

const SAYS: Readonly<Record<string, (item: Item) => string>> = {
  gear: (item) =>
    `${Number(item.count ?? 1) === 1 ? "" : `${number(item.count)} × `}${drawInWords(part(item.working))}, ${useInWords(part(item.use))}`,
  companions: (item) =>
    `${Number(item.count ?? 1) === 1 ? "" : `${number(item.count)} × `}${drawInWords(part(item.working))}, ${choiceLabel(item.works ?? "staffed")}`,
  stations: (item) =>
    `${number(item.transmitW)}${THIN}W, sending ${share(item.sendingShare)}, ${Array.isArray(item.staffed) && item.staffed.length === 0 ? "never staffed" : shownValue(item.staffed, undefined)}`,
  panels: (item) =>
    `${number(item.count)} × ${number(part(item.module).ratedW)}${THIN}W, ${choiceLabel(part(item.mount).kind)}`,
  obstacles: (item) => {
    if (item.kind === "horizon") return `${(item.points as unknown[] | undefined)?.length ?? 0} points`;
    const way = `${metres(Math.abs(Number(item.eastM)))} ${Number(item.eastM) < 0 ? "west" : "east"}, ${metres(Math.abs(Number(item.northM)))} ${Number(item.northM) < 0 ? "south" : "north"}`;
    return `${metres(Number(item.heightM))} high, ${way}`;
  },
  sources: (item) => {
    const amps = `${number(item.chargerA ?? item.outputA)}${THIN}A`;
    return `${choiceLabel(item.kind)}, ${amps}, ${shownValue(item.available ?? item.allowed ?? item.running, undefined)}`;
  },
  variants: (item) => `${(item.changes as unknown[] | undefined)?.length ?? 0} changes`,
};

/** An entry of a list in a line: what it is called and what it comes to. */
export function itemInWords(key: string, item: Item): { name: string; says: string } {
  const name =
    typeof item.name === "string" && item.name !== "" ? item.name : choiceLabel(item.kind ?? item.id ?? "unnamed");
  const says = SAYS[key]?.(item) ?? "";
  return {
    name: name.charAt(0).toUpperCase() + name.slice(1),
    says: key === "variants" ? says.replace(/^1 changes$/, "1 change") : says,
  };
}
