/** Height of the ruler. */
export const RULER_PX = 62;
/** Where the line of the hours runs in which no generator may: between days and hours. */
export const QUIET_Y_PX = 27.5;
/** Least px to the hour at which 06 and 18 have room beside 12, and at which every hour has its tick. */
export const THREE_MARKS_PX = 5;
export const TICKS_PX = 3;
