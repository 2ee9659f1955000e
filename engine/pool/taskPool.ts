import type { DriversReport } from "../drivers/driversReport.ts";
import { mergeDriversRows } from "../drivers/driversRows.ts";
import { mergeDriversWhatIfs } from "../drivers/driversWhatIfs.ts";
import type { PreparedEnsemble } from "../ensemble/prepareEnsemble.ts";
import { EngineFault } from "../fault.ts";
import type { OddsPart } from "../odds/oddsPart.ts";
import { mergePackedOdds } from "../odds/packedOdds.ts";
import type { Problem } from "../scenario/problem.ts";
import { mergeSizes, type SizePart } from "../size/sizeMembers.ts";
import { mergePairedCharge, type PairedCharge } from "../versus/pairedCharge.ts";
import type {
  OddsTask,
  PairsTask,
  SizesTask,
  Task,
  TaskEnd,
  TaskKind,
  TaskOrder,
  TaskReply,
  Tasks,
} from "./taskOrder.ts";

/** A line to one worker. */
export interface TaskLine {
  readonly post: (order: TaskOrder) => void;
  /** Whether the program should stay for this worker. */
  readonly keep: (isBusy: boolean) => void;
  readonly stop: () => void;
}

/**
 * Opens a line to a new worker.
 * @param reply called with each of its replies; @param broken called when the worker itself is lost, with the reason
 */
export type ConnectWorker = (reply: (reply: TaskReply) => void, broken: (reason: string) => void) => TaskLine;

/** The part of an AbortSignal that is needed here. */
export interface CancelSignal {
  readonly aborted: boolean;
  addEventListener(type: "abort", listener: () => void): void;
  removeEventListener(type: "abort", listener: () => void): void;
}

export interface TaskOptions {
  /** Called with members done and members in all, now and then. */
  readonly onProgress?: (done: number, of: number) => void;
  readonly signal?: CancelSignal;
  /** Members that are worth a worker of their own; what it costs to start one and to prepare in it is saved below that. */
  readonly fewest?: number;
  /** The worker that the first stretch is for, where it is free; 0 if left out. The next stretch is for the next worker. */
  readonly home?: number;
  /** Most members in one stretch; shorter ones than the workers' equal shares let whoever is free take the next. */
  readonly most?: number;
}

export interface OddsOptions extends TaskOptions {
  /** The part that the members follow, which is put before them: it grows in its own memory and is not to be used afterwards. */
  readonly before?: OddsPart | null;
  /** Where there is none: a part that nobody looks at any more, whose memory is taken for the counts. */
  readonly spare?: OddsPart | null;
}

/** Members in one part, or what is wrong with the scenario. */
export type TaskRun<Part> =
  | { readonly ok: true; readonly part: Part }
  | { readonly ok: false; readonly problems: readonly Problem[] };
export type OddsRun = TaskRun<OddsPart>;

/** The asker no longer wants to know. Named as platforms name it, so that it is told apart from a fault. */
export class TaskCancelled extends Error {
  override readonly name = "AbortError";
}

/**
 * Workers that stay alive from one ensemble to the next, and what waits for them. A part has the same bits however many workers there are.
 * Each of these throws RangeError where members are not whole numbers in order, TaskCancelled once `signal` is aborted, and EngineFault
 * naming seed and member if a member cannot be run.
 */
export interface TaskPool {
  /** Runs members `task.from` to `task.to` on all workers. */
  readonly runOdds: (task: OddsTask, options?: OddsOptions) => Promise<TaskRun<OddsPart>>;
  /** The same members of two scenarios, one against the other. */
  readonly runPairs: (task: PairsTask, options?: TaskOptions) => Promise<TaskRun<PairedCharge>>;
  /** The same for the cells of a map. */
  readonly runSizes: (task: SizesTask, options?: TaskOptions) => Promise<TaskRun<SizePart>>;
  /**
   * What `drivers` gives.
   * @param ensemble of the scenario that the workers will prepare for themselves; @param members rows of the sample
   */
  readonly runDrivers: (
    ensemble: PreparedEnsemble,
    members: number,
    options?: TaskOptions,
  ) => Promise<TaskRun<DriversReport>>;
  /** Ends all workers. */
  readonly close: () => void;
}

