import { rmSync, writeSync } from "node:fs";
import type { Worker } from "node:worker_threads";
import type { LineNews } from "./lineNews.ts";
import type { ProgressLine } from "./makeProgressLine.ts";
import type { Said } from "./said.ts";

/** How shells say that a signal ended something: 128 and its number. */
const STOPPED = { SIGINT: 130, SIGTERM: 143 } as const;

/** What this thread does for the one that answers. */
export interface ThreadHost extends Pick<Said, "print" | "complain"> {
  readonly line: ProgressLine;
  readonly input: NodeJS.ReadableStream;
}

/**
 * Waits for the thread that answers a call. Ctrl-C ends the program meanwhile, at once and with a sentence, however busy that thread is; a file
 * that is not whole is taken away.
 * @returns the code that the program ends with
 * @throws what the thread threw
 */
export function answerInThread(worker: Worker, { print, complain, line, input }: ThreadHost): Promise<number> {
  let draft: string | null = null;
  const stop = (signal: keyof typeof STOPPED) => {
    line.end();
    if (draft !== null) rmSync(draft, { force: true });
    writeSync(2, "Stopped before the answer was known; nothing was written.\n");
    process.exit(STOPPED[signal]);
  };
  const signals = Object.keys(STOPPED) as (keyof typeof STOPPED)[];
  for (const signal of signals) process.on(signal, stop);
  return new Promise<number>((resolve, reject) => {
    worker.on("error", reject);
    worker.on("exit", () => reject(new Error("the thread that answers ended by itself")));
    worker.on("message", (news: LineNews) => {
      if ("progress" in news) return line.at(news.progress);
      if ("drafting" in news) draft = news.drafting;
      else if ("wantsInput" in news) input.pipe(worker.stdin!);
      else if ("code" in news) resolve(news.code);
      else {
        line.clear();
        if ("print" in news) print(news.print);
        else complain(news.complain);
      }
    });
  }).finally(() => {
    line.end();
    for (const signal of signals) process.off(signal, stop);
    void worker.terminate();
  });
}
