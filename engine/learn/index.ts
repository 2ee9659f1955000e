/**
 * learn: what was read off the station changes what is still to come. Readings (a document) ─► readReadings ─► observationsOf
 * (figures with errors) ─► filter (members as particles: run, weigh, thin, fill up again with new futures) ─► runParticles.
 * Reads every folder to its left; read by none.
 */
export { effectiveMembers, particleWeights, systematicResample } from "./particleWeights.ts";
export { Reading, Readings } from "./reading.ts";
export { type PlacedReading, type ReadingsResult, readReadings } from "./readReadings.ts";
