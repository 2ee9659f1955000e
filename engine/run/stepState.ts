/**
 * Where the step's own numbers are in `RunRows.state`: `STATE_SLOTS` for each lane. They are handed from one part of the step to the next in an
 * array, because a number that is given to or returned by a function that the engine does not inline is boxed: a small
 * object each time, where the loop promises none.
 */

/** Ampere-hours in the bank at the step's start, and its open-circuit volts. */
export const STORED_AH = 0;
export const OPEN_V = 1;
/** Volts that controllers see. */
export const AT_BANK_V = 2;
/** Solar power that the selector lets pass, and that it shuts out. */
export const SOLAR_W = 3;
export const SHUT_OUT_W = 4;
/** What the other sources offer, and what was taken of it. */
export const OFFERED_W = 5;
export const TAKEN_W = 6;
/** Current of the last step, charging positive; 1 while the disconnect is closed. */
export const LAST_A = 7;
export const CONNECTED = 8;

/** Volts at the bank's terminals over the step, for radios that are asked. */
export const TERMINAL_V = 9;

/** Hours of a step over the member's capacity share: charge is counted in planned ampere-hours, and a bank that holds less moves faster through them. */
export const COUNTED_H = 10;

/** Staffed hours so far in which a radio fell below its least volts on a peak, summed over the stations. */
export const DROPOUT_H = 11;

/** Resistance of the bank at this charge and in this cold, drawing and charging, Ω; for what is asked. */
export const INTERNAL_OHM = 12;
export const CHARGING_OHM = 13;
/** What charging adds to its volts besides, V. */
export const POLARISATION_V = 14;

export const STATE_SLOTS = 15;
