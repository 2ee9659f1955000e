/**
 * versus: scenarios under the same skies and operators, member by member.
 */
export { type Burden, type BurdenMore, burdenMore, burdenOf, statedSum } from "./burden.ts";
export { type PairedCharge, pairedCharge } from "./pairedCharge.ts";
export { pairsTask } from "./pairsTask.ts";
export { MINUTES_A_TURN, turnsIn } from "./turns.ts";
export {
  type Contender,
  comparisonSentence,
  type Flips,
  type PairedDifference,
  type VersusReport,
  versus,
} from "./versus.ts";
