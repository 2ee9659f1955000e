/**
 * odds: what members came to, counted into parts that merge exactly: bands and probabilities with their sampling error.
 */
export { failsFromStep } from "./fails.ts";
export { type Bands, countingOf, type OddsReport, oddsReport, quantileOf, replayMember, type Spread } from "./odds.ts";
export { CHARGE_BINS, makeOddsPart, mergeOdds, type OddsPart } from "./oddsPart.ts";
export { oddsPartJson, readOddsPart } from "./oddsPartJson.ts";
export { oddsTask } from "./oddsTask.ts";
export { NOTHING_W, stepCount } from "./stepCount.ts";
export { inHundred, type Odds, sampleRange, wilson, Z95 } from "./wilson.ts";