/** Starting a worker and preparing in it takes as long as some hundreds of members do. */
const FEWEST_FOR_A_WORKER = 250;
const FEWEST_OF_A_MAP = 20;
const MOST_MEMBERS = 1_000_000;

/** A task that waits, or is with a worker. */
interface Job {
  readonly number: number;
  /** Which of the workers has the most of it at hand, by its number: the one that ran these members last time. */
  readonly home: number;
  readonly task: Task;
  readonly progress: (done: number) => void;
  readonly end: (end: TaskEnd) => void;
}

interface Worker {
  readonly line: TaskLine;
  readonly number: number;
  job: Job | null;
}

const MERGES: { readonly [Kind in TaskKind]: (parts: readonly Tasks[Kind]["part"][]) => Tasks[Kind]["whole"] } = {
  odds: mergePackedOdds,
  pairs: mergePairedCharge,
  sizes: mergeSizes,
  driversRows: mergeDriversRows,
  driversWhatIfs: mergeDriversWhatIfs,
};

/** @param workers 1 or more; they are started when first needed */
export function makeTaskPool(workers: number, connect: ConnectWorker): TaskPool {
  const alive = new Set<Worker>();
  /** First come, first served, except for whoever is at home somewhere. */
  const queue: Job[] = [];
  let lastNumber = 0;

  function start(): Worker {
    const reply = (said: TaskReply) => {
      const { job } = worker;
      if (job === null || job.number !== said.number) return;
      if (said.kind === "progress") return job.progress(said.done);
      worker.job = null;
      job.end(said.end);
      handOut();
      if (worker.job === null) worker.line.keep(false);
    };
    const broken = (reason: string) => {
      alive.delete(worker);
      worker.job?.end({ kind: "fault", sentence: `a worker was lost: ${reason}` });
      worker.job = null;
      handOut();
    };
    const taken = new Set([...alive].map(({ number }) => number));
    let number = 0;
    while (taken.has(number)) number++;
    const worker: Worker = { job: null, number, line: connect(reply, broken) };
    alive.add(worker);
    return worker;
  }

  function handOut(): void {
    while (queue.length > 0) {
      const idle = [...alive].find(({ job }) => job === null) ?? (alive.size < workers ? start() : null);
      if (idle === null) return;
      const atHome = queue.findIndex(({ home }) => home === idle.number);
      const job = queue.splice(Math.max(0, atHome), 1)[0]!;
      idle.job = job;
      idle.line.keep(true);
      idle.line.post({ kind: "run", number: job.number, task: job.task });
    }
  }

  async function run<Kind extends TaskKind>(
    kind: Kind,
    task: Tasks[Kind]["task"],
    { onProgress, signal, home = 0, fewest = FEWEST_FOR_A_WORKER, most = MOST_MEMBERS }: TaskOptions,
    merge: (parts: readonly Tasks[Kind]["part"][]) => Tasks[Kind]["whole"] = MERGES[kind],
  ): Promise<TaskRun<Tasks[Kind]["whole"]>> {
    const { from, to } = task;
    if (!(Number.isInteger(from) && Number.isInteger(to) && from >= 0 && to > from && to <= MOST_MEMBERS)) {
      throw new RangeError(
        `members must be whole numbers with 0 <= from < to <= ${MOST_MEMBERS}, got ${from} and ${to}`,
      );
    }
    if (signal?.aborted) throw new TaskCancelled("cancelled before it began");
    const stretches = splitMembers(from, to, Math.max(workers, Math.ceil((to - from) / most)), fewest);
    const doneOf = stretches.map(() => 0);
    const open = new Set<Job>();
    const cancel = () => {
      for (const job of [...open]) {
        const at = queue.indexOf(job);
        if (at >= 0) {
          queue.splice(at, 1);
          job.end({ kind: "cancelled" });
        } else {
          const worker = [...alive].find((each) => each.job === job);
          worker?.line.post({ kind: "cancel", number: job.number });
        }
      }
    };
    const ends = stretches.map((stretch, s) => {
      return new Promise<TaskEnd>((resolve) => {
        const progress = (done: number) => {
          doneOf[s] = done;
          onProgress?.(
            doneOf.reduce((sum, each) => sum + each, 0),
            to - from,
          );
        };
        const end = (how: TaskEnd) => {
          open.delete(job);
          if (how.kind === "problems" || how.kind === "fault") cancel(); // the others need not go on
          resolve(how);
        };
        const whole = { ...task, ...stretch, kind } as unknown as Task;
        const job: Job = { number: ++lastNumber, home: (home + s) % workers, task: whole, progress, end };
        open.add(job);
        queue.push(job);
      });
    });
    signal?.addEventListener("abort", cancel);
    handOut();
    const all = await Promise.all(ends);
    signal?.removeEventListener("abort", cancel);
    const parts: Tasks[Kind]["part"][] = [];
    for (const end of all) {
      if (end.kind === "fault") throw new EngineFault(end.sentence);
      if (end.kind === "problems") return { ok: false, problems: end.problems };
      if (end.kind === "part") parts.push(end.part as Tasks[Kind]["part"]);
    }
    if (parts.length < all.length) throw new TaskCancelled("cancelled");
    return { ok: true, part: merge(parts) };
  }

  async function runDrivers(
    ensemble: PreparedEnsemble,
    members: number,
    { onProgress, ...options }: TaskOptions = {},
  ): Promise<TaskRun<DriversReport>> {
    // Few ask for drivers, and whoever does waits for seconds.
    const [{ endsOf, requireDriversRows }, { driversReport }] = await Promise.all([
      import("../drivers/drivers.ts"),
      import("../drivers/driversReport.ts"),
    ]);
    requireDriversRows(members);
    const { prepared, surroundings, seed } = ensemble;
    const rowsOf = { scenario: prepared.scenario, surroundings, seed, of: members, from: 0, to: members };
    const half = (before: number) => (done: number, of: number) => onProgress?.(before + done, 2 * of);
    const both = { fewest: FEWEST_OF_A_MAP, ...options };
    const rows = await run("driversRows", rowsOf, { ...both, onProgress: half(0) });
    if (!rows.ok) return rows;
    const ends = endsOf(ensemble, rows.part);
    const whatIfs = await run("driversWhatIfs", { ...rowsOf, ends }, { ...both, onProgress: half(members) });
    return whatIfs.ok ? { ok: true, part: driversReport(ensemble, rows.part, ends, whatIfs.part) } : whatIfs;
  }

  function close(): void {
    for (const job of queue.splice(0)) job.end({ kind: "cancelled" });
    for (const worker of alive) {
      worker.line.stop();
      worker.job?.end({ kind: "cancelled" });
    }
    alive.clear();
  }

  return {
    runOdds: (task, { before, spare, ...options } = {}) =>
      run("odds", task, options, (parts) => mergePackedOdds(parts, before, spare)),
    runPairs: (task, options = {}) => run("pairs", task, options),
    runSizes: (task, options = {}) => run("sizes", task, { fewest: FEWEST_OF_A_MAP, ...options }),
    runDrivers,
    close,
  };
}

/**
 * Cuts members into as many stretches as there are workers, of equal length within one member.
 * @param fewest members that are worth a worker of their own
 */
export function splitMembers(
  from: number,
  to: number,
  workers: number,
  fewest: number,
): { readonly from: number; readonly to: number }[] {
  const pieces = Math.max(1, Math.min(workers, Math.floor((to - from) / fewest)));
  const edge = (piece: number) => from + Math.round(((to - from) * piece) / pieces);
  return Array.from({ length: pieces }, (_, piece) => ({ from: edge(piece), to: edge(piece + 1) }));
}
