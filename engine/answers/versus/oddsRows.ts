import type { Odds } from "../../odds/wilson.ts";
import { inHundred } from "../../words/oddsWords.ts";
import type { VersusPicture } from "./versusPicture.ts";

export const ODDS_LEFT_PX = 92;
export const ODDS_HEIGHT_PX = 158;
const RIGHT_PX = 16;

/** Both sides' odds of one thing, and the height at which they are drawn. */
export interface OddsRow {
  readonly name: string;
  readonly y: number;
  readonly second: Odds;
  readonly first: Odds;
}

export function oddsRows({ first, second }: VersusPicture): OddsRow[] {
  return [
    { name: "Holds", y: 44, second: second.holds, first: first.holds },
    { name: "Goes dark", y: 116, second: second.dark, first: first.dark },
  ];
}

export function oddsRowWords(picture: VersusPicture, names: { first: string; second: string }): string {
  return oddsRows(picture)
    .map((row) => `${row.name}: ${names.second} ${inHundred(row.second)}, ${names.first} ${inHundred(row.first)}`)
    .join("; ");
}

export const oddsX = (share: number, widthPx: number) => ODDS_LEFT_PX + share * (widthPx - ODDS_LEFT_PX - RIGHT_PX);
export const oddsAnchor = (share: number) => (share > 0.8 ? "end" : share < 0.2 ? "start" : "middle");
