/** What a notebook holds at most: met at the edit, in words (`whyNotKept`), so that whatever is kept can be read again. */

export const MOST_SCENARIOS = 40;
export const MOST_ENTRIES = 200;
export const MOST_WEATHER_FILES = 2;
export const MOST_CHANGES = 500;
export const MOST_READINGS = 500;
export const LONGEST_NOTE = 50_000;
export const LONGEST_NAME = 120;
/** Rows of a kept log: a month at a quarter of an hour. */
export const MOST_LOG_ROWS = 3000;
/** Characters of a notebook as a file. */
export const LONGEST_TEXT = 2_000_000;
/** Characters that are still read, for older notebooks met no limit; what is longer is something else by mistake, or meant to do harm. */
export const LONGEST_READ = 2 * LONGEST_TEXT;
/** Bytes of a notebook's text, where every character takes as many as it can. */
export const MOST_BYTES = 3 * LONGEST_TEXT;
/** Levels that lists and objects lie within one another. */
export const DEEPEST = 40;
/** Numbers, texts, lists and objects altogether. */
export const MOST_VALUES = 200_000;
