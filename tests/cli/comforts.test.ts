import { execFileSync, spawnSync } from "node:child_process";
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, afterEach, beforeEach, describe, expect, test, vi } from "vitest";
import { makeProgressLine } from "../../engine/cli/makeProgressLine.ts";
import { VERBS } from "../../engine/cli/verbs.ts";
import { callHere } from "./callHere.ts";
import { dusklineProcess } from "./duskline.ts";

vi.setConfig({ testTimeout: 120_000 });

const GROVE = "scenarios/walnut-grove.json";
const folder = mkdtempSync(join(tmpdir(), "duskline-"));
const at = (name: string) => join(folder, name);
afterAll(() => rmSync(folder, { recursive: true }));

const duskline = (...args: string[]) => callHere(args);
const given = (input: string, ...args: string[]) => callHere(args, { input });

test("says its version, and in help VERB the same as VERB --help", async () => {
  const { version } = JSON.parse(readFileSync("package.json", "utf8")) as { version: string };
  expect(dusklineProcess("--version")).toEqual({ code: 0, out: `duskline ${version}\n`, err: "" });
  expect((await duskline("help", "odds")).out).toBe((await duskline("odds", "-h")).out);
  expect((await duskline("help", "odds", "size")).code).toBe(2);
});

describe("did you mean", () => {
  test.each([
    [["trase", GROVE], 'There is no verb "trase". Did you mean trace?'],
    [["help", "od"], 'There is no verb "od". Did you mean odds?'],
    [["odds", GROVE, "--membrs", "3"], "Unknown option '--membrs'; did you mean --members?"],
    [["trace", "scenarios/walnut-grov.json"], "did you mean scenarios/walnut-grove.json?"],
    [["trace", "scenarios/walnut-grove"], "did you mean scenarios/walnut-grove.json?"],
    [["new", "-", "--chemistry", "lpf", "--at", "1,1", "--from", "2026-10-09", "--to", "2026-10-11"], "did you mean lfp?"],
    [["new", "-", "--gear", "fidge", "--at", "1,1", "--from", "2026-10-09", "--to", "2026-10-11"], "did you mean fridge?"],
  ] as const)("%j: %s", async (args, sentence) => {
    const { code, err } = await duskline(...args);
    expect(code).toBe(2);
    expect(err).toContain(sentence);
  });
  test("nothing is suggested where nothing is near", async () => {
    expect((await duskline("zeppelin")).err).not.toMatch(/mean/);
    expect((await duskline("trace", "nowhere/at-all.json")).err).toMatch(/check the name and the folder\.\n$/);
  });
}); // biome-ignore format: a table of calls

describe("standard input", () => {
  const text = readFileSync(GROVE, "utf8");
  test("is a scenario, readings, a log or a notebook where - stands", async () => {
    expect((await given(text, "ledger", "-")).out).toBe((await duskline("ledger", GROVE)).out);
    expect((await given(text, "ledger", "-", "--variant", "meadow")).out).toBe((await duskline("ledger", GROVE, "--variant", "meadow")).out);
    const readings = JSON.stringify({ format: "duskline-readings", version: 1, readings: [{ at: "2026-10-09T12:00", chargeShare: 0.8 }] });
    writeFileSync(at("r.json"), readings);
    const learned = ["--members", "100", "--json"];
    expect((await given(readings, "learn", GROVE, "--readings", "-", ...learned)).out).toBe(
      (await duskline("learn", GROVE, "--readings", at("r.json"), ...learned)).out,
    );
    const log = "time,SOC,I\n2026-10-08 10:00,100,0\n2026-10-08 11:00,98,-5\n2026-10-08 12:00,96,-5\n";
    writeFileSync(at("l.csv"), log);
    const [piped, named] = [await given(log, "actual", GROVE, "--log", "-"), await duskline("actual", GROVE, "--log", at("l.csv"))];
    expect(piped).toEqual(named);
  });
  test("is one file and no two, and one that cannot be read says so in a sentence", async () => {
    expect(await given(text, "learn", "-", "--readings", "-")).toMatchObject({ code: 2, err: expect.stringMatching(/stands for one file/) });
    expect(await given("{", "trace", "-")).toMatchObject({ code: 1, err: expect.stringMatching(/JSON/) });
    expect(await given(" ".repeat(10_000_001), "trace", "-")).toMatchObject({ code: 2, err: expect.stringMatching(/^Standard input does not end within 10 MB/) });
  });
}); // biome-ignore format: tables of calls

