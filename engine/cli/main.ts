#!/usr/bin/env node
import { writeSync } from "node:fs";
import { commandLine, OUTPUT_BROKEN } from "./commandLine.ts";

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

process.exitCode = await commandLine(process.argv.slice(2), {
  print: (text) => console.log(text),
  complain: (sentence) => console.error(sentence),
});
