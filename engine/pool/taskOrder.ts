import type { DriversEnd } from "../drivers/driversEnds.ts";
import type { DriversRows } from "../drivers/driversRows.ts";
import type { DriversWhatIfs } from "../drivers/driversWhatIfs.ts";
import type { OddsPart } from "../odds/oddsPart.ts";
import type { PackedOdds } from "../odds/packedOdds.ts";
import type { Surroundings } from "../run/surroundings.ts";
import type { Problem } from "../scenario/problem.ts";
import type { Scenario } from "../scenario/scenario.ts";
import type { SizeWish } from "../size/sizeAxis.ts";
import type { SizePart } from "../size/sizeMembers.ts";
import type { PairedCharge } from "../versus/pairedCharge.ts";

/** Members, or rows of a sample, `from` to `to` (not included): one worker's share of the work. Plain data, so that it can be sent. */
interface Stretch {
  readonly surroundings: Surroundings;
  /** Any text: the same seed gives the same members. */
  readonly seed: string;
  readonly from: number;
  readonly to: number;
}

/** Members of a scenario's ensemble. */
export interface OddsTask extends Stretch {
  readonly scenario: Scenario;
}

/** Members of two scenarios, one against the other. */
export interface PairsTask extends Stretch {
  readonly scenario: Scenario;
  readonly other: Scenario;
}

/** Members of a map. */
export interface SizesTask extends Stretch {
  /** A scenario as written. */
  readonly document: unknown;
  readonly x: SizeWish;
  /** Null for a map over one number. */
  readonly y: SizeWish | null;
}

/** Rows of a sample of drivers; the what-ifs come after all rows, for these say where the ends lie. */
export interface DriversRowsTask extends Stretch {
  readonly scenario: Scenario;
  /** Rows of the whole sample. */
  readonly of: number;
}

export interface DriversWhatIfsTask extends DriversRowsTask {
  readonly ends: readonly DriversEnd[];
}

/** What each kind of task asks for, what a worker sends back, and what becomes of that when it is put together. */
export interface Tasks {
  readonly odds: { readonly task: OddsTask; readonly part: PackedOdds; readonly whole: OddsPart };
  readonly pairs: { readonly task: PairsTask; readonly part: PairedCharge; readonly whole: PairedCharge };
  readonly sizes: { readonly task: SizesTask; readonly part: SizePart; readonly whole: SizePart };
  readonly driversRows: { readonly task: DriversRowsTask; readonly part: DriversRows; readonly whole: DriversRows };
  readonly driversWhatIfs: {
    readonly task: DriversWhatIfsTask;
    readonly part: DriversWhatIfs;
    readonly whole: DriversWhatIfs;
  };
}
export type TaskKind = keyof Tasks;
export type Task = { [Kind in TaskKind]: { readonly kind: Kind } & Tasks[Kind]["task"] }[TaskKind];
export type TaskPart = Tasks[TaskKind]["part"];

/** How a task ended. A fault is ours: it names the member, so that it can be met again. */
export type TaskEnd =
  | { readonly kind: "part"; readonly part: TaskPart }
  | { readonly kind: "problems"; readonly problems: readonly Problem[] }
  | { readonly kind: "cancelled" }
  | { readonly kind: "fault"; readonly sentence: string };

/** What a worker is told, by numbers that the pool gives. */
export type TaskOrder =
  | { readonly kind: "run"; readonly number: number; readonly task: Task }
  | { readonly kind: "cancel"; readonly number: number };

/** What a worker says. */
export type TaskReply =
  | { readonly kind: "progress"; readonly number: number; readonly done: number }
  | { readonly kind: "end"; readonly number: number; readonly end: TaskEnd };
