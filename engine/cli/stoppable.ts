import { writeSync } from "node:fs";

/** How shells say that Ctrl-C ended something: 128 and the signal's number. */
const STOPPED = 130;

/** Waits for work that workers do; Ctrl-C ends the program meanwhile, at once and with a sentence. */
export async function stoppable<T>(work: Promise<T>): Promise<T> {
  process.once("SIGINT", stop);
  try {
    const done = await work;
    // A Ctrl-C that came while this thread was busy is heard only now.
    await new Promise((resolve) => setImmediate(resolve));
    return done;
  } finally {
    process.off("SIGINT", stop);
  }
}

function stop(): never {
  const clear = process.stderr.isTTY ? "\r\u001b[K" : "";
  writeSync(2, `${clear}Stopped before the answer was known; nothing was written.\n`);
  process.exit(STOPPED);
}
