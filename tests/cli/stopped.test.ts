import { spawn } from "node:child_process";
import { existsSync, mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { expect, test } from "vitest";

/** A thread that says it is at work, has a file that is not whole, and never comes to a turn again. */
const BUSY = `
  import { parentPort, workerData } from "node:worker_threads";
  parentPort.postMessage({ drafting: workerData });
  parentPort.postMessage({ print: "busy" });
  for (;;);
`;

const PROGRAM = `
  import { Worker } from "node:worker_threads";
  import { answerInThread } from "./engine/cli/answerInThread.ts";
  const worker = new Worker(new URL(${JSON.stringify(`data:text/javascript,${encodeURIComponent(BUSY)}`)}), { execArgv: [], workerData: process.env.DRAFT });
  const line = { at() {}, clear() {}, end() {} };
  await answerInThread(worker, { print: (text) => console.log(text), complain: () => {}, line, input: process.stdin });
`;

test.each([["SIGINT", 130], ["SIGTERM", 143]] as const)(
  "%s ends an answer that is being worked out, however busy: a sentence, the shell's own code, and nothing half written",
  { timeout: 120_000 },
  async (signal, code) => {
    const folder = mkdtempSync(join(tmpdir(), "duskline-"));
    const draft = join(folder, "a.json.part");
    writeFileSync(draft, "half");
    const ended = await new Promise((resolve) => {
      const env = { ...process.env, DRAFT: draft };
      const child = spawn(process.execPath, ["--import", "tsx", "--input-type=module", "--eval", PROGRAM], { env });
      let err = "";
      child.stderr.on("data", (data) => {
        err += data;
      });
      child.stdout.once("data", () => child.kill(signal));
      child.on("close", (by) => resolve({ code: by, err }));
    });
    expect(ended).toEqual({ code, err: "Stopped before the answer was known; nothing was written.\n" });
    expect(existsSync(draft)).toBe(false);
    rmSync(folder, { recursive: true });
  },
); // biome-ignore format: a table of signals

test("a thread that ends without an answer is our fault, and no silence", { timeout: 120_000 }, async () => {
  const program = PROGRAM.replace(encodeURIComponent("for (;;);"), "process.exit()");
  const err = await new Promise((resolve) => {
    const env = { ...process.env, DRAFT: "" };
    const child = spawn(process.execPath, ["--import", "tsx", "--input-type=module", "--eval", program], { env });
    let said = "";
    child.stderr.on("data", (data) => {
      said += data;
    });
    child.on("close", () => resolve(said));
  });
  expect(err).toMatch(/the thread that answers ended by itself/);
});
