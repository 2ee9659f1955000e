import type { Task } from "./taskKinds.ts";
import type { TaskEnd, TaskOrder, TaskReply } from "./taskOrder.ts";

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

/** A task that waits, or is with a worker. */
export interface Job {
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

/** Workers that take what waits, one job each at a time. */
export interface Workers {
  /** Lets jobs wait behind those that do, and hands out what can be. */
  readonly take: (jobs: readonly Job[]) => void;
  /** Ends a job that waits; tells the worker that has it, where one has. */
  readonly cancel: (job: Job) => void;
  readonly close: () => void;
}

/** @param most 1 or more; they are started when first needed */
export function makeWorkers(most: number, connect: ConnectWorker): Workers {
  const alive = new Set<Worker>();
  /** First come, first served, except for whoever is at home somewhere. */
  const queue: Job[] = [];

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
      const idle = [...alive].find(({ job }) => job === null) ?? (alive.size < most ? start() : null);
      if (idle === null) return;
      const atHome = queue.findIndex(({ home }) => home === idle.number);
      const job = queue.splice(Math.max(0, atHome), 1)[0]!;
      idle.job = job;
      idle.line.keep(true);
      idle.line.post({ kind: "run", number: job.number, task: job.task });
    }
  }

  function cancel(job: Job): void {
    const at = queue.indexOf(job);
    if (at >= 0) {
      queue.splice(at, 1);
      job.end({ kind: "cancelled" });
    } else {
      const worker = [...alive].find((each) => each.job === job);
      worker?.line.post({ kind: "cancel", number: job.number });
    }
  }

  function close(): void {
    for (const job of queue.splice(0)) job.end({ kind: "cancelled" });
    for (const worker of alive) {
      worker.line.stop();
      worker.job?.end({ kind: "cancelled" });
    }
    alive.clear();
  }

  const take = (jobs: readonly Job[]) => {
    queue.push(...jobs);
    handOut();
  };
  return { take, cancel, close };
}