describe("-o FILE", () => {
  test("keeps what would be printed, as its ending or an option says", async () => {
    for (const [verb, ...more] of [["ledger"], ["explain", "--at", "2026-10-09T12:00"], ["check"], ["limits"]] as const) {
      expect(await duskline(verb, GROVE, ...more, "-o", at(`${verb}.txt`))).toEqual({ code: 0, out: `${at(`${verb}.txt`)} is written.\n`, err: "" });
      expect(readFileSync(at(`${verb}.txt`), "utf8")).toBe((await duskline(verb, GROVE, ...more)).out);
    }
    await duskline("ledger", GROVE, "--output", at("ledger.json"));
    expect(readFileSync(at("ledger.json"), "utf8")).toBe((await duskline("ledger", GROVE, "--json")).out);
  });
  test("writes the files that --csv and --svg write", async () => {
    for (const form of ["csv", "svg"]) {
      await duskline("trace", GROVE, `--${form}`, at(`old.${form}`));
      expect((await duskline("trace", GROVE, "-o", at(`new.${form}`))).code).toBe(0);
      expect(readFileSync(at(`new.${form}`), "utf8").trimEnd()).toBe(readFileSync(at(`old.${form}`), "utf8").trimEnd());
    }
  });
  test("refuses a form that the verb has not, a file that is there, and what was read", async () => {
    expect((await duskline("ledger", GROVE, "-o", at("a.csv"))).err).toMatch(/ledger does not write CSV; let the name end with \.txt or \.json\./);
    writeFileSync(at("mine.txt"), "mine");
    expect(await duskline("ledger", GROVE, "-o", at("mine.txt"))).toMatchObject({ code: 2, err: expect.stringMatching(/is there already/) });
    writeFileSync(at("plan.json"), readFileSync(GROVE));
    expect((await duskline("ledger", at("plan.json"), "-o", at("plan.json"), "--force")).err).toMatch(/is not written over/);
    expect(readFileSync(at("mine.txt"), "utf8")).toBe("mine");
    expect((await duskline("ledger", GROVE, "-o", at("mine.txt"), "--force")).code).toBe(0);
  });
  test("- is standard output", async () => {
    expect(await duskline("check", GROVE, "-o", "-")).toEqual(await duskline("check", GROVE));
  });
}); // biome-ignore format: tables of calls

describe("progress", () => {
  beforeEach(() => {
    vi.useFakeTimers();
  });
  afterEach(() => {
    vi.useRealTimers();
  });
  test("is said in the last line once a second is over, goes away for what is printed, and leaves nothing", async () => {
    const said: string[] = [];
    const line = makeProgressLine("odds", (text) => said.push(text));
    vi.advanceTimersByTime(900);
    expect(said).toEqual([]);
    line.at(0.345);
    vi.advanceTimersByTime(1200);
    expect(said.at(-1)).toBe("\r\u001b[Kodds: 34 %, 2 s (Ctrl-C stops it)");
    line.clear();
    expect(said.at(-1)).toBe("\r\u001b[K");
    vi.advanceTimersByTime(300);
    line.end();
    expect(said.at(-1)).toBe("\r\u001b[K");
    const before = said.length;
    vi.advanceTimersByTime(5000);
    expect(said).toHaveLength(before);
  });
  test("is not said where no terminal listens", async () => {
    makeProgressLine("odds", null).at(0.5);
    expect(vi.getTimerCount()).toBe(0);
    expect((await duskline("odds", GROVE, "--members", "50")).err).toBe("");
  });
});

describe("completion", () => {
  /** What bash offers for a line whose last word is being typed. */
  const offered = async (...words: string[]) => {
    writeFileSync(at("completion.bash"), (await duskline("completion", "bash")).out);
    const program = `source "$0"; COMP_WORDS=("$@"); COMP_CWORD=$((\${#COMP_WORDS[@]} - 1)); _duskline; printf '%s\\n' "\${COMPREPLY[@]}"`;
    return execFileSync("bash", ["-c", program, at("completion.bash"), "duskline", ...words], { encoding: "utf8" })
      .split("\n")
      .filter((word) => word !== "");
  };
  test("in bash offers verbs, options, words of an option, and files, as the verbs have them", async () => {
    expect(await offered("")).toEqual([...VERBS.map(({ name }) => name), "help", "--help", "--version"]);
    expect(await offered("od")).toEqual(["odds"]);
    expect(await offered("help", "le")).toEqual(["learn", "ledger"]);
    expect(await offered("new", "--chem")).toEqual(["--chemistry"]);
    expect(await offered("new", "--chemistry", "")).toEqual(["lfp", "agm", "flooded"]);
    expect(await offered("reach", "x.json", "--most", "m")).toEqual(["money", "mass", "minutes"]);
    expect(await offered("trace", "scenarios/walnut-grove.")).toEqual([GROVE]);
    expect(await offered("odds", "x.json", "--seed", "")).toEqual([]);
    expect(await offered("completion", "")).toEqual(["bash", "zsh", "fish"]);
    expect(await offered("report", "n.json", "-o", "scenarios/pol")).toEqual(["scenarios/polar-hut.json"]);
  });
  test("names every verb and option for each shell", async () => {
    for (const shell of ["bash", "zsh", "fish"]) {
      const { out } = await duskline("completion", shell);
      for (const { name, options } of VERBS) {
        expect(out).toContain(name);
        for (const option of Object.keys(options)) expect(out, `${shell} ${name}`).toMatch(new RegExp(`(--|-l )${option}\\b`));
      }
    }
    expect(await duskline("completion", "tcsh")).toMatchObject({ code: 2, err: expect.stringMatching(/bash, zsh, fish/) });
  });
  test.skipIf(spawnSync("zsh", ["--version"]).status !== 0)("is read by zsh", async () => {
    writeFileSync(at("_duskline"), (await duskline("completion", "zsh")).out);
    execFileSync("zsh", ["-n", at("_duskline")]);
  });
  test.skipIf(spawnSync("fish", ["--version"]).status !== 0)("is read by fish", async () => {
    writeFileSync(at("duskline.fish"), (await duskline("completion", "fish")).out);
    execFileSync("fish", ["-n", at("duskline.fish")]);
  });
}); // biome-ignore format: tables of calls
