import { besideWords, partWords, priceFigure, wayWords } from "../../../engine/answers/reach/reachWords.ts";
import type { Price } from "../../../engine/reach/lever.ts";
import type { ReachReport } from "../../../engine/reach/reachReport.ts";
import type { Change } from "../../../engine/scenario/change.ts";
import { differenceInUnits } from "../../../engine/words/displayUnits.ts";
import { figure } from "../../../engine/words/numbers.ts";
import { inHundred, oddsRange } from "../../../engine/words/oddsWords.ts";

/** A row that can be read out and made a scenario. */
export interface ReachChosen {
  readonly key: string;
  /** What it is called, and what becomes part of a scenario's name. */
  readonly words: string;
  readonly short: string;
  readonly changes: readonly Change[];
  readonly price: Price;
  readonly holds: ReachReport["base"];
  readonly more: string;
}

/** Every row of an answer. */
export function reachChoosable({ alone, pairs, threes, spare }: ReachReport): ReachChosen[] {
  const row = (prefix: string, beside: string) => (each: ReachReport["alone"][number]) => {
    const { id, changes, price, holds, next, why, reaches } = each;
    const words = partWords(each);
    const other = reaches && next.words !== null ? ` ${beside}, ${next.words}: ${besideWords(each)}.` : "";
    const reason = prefix === "alone" ? ` ${why.charAt(0).toUpperCase()}${why.slice(1)}.` : "";
    return { key: `${prefix} ${id}`, words, short: shortened(words), changes, price, holds, more: `${other}${reason}` };
  };
  const way = (prefix: string) => (each: ReachReport["pairs"][number], k: number) => {
    const words = wayWords(each);
    const { changes, price, holds } = each;
    return { key: `${prefix} ${k}`, words, short: shortened(words), changes, price, holds, more: "" };
  };
  return [
    ...alone.map(row("alone", "The next smaller")),
    ...pairs.map(way("pair")),
    ...threes.map(way("three")),
    ...spare.map(row("spare", "One further")),
  ];
}

/** Names of scenarios are at most so long; the plan's own comes before this. */
const MOST_LETTERS = 60;
const shortened = (words: string) => {
  const text = words.replace(/, was [^+]*?(?= \+|$)/g, "");
  return text.length <= MOST_LETTERS ? text : `${text.slice(0, MOST_LETTERS - 1).trimEnd()}…`;
};

/** A row read out: how often it holds, with what the sample leaves open, what it takes, and why. */
export function readChosen({ words, holds, price, more }: ReachChosen, { base }: ReachReport): string {
  return `${words}: holds in ${inHundred(holds)} of 100 skies (${oddsRange(holds)}), ${inHundred(base)} without it.${more} ${priceWords(price)}`;
}

function priceWords(price: Price): string {
  const [cost, massKg, minutes] = (["money", "mass", "minutes"] as const).map((order) => priceFigure(price, order));
  const stated = [
    cost == null ? null : `${figure(cost)} in money`,
    massKg == null ? null : differenceInUnits(massKg, "kg", 1),
    minutes == null ? null : `${figure(minutes)} min`,
  ];
  const missing = [cost == null ? "money" : "", massKg == null ? "weight" : "", minutes == null ? "minutes" : ""];
  const not = missing.filter((name) => name !== "");
  const air =
    price.onAirH === 0
      ? ""
      : ` ${figure(Math.abs(price.onAirH), 1)} h ${price.onAirH < 0 ? "less" : "more"} on the air.`;
  const takes = stated.filter((part) => part !== null);
  return `${takes.length > 0 ? `Takes ${takes.join(", ")}` : "What it takes"}${not.length === 0 ? "" : `${takes.length > 0 ? "; " : " in "}${not.join(", ")} ${not.length === 1 ? "is" : "are"} not stated`}.${air}`;
}
