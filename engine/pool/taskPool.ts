import { EngineFault } from "../fault.ts";
import type { Stretch, TaskKind } from "../task/taskKind.ts";
import { TaskCancelled, type TaskOptions, type TaskPool, type TaskRun } from "../task/taskRun.ts";
import type { Task } from "./taskKinds.ts";
import type { TaskEnd } from "./taskOrder.ts";
import { type ConnectWorker, type Job, makeWorkers } from "./workers.ts";

const MOST_MEMBERS = 1_000_000;

/** @param workers 1 or more; they are started when first needed */
export function makeTaskPool(workers: number, connect: ConnectWorker): TaskPool {
  const line = makeWorkers(workers, connect);
  let lastNumber = 0;

  async function run<Name extends string, Asked extends Stretch, Part, Whole, Into>(
    kind: TaskKind<Name, Asked, Part, Whole, Into>,
    task: Asked,
    { into, onProgress, signal, home = 0, fewest = kind.fewest, most = MOST_MEMBERS }: RunOptions<Into> = {},
  ): Promise<TaskRun<Whole>> {
    const { from, to } = task;
    requireMembers(from, to);
    if (signal?.aborted) throw new TaskCancelled("cancelled before it began");
    const stretches = splitMembers(from, to, Math.max(workers, Math.ceil((to - from) / most)), fewest);
    const tell = adder(stretches.length, (done) => onProgress?.(done, to - from));
    const open = new Set<Job>();
    const cancel = () => {
      for (const job of [...open]) line.cancel(job);
    };
    const jobs: Job[] = [];
    const ends = stretches.map((stretch, s) => {
      return new Promise<TaskEnd>((resolve) => {
        const end = (how: TaskEnd) => {
          open.delete(job);
          if (how.kind === "problems" || how.kind === "fault") cancel(); // the others need not go on
          resolve(how);
        };
        const whole = { ...task, ...stretch, kind: kind.name } as unknown as Task;
        const progress = (done: number) => tell(s, done);
        const job: Job = { number: ++lastNumber, home: (home + s) % workers, task: whole, progress, end };
        open.add(job);
        jobs.push(job);
      });
    });
    signal?.addEventListener("abort", cancel);
    line.take(jobs);
    const all = await Promise.all(ends);
    signal?.removeEventListener("abort", cancel);
    const parts = partsOf<Part>(all);
    return parts.ok ? { ok: true, part: kind.merge(parts.part, into) } : parts;
  }

  return { run, close: line.close };
}

type RunOptions<Into> = TaskOptions & { readonly into?: Into };

/** @throws RangeError where members are not whole numbers in order */
function requireMembers(from: number, to: number): void {
  if (!(Number.isInteger(from) && Number.isInteger(to) && from >= 0 && to > from && to <= MOST_MEMBERS)) {
    throw new RangeError(`members must be whole numbers with 0 <= from < to <= ${MOST_MEMBERS}, got ${from} and ${to}`);
  }
}

/** Adds up how far each of several is. */
function adder(count: number, say: (sum: number) => void): (which: number, done: number) => void {
  const doneOf = Array.from({ length: count }, () => 0);
  return (which, done) => {
    doneOf[which] = done;
    say(doneOf.reduce((sum, each) => sum + each, 0));
  };
}

/** What the workers sent, if all of them came to an end. @throws EngineFault for the first fault, TaskCancelled where any was cancelled */
function partsOf<Part>(ends: readonly TaskEnd[]): TaskRun<readonly Part[]> {
  const parts: Part[] = [];
  for (const end of ends) {
    if (end.kind === "fault") throw new EngineFault(end.sentence);
    if (end.kind === "problems") return { ok: false, problems: end.problems };
    if (end.kind === "part") parts.push(end.part as Part);
  }
  if (parts.length < ends.length) throw new TaskCancelled("cancelled");
  return { ok: true, part: parts };
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
