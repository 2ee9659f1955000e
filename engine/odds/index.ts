/**
 * odds: what members came to, counted into parts that merge exactly: bands and probabilities with their sampling error.
 */
export { type Bands, type OddsReport, oddsReport, replayMember, runMembers, type Spread } from "./odds.ts";
export { mergeOdds, type OddsPart } from "./oddsPart.ts";
export { oddsPartJson, readOddsPart } from "./oddsPartJson.ts";
export { type Odds, wilson } from "./wilson.ts";
