import { PerformanceObserver } from "node:perf_hooks";
import { setTimeout } from "node:timers/promises";
import { setFlagsFromString } from "node:v8";
import { runInNewContext } from "node:vm";

export interface HeapGrowth {
  /** How much more the heap holds after the work than before it. */
  bytes: number;
  /** Garbage collections during the work; growth means little if there was one. */
  collections: number;
}

/**
 * Watches the heap while `work` runs. A loop that makes even one number object a step shows megabytes or collections;
 * one that makes nothing shows a few kilobytes of the measurement's own.
 */
export async function heapGrowth(work: () => void): Promise<HeapGrowth> {
  setFlagsFromString("--expose-gc");
  const collectGarbage = runInNewContext("gc") as () => void;
  work(); // lets the compiler settle first: it too uses the heap
  let collections = 0;
  const observer = new PerformanceObserver((list) => {
    collections += list.getEntries().length;
  });
  collectGarbage();
  await setTimeout(50); // entries of that collection arrive before the watch begins
  observer.observe({ entryTypes: ["gc"] });
  const before = process.memoryUsage().heapUsed;
  work();
  const bytes = process.memoryUsage().heapUsed - before;
  await setTimeout(50);
  observer.disconnect();
  return { bytes, collections };
}
