import { createInterface } from "node:readline";
import { commandLine } from "./commandLine.ts";
import type { Said } from "./said.ts";

const STOPPED = 130;

/** Answers a call in this thread, and asks whoever sits at the terminal. Questions go to standard error: the answer may go into a file. */
export async function answerHere(args: readonly string[], said: Pick<Said, "print" | "complain">): Promise<number> {
  const isAttended = process.stdin.isTTY && process.stderr.isTTY;
  const keyboard = isAttended ? makeKeyboard(() => stop(said.complain)) : null;
  try {
    return await commandLine(args, {
      ...said,
      progress: () => {},
      drafting: () => {},
      input: () => process.stdin,
      ask: keyboard?.ask ?? null,
    });
  } finally {
    keyboard?.close();
  }
}

function stop(complain: Said["complain"]): void {
  complain("\nStopped; nothing was written.");
  process.exit(STOPPED);
}

/** Lines from a terminal, each kept until it is asked for: several may come at once, as when they are pasted. @param onStop Ctrl-C, or no more lines */
function makeKeyboard(onStop: () => void) {
  const lines = createInterface({ input: process.stdin, output: process.stderr });
  const typed: string[] = [];
  let isOver = false;
  let waiting: ((line: string) => void) | null = null;
  lines.on("line", (line) => {
    if (waiting === null) typed.push(line);
    else waiting(line);
    waiting = null;
  });
  lines.on("SIGINT", onStop);
  lines.on("close", () => {
    isOver = true;
    if (waiting !== null) onStop();
  });
  return {
    ask: (question: string): Promise<string> => {
      lines.setPrompt(question);
      lines.prompt();
      const [next] = typed.splice(0, 1);
      if (next !== undefined) return Promise.resolve(next);
      if (isOver) onStop();
      return new Promise((resolve) => {
        waiting = resolve;
      });
    },
    close: () => {
      lines.removeAllListeners("close");
      lines.close();
    },
  };
}
