/**
 * learn: what was read off the station changes what is still to come. Readings (a document) ─► readReadings ─► observationsOf
 * (figures with errors) ─► filter (members as particles: run, weigh, thin, fill up again with new futures) ─► runParticles ─►
 * learnReport (before and after, hours left, lessons, what is wrong) and whatStillHelps (changes from now on, paired). Reads every
 * folder to its left; read by none.
 */
export { doubtsAbout } from "./doubts.ts";
export { LEARN_FEWEST_MEMBERS, LEARN_MOST_MEMBERS, type Learned, learn } from "./learn.ts";
export { LearnCancelled, type LearnHooks } from "./learnHooks.ts";
export { type LearnReport, learnReport } from "./learnReport.ts";
export { observationsOf } from "./observations.ts";
export { ReadingFields } from "./reading.ts";
export { readingSchema } from "./readingSchema.ts";
export { readingWords } from "./readingWords.ts";
export { type PlacedReading, readReadings } from "./readReadings.ts";
export { restingCharge } from "./restingCharge.ts";
export { type StillHelps, whatStillHelps } from "./whatStillHelps.ts";
