/**
 * library: one call for each question, for whoever builds on the engine: scenario and surroundings go in, a report or problems come out.
 * Reads every folder that works something out; read by the public face alone.
 */
export { type ActualReport, actual } from "./actual.ts";
export type { Answer } from "./answer.ts";
export { type AskOptions, USUAL_DAYS, USUAL_MEMBERS, USUAL_SEED, USUAL_TARGET_SHARE } from "./askOptions.ts";
export { drivers } from "./drivers.ts";
export { type LearnedReport, learn } from "./learn.ts";
export { limits } from "./limits.ts";
export { odds } from "./odds.ts";
export { type SizeOptions, size } from "./size.ts";
export { trace } from "./trace.ts";
export { versus } from "./versus.ts";
