import { spawnSync } from "node:child_process";
import { existsSync } from "node:fs";
import { resolve } from "node:path";
import { MessageChannel, type MessagePort, receiveMessageOnPort, Worker } from "node:worker_threads";

/** What a call of the command printed and how it ended. */
export interface Call {
  readonly code: number | null;
  readonly out: string;
  readonly err: string;
}

interface CallServer {
  readonly port: MessagePort;
  /** How many calls are answered; the caller sleeps on it. */
  readonly done: Int32Array;
}

let server: CallServer | null = null;

/**
 * Calls the built command line, in a thread that stays for the next call: a process for each call costs three times as much, most of it
 * for starting. What only a process has (its streams, signals and exit) is tried by `dusklineProcess`.
 * @throws Error if it has not been built
 */
export function duskline(...args: string[]): Call {
  server ??= startServer();
  const { port, done } = server;
  const before = Atomics.load(done, 0);
  port.postMessage(args);
  Atomics.wait(done, 0, before);
  return receiveMessageOnPort(port)!.message as Call;
}

/** Runs the built command as a process of its own, as a person would. @throws Error if it has not been built */
export function dusklineProcess(...args: string[]): Call {
  requireBuilt("dist/duskline.js");
  const { status, stdout, stderr } = spawnSync(process.execPath, ["dist/duskline.js", ...args], {
    encoding: "utf8",
    maxBuffer: 200_000_000,
  });
  return { code: status, out: stdout, err: stderr };
}

function startServer(): CallServer {
  requireBuilt("dist/commandLine.js");
  const { port1, port2 } = new MessageChannel();
  const done = new Int32Array(new SharedArrayBuffer(4));
  const worker = new Worker(new URL("./callServer.mjs", import.meta.url), {
    workerData: { bundle: resolve("dist/commandLine.js"), port: port2, done },
    transferList: [port2],
  });
  worker.unref();
  port1.unref();
  return { port: port1, done };
}

function requireBuilt(path: string): void {
  if (!existsSync(path)) throw new Error(`${path} is not there; run npm run build:node first.`);
}
