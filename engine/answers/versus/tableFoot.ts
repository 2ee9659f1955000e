import { MINUTES_A_TURN } from "../../versus/turns.ts";
import { THIN } from "../../words/numbers.ts";

/** How a decision table is to be read. */
export const TABLE_FOOT = `Heavy: the best of a row, of what is stated. Work: setting up, and ${MINUTES_A_TURN}${THIN}min for each re-aiming (our default). Small: what the size of the sample leaves open.`;
