import { EngineFault } from "../fault.ts";
import type { Problem } from "../scenario/problem.ts";
import { mergeOdds, type OddsPart } from "./oddsPart.ts";
import type { OddsTask, TaskEnd, TaskOrder, TaskReply } from "./taskOrder.ts";

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

export interface OddsOptions {
  /** Called with members done and members in all, now and then. */
  readonly onProgress?: (done: number, of: number) => void;
  readonly signal?: CancelSignal;
  /** Members that are worth a worker of their own; what it costs to start one and to prepare in it is saved below that. */
  readonly fewest?: number;
}

/** Members in one part, or what is wrong with the scenario. */
export type OddsRun =
  | { readonly ok: true; readonly part: OddsPart }
  | { readonly ok: false; readonly problems: readonly Problem[] };

/** The asker no longer wants to know. Named as platforms name it, so that it is told apart from a fault. */
export class TaskCancelled extends Error {
  override readonly name = "AbortError";
}

/** Workers that stay alive from one ensemble to the next. */
export interface TaskPool {
  /**
   * Runs members `task.from` to `task.to` on all workers. The part has the same bits however many workers there are.
   * @throws TaskCancelled once `signal` is aborted; EngineFault naming seed and member if a member cannot be run
   */
  readonly runOdds: (task: OddsTask, options?: OddsOptions) => Promise<OddsRun>;
  /** Ends all workers. */
  readonly close: () => void;
}

/** Starting a worker and preparing in it takes as long as some hundreds of members do. */
const FEWEST_FOR_A_WORKER = 250;
const MOST_MEMBERS = 1_000_000;

interface Waiting {
  readonly progress: (done: number) => void;
  readonly end: (end: TaskEnd) => void;
}

interface Worker {
  readonly line: TaskLine;
  readonly waiting: Map<number, Waiting>;
}

/** @param workers 1 or more; they are started when first needed */
export function makeTaskPool(workers: number, connect: ConnectWorker): TaskPool {
  const alive = new Set<Worker>();
  let lastNumber = 0;

  function start(): Worker {
    const waiting = new Map<number, Waiting>();
    const reply = (said: TaskReply) => {
      const asked = waiting.get(said.number);
      if (asked === undefined) return;
      if (said.kind === "progress") return asked.progress(said.done);
      waiting.delete(said.number);
      if (waiting.size === 0) worker.line.keep(false);
      asked.end(said.end);
    };
    const broken = (reason: string) => {
      alive.delete(worker);
      for (const asked of waiting.values()) asked.end({ kind: "fault", sentence: `a worker was lost: ${reason}` });
      waiting.clear();
    };
    const worker: Worker = { waiting, line: connect(reply, broken) };
    alive.add(worker);
    return worker;
  }

  function freest(): Worker {
    const idlest = [...alive].sort((a, b) => a.waiting.size - b.waiting.size)[0];
    return idlest === undefined || (idlest.waiting.size > 0 && alive.size < workers) ? start() : idlest;
  }

  async function runOdds(
    task: OddsTask,
    { onProgress, signal, fewest = FEWEST_FOR_A_WORKER }: OddsOptions = {},
  ): Promise<OddsRun> {
    const { from, to } = task;
    if (!(Number.isInteger(from) && Number.isInteger(to) && from >= 0 && to > from && to <= MOST_MEMBERS)) {
      throw new RangeError(
        `members must be whole numbers with 0 <= from < to <= ${MOST_MEMBERS}, got ${from} and ${to}`,
      );
    }
    if (signal?.aborted) throw new TaskCancelled("cancelled before it began");
    const stretches = splitMembers(from, to, workers, fewest);
    const doneOf = stretches.map(() => 0);
    const asked: { readonly worker: Worker; readonly number: number }[] = [];
    const cancel = () => {
      for (const { worker, number } of asked) {
        if (worker.waiting.has(number)) worker.line.post({ kind: "cancel", number });
      }
    };
    const ends = stretches.map((stretch, s) => {
      return new Promise<TaskEnd>((resolve) => {
        const number = ++lastNumber;
        const worker = freest();
        const progress = (done: number) => {
          doneOf[s] = done;
          onProgress?.(
            doneOf.reduce((sum, each) => sum + each, 0),
            to - from,
          );
        };
        const end = (how: TaskEnd) => {
          if (how.kind !== "part") cancel(); // the others need not go on
          resolve(how);
        };
        worker.waiting.set(number, { progress, end });
        worker.line.keep(true);
        asked.push({ worker, number });
        worker.line.post({ kind: "run", number, task: { ...task, ...stretch } });
      });
    });
    signal?.addEventListener("abort", cancel);
    const all = await Promise.all(ends);
    signal?.removeEventListener("abort", cancel);
    const parts: OddsPart[] = [];
    for (const end of all) {
      if (end.kind === "fault") throw new EngineFault(end.sentence);
      if (end.kind === "problems") return { ok: false, problems: end.problems };
      if (end.kind === "part") parts.push(end.part);
    }
    if (parts.length < all.length) throw new TaskCancelled("cancelled");
    return { ok: true, part: mergeOdds(parts) };
  }

  function close(): void {
    for (const worker of alive) {
      worker.line.stop();
      for (const asked of worker.waiting.values()) asked.end({ kind: "cancelled" });
    }
    alive.clear();
  }

  return { runOdds, close };
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
