/** What page and workers may ask for in scripts before the first answer stands, kB after gzip. */
export const FIRST_ANSWER_KB = 244;
