/**
 * versus: scenarios under the same skies and operators, member by member.
 */
export { type PairedCharge, pairedCharge } from "./pairedCharge.ts";
export {
  type Burden,
  burdenOf,
  type Comparison,
  type Contender,
  type PairedDifference,
  type VersusReport,
  versus,
} from "./versus.ts";
