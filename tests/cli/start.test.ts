import { spawnSync } from "node:child_process";
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join, resolve } from "node:path";
import { expect, test } from "vitest";
import { sourcesFingerprint } from "../../engine/cli/sourcesFingerprint.ts";

const start = (...args: string[]) =>
  spawnSync(process.execPath, ["--import", "tsx", "engine/cli/start.ts", ...args], { encoding: "utf8" });

test("help names the options, and a port that is none is refused in a sentence", () => {
  expect(start("--help").stdout).toMatch(/--port N[\s\S]*--host ADDRESS[\s\S]*--no-open[\s\S]*--rebuild/);
  const wrong = start("--port", "99999");
  expect(wrong.stderr).toBe('--port is "99999" but must be a whole number from 1 to 65535, such as 8080.\n');
  expect(wrong.status).toBe(2);
});

test("what has not changed is known again, and a change of one letter is seen", () => {
  const folder = mkdtempSync(join(tmpdir(), "duskline-start-"));
  const home = resolve(".");
  try {
    process.chdir(folder);
    mkdirSync("engine");
    writeFileSync("engine/a.ts", "export const a = 1;");
    const before = sourcesFingerprint();
    expect(sourcesFingerprint()).toBe(before);
    writeFileSync("engine/a.ts", "export const a = 2;");
    expect(sourcesFingerprint()).not.toBe(before);
  } finally {
    process.chdir(home);
    rmSync(folder, { recursive: true, force: true });
  }
});
