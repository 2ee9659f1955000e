import { spawnSync } from "node:child_process";
import { existsSync, mkdirSync, mkdtempSync, readdirSync, readFileSync, symlinkSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { beforeAll, describe, expect, test, vi } from "vitest";
import { duskline } from "./duskline.ts";

const grove = JSON.parse(readFileSync("scenarios/walnut-grove.json", "utf8")) as Record<string, unknown>;
const hours = Array.from({ length: 96 }, (_, h) => {
  const at = new Date(Date.UTC(2026, 9, 7, 22 + h)).toISOString().slice(0, 16);
  return `${at}Z,100,50,60,12,2`;
});
const WEATHER = `# latitude: 46.93\n# longitude: 15.62\ntime,ghi,dni,dhi,temp_c,wind_ms\n${hours.join("\n")}\n`;

// Each call is a program of its own, and some tests make seven.
vi.setConfig({ testTimeout: 240_000 });

let folder: string;
let plan: string;
const at = (...names: string[]) => join(folder, ...names);
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), "duskline-files-"));
  mkdirSync(at("plans"));
  plan = at("plans", "plan.json");
  writeFileSync(plan, JSON.stringify(grove));
  writeFileSync(at("outside.csv"), WEATHER);
  writeFileSync(at("plans", "inside.csv"), WEATHER);
});

/** A copy of the plan with its weather from a file. */
function planWith(file: string): string {
  const path = at("plans", "weather.json");
  writeFileSync(path, JSON.stringify({ ...grove, weather: { kind: "file", file }, variants: [] }));
  return path;
}

describe("an output", () => {
  test("never replaces a file that is there, unless told to", () => {
    const out = at("a.csv");
    writeFileSync(out, "mine");
    const refused = duskline("trace", plan, "--csv", out);
    expect(refused.code).toBe(2);
    expect(refused.err).toBe(`${out} is there already; name another file, or write --force to replace it.\n`);
    expect(readFileSync(out, "utf8")).toBe("mine");
    expect(duskline("trace", plan, "--csv", out, "--force").code).toBe(0);
    expect(readFileSync(out, "utf8")).toMatch(/^local,utc,/);
    expect(readdirSync(folder).filter((name) => name.endsWith(".part"))).toEqual([]);
  });

  test("never replaces what was read, whatever it is called and whatever is allowed", () => {
    symlinkSync(plan, at("another-name.json"));
    const before = readFileSync(plan, "utf8");
    for (const [verb, option] of [["trace", "--csv"], ["trace", "--svg"], ["odds", "--part"]] as const) {
      const more = verb === "odds" ? ["--members", "2"] : [];
      const { code, err } = duskline(verb, plan, option, at("another-name.json"), "--force", ...more);
      expect(code).toBe(2);
      expect(err).toMatch(/is what the answer is worked out from and is not written over/);
    }
    expect(readFileSync(plan, "utf8")).toBe(before);
    const withWeather = planWith("inside.csv");
    expect(duskline("trace", withWeather, "--csv", at("plans", "inside.csv"), "--force").code).toBe(2);
    expect(readFileSync(at("plans", "inside.csv"), "utf8")).toBe(WEATHER);
  });

  test("into a folder that is not there says so", () => {
    expect(duskline("trace", plan, "--csv", at("no", "a.csv"))).toMatchObject({ code: 2, err: expect.stringMatching(/could not be written \(ENOENT\); check the folder/) });
  });

  test.skipIf(!existsSync("/dev/full"))("onto a full disk ends in a sentence and code 4", () => {
    const { code, err } = duskline("trace", plan, "--csv", "/dev/full");
    expect(code).toBe(4);
    expect(err).toBe("There is no room for /dev/full, and nothing of it was kept; free some or name another disk.\n");
    const shell = spawnSync("sh", ["-c", `"${process.execPath}" dist/duskline.js ledger "${plan}" > /dev/full`], { encoding: "utf8" });
    expect(shell.status).toBe(4);
    expect(shell.stderr).toBe("The answer could not be written whole (ENOSPC); free some room or send it elsewhere.\n");
  });

  test.skipIf(process.platform === "win32")("into a pipe that is closed ends in a sentence and code 4", () => {
    const line = `("${process.execPath}" dist/duskline.js trace "${plan}" --json; echo "code $?" >&2) | head -c 10`;
    const { stderr } = spawnSync("sh", ["-c", line], { encoding: "utf8" });
    expect(stderr).toBe("Whoever read the answer closed it before its end.\ncode 4\n");
  });
}); // biome-ignore format: tables of calls

describe("the weather file that a scenario names", () => {
  test("is read beside it, and elsewhere only when the caller allows it", () => {
    expect(duskline("ledger", planWith("inside.csv")).code).toBe(0);
    for (const name of ["../outside.csv", at("outside.csv"), "../plans/../outside.csv"]) {
      const { code, err } = duskline("ledger", planWith(name));
      expect(code, name).toBe(1);
      expect(err).toBe(
        `weather.file is "${name}", which lies outside the scenario's folder; put the file beside the scenario, or allow it with --weather-anywhere.\n`,
      );
      expect(duskline("ledger", planWith(name), "--weather-anywhere").code, name).toBe(0);
    }
  });

  test("is not followed out of the folder by a link, and says nothing of what is not there outside", () => {
    symlinkSync(at("outside.csv"), at("plans", "link.csv"));
    expect(duskline("ledger", planWith("link.csv")).err).toMatch(/lies outside the scenario's folder/);
    expect(duskline("ledger", planWith("../nothing.csv")).err).toMatch(/lies outside the scenario's folder/);
    expect(duskline("ledger", planWith("nothing.csv")).err).toMatch(/There is no file/);
  });

  test.skipIf(!existsSync("/dev/zero"))("is a regular file, and nothing without an end is read", () => {
    const { code, err } = duskline("ledger", planWith("/dev/zero"), "--weather-anywhere");
    expect(code).toBe(1);
    expect(err).toMatch(/is no regular file/);
    expect(duskline("ledger", "/dev/zero")).toMatchObject({ code: 2, err: expect.stringMatching(/does not end within 10 MB/) });
  });
}); // biome-ignore format: tables of calls

test("a number below zero behind an option is its value", () => {
  const cold = duskline("limits", plan, "--coldest", "-20", "--json");
  expect(cold.err).toBe("");
  expect(cold.out).toBe(duskline("limits", plan, "--coldest=-20", "--json").out);
  expect(cold.out).not.toBe(duskline("limits", plan, "--coldest", "20", "--json").out);
  expect(duskline("limits", plan, "--coldest", "-o").code).toBe(2);
});
