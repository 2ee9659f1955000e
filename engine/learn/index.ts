/**
 * learn: what was read off the station changes what is still to come. Readings (a document) ─► readReadings ─► observationsOf
 * (figures with errors) ─► filter (members as particles: run, weigh, thin, fill up again with new futures) ─► runParticles ─►
 * learnReport (before and after, hours left, lessons, what is wrong) and whatStillHelps (changes from now on, paired). Reads every
 * folder to its left; read by none.
 */
export type { ChangeToTry } from "./changesToTry.ts";
export { LEARN_FEWEST_MEMBERS, LEARN_MOST_MEMBERS, type Learned, learn } from "./learn.ts";
export { LearnCancelled, type LearnHooks } from "./learnHooks.ts";
export { type LearnReport, learnReport } from "./learnReport.ts";
export type { Interval, Lesson } from "./lessons.ts";
export { Reading, Readings } from "./reading.ts";
export { readingWords } from "./readingWords.ts";
export { type PlacedReading, type ReadingsResult, readReadings } from "./readReadings.ts";
export { type RestingCharge, restingCharge } from "./restingCharge.ts";
export type { TraitName } from "./traitFigures.ts";
export { type StillHelps, whatStillHelps } from "./whatStillHelps.ts";
export type { WrongPlan } from "./wrongPlan.ts";
