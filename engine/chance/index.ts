/**
 * chance: the only place where it enters. A seed ─► seedWords ─► openStream (one for each member and purpose) ─► nextUnit,
 * nextNormal. Reads nothing; read by all. The same seed gives the same bits in every JavaScript engine.
 */
export { normalQuantile } from "./normalQuantile.ts";
export { nextNormal, nextUnit, nextWord, openStream, STREAM_WORDS, seedWords, wordsFor } from "./stream.ts";
