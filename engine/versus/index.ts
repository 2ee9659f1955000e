/**
 * versus: scenarios under the same skies and operators, member by member.
 */
export { type PairedCharge, pairedCharge } from "./pairedCharge.ts";
export { pairsTask } from "./pairsTask.ts";
export {
  type Burden,
  burdenOf,
  type Contender,
  comparisonSentence,
  type Flips,
  type PairedDifference,
  type VersusReport,
  versus,
} from "./versus.ts";
