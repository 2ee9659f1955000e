/**
 * ensemble: many members of one scenario: a sky, operators and figures for each (prepareEnsemble), stepped four side by side (stepMembers).
 * Reads run; read by odds and all that asks about many skies.
 */
export { makeMemberRoom } from "./makeMemberRoom.ts";
export { type PreparedEnsemble, prepareEnsemble } from "./prepareEnsemble.ts";
