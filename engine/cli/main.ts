#!/usr/bin/env node
import { writeSync } from "node:fs";
import { answerInThread } from "./answerInThread.ts";
import type { LineCall } from "./lineNews.ts";
import { makeProgressLine } from "./makeProgressLine.ts";
import { startThread } from "./startThread.ts";

/** Ends of the program that no verb says: what was printed is not whole; duskline itself is at fault. */
const OUTPUT_BROKEN = 4;
const FAULT = 3;
/** The verb that asks: only this thread has the keyboard. */
const ASKING = "new";

// A full disk behind the answer, or a reader that closes early (`| head`): what was printed is not the whole answer, and says so.
process.stdout.on("error", ({ code }: NodeJS.ErrnoException) => {
  const why =
    code === "EPIPE"
      ? "Whoever read the answer closed it before its end."
      : `The answer could not be written whole (${code}); free some room or send it elsewhere.`;
  try {
    writeSync(2, `${why}\n`);
  } catch {
    // Nobody is left to be told but by the code.
  }
  process.exit(OUTPUT_BROKEN);
});
process.stderr.on("error", () => process.exit(OUTPUT_BROKEN));

const print = (text: string) => console.log(text);
const complain = (sentence: string) => console.error(sentence);
const args = process.argv.slice(2);
const verb = args[0] ?? "";
const line = makeProgressLine(
  verb,
  process.stderr.isTTY && verb !== ASKING ? (text) => process.stderr.write(text) : null,
);

try {
  if (verb === ASKING) {
    const { answerHere } = await import("./answerHere.ts");
    process.exitCode = await answerHere(args, { print, complain });
  } else {
    const call: LineCall = { args };
    const worker = startThread("lineWorker", { workerData: call, stdin: true });
    process.exitCode = await answerInThread(worker, { print, complain, line, input: process.stdin });
    // What waits at the keyboard or in a pipe that was not read to its end is nobody's any more.
    process.stdin.unref?.();
  }
} catch (error) {
  const message = error instanceof Error ? error.message : String(error);
  complain(`This is a fault of duskline and not yours; please report it with the scenario: ${message}`);
  process.exitCode = FAULT;
}
