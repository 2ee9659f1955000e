import { spawn } from "node:child_process";
import { expect, test } from "vitest";

/** Waits for ever, and says when it has begun to. */
const PROGRAM = `
  import { stoppable } from "./engine/cli/stoppable.ts";
  const waits = stoppable(new Promise((resolve) => setTimeout(resolve, 1e9)));
  console.log("waits");
  await waits;
`;

test("Ctrl-C ends an answer that is being worked out, with a sentence and the shell's own code", {
  timeout: 120_000,
}, async () => {
  const ended = await new Promise((resolve) => {
    const child = spawn(process.execPath, ["--import", "tsx", "--input-type=module", "--eval", PROGRAM]);
    let err = "";
    child.stderr.on("data", (data) => {
      err += data;
    });
    child.stdout.once("data", () => child.kill("SIGINT"));
    child.on("close", (code) => resolve({ code, err }));
  });
  expect(ended).toEqual({ code: 130, err: "Stopped before the answer was known; nothing was written.\n" });
});
