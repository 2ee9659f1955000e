import { spawnSync } from "node:child_process";
import { existsSync } from "node:fs";

/** What a call of the command printed and how it ended. */
export interface Call {
  readonly code: number | null;
  readonly out: string;
  readonly err: string;
}

/**
 * Runs the built command, as a person would.
 * @throws Error if it has not been built
 */
export function duskline(...args: string[]): Call {
  if (!existsSync("dist/duskline.js")) throw new Error("dist/duskline.js is not there; run npm run build:node first.");
  const { status, stdout, stderr } = spawnSync(process.execPath, ["dist/duskline.js", ...args], {
    encoding: "utf8",
    maxBuffer: 200_000_000,
  });
  return { code: status, out: stdout, err: stderr };
}
