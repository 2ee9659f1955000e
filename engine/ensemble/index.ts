/**
 * ensemble: many members of one scenario: a sky, operators and figures for each (prepareEnsemble), stepped four side by side (stepMembers).
 * Reads run; read by odds and all that asks about many skies.
 */
export { keennessAt, keennessTable } from "./keenness.ts";
export { makeKeptMembers } from "./keptMembers.ts";
export { makeMemberRoom } from "./makeMemberRoom.ts";
export { drawOperators, prepareOperators, writeWanted } from "./operators.ts";
export { knownDays, type PreparedEnsemble, prepareEnsemble } from "./prepareEnsemble.ts";
export { lanesFor, type MemberRoom, type StepMembers, stepMember, stepMembers } from "./stepMember.ts";
