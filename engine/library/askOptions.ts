import type { CancelSignal, TaskPool } from "../task/taskRun.ts";

/** Seed of an ensemble for which none is given. */
export const USUAL_SEED = "duskline";
/** Members of an ensemble, of a map and of a sample of drivers, for which no number is given: one scenario then has one number everywhere. */
export const USUAL_MEMBERS = 1000;
/** Share of the skies in which the bank is to hold, and days without sun for the handbook's answer, where nobody says. */
export const USUAL_TARGET_SHARE = 0.95;
export const USUAL_DAYS = 2;

/** What may be chosen about a question that many members answer. */
export interface AskOptions {
  /** How many members, from number 0 on, 1…1,000,000; each question has its usual number, and some have narrower limits. */
  readonly members?: number;
  /** Any text: the same seed gives the same members, to the last bit, on every machine; "duskline" when left out. */
  readonly seed?: string;
  /** Workers that share the members, such as `makeNodePool` of `duskline/node` gives; left out, this thread does all of it. */
  readonly pool?: TaskPool;
  /** An AbortSignal. Without a pool it is looked at before the work and whenever `onProgress` comes back, since nobody else has a turn. */
  readonly signal?: CancelSignal;
  /** Called now and then with how much is done and how much there is. */
  readonly onProgress?: (done: number, of: number) => void;
}
