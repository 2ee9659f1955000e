import { spawnSync } from "node:child_process";
import { existsSync, mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import fc from "fast-check";
import { commandLine } from "../../../engine/cli/commandLine.ts";
import { optionsOf } from "../../../engine/cli/optionsOf.ts";
import type { Verb } from "../../../engine/cli/verb.ts";
import { VERBS } from "../../../engine/cli/verbs.ts";
import { brokenDocument, brokenText } from "./brokenDocument.ts";
import { extremeScenario } from "./extremeScenario.ts";
import { mustBeSentences } from "./sayings.ts";

/** What a call printed, and how it ended. */
export interface Ended {
  readonly code: number | null;
  readonly printed: string;
  /** What was complained of, one text for each time. */
  readonly complaints: readonly string[];
}

/** A call of the command: files that it may name, and what stands behind the program's name, `@` before a file of those. */
export interface Call {
  readonly files: Readonly<Record<string, string>>;
  readonly args: readonly string[];
}

const read = (path: string) => readFileSync(path, "utf8");
const grove = JSON.parse(read("scenarios/walnut-grove.json")) as Record<string, unknown>;
const moor: unknown = JSON.parse(read("scenarios/peat-moor.json"));
const owned = read("scenarios/walnut-grove-owned.csv");
const CONTROL = "a\u001b[2J\u0007\r\nb\u009b31m\u202ec\u0000";
const withControls = {
  ...grove,
  name: CONTROL,
  place: { ...(grove.place as object), name: CONTROL },
  variants: [{ id: "meadow", name: CONTROL, changes: [] }],
};
const withFile = { ...grove, weather: { kind: "file", file: "w.csv" }, variants: [] };
const outside = { ...grove, weather: { kind: "file", file: "../../etc/hostname" }, variants: [] };

/** Files by name: right ones, and ones with something done to them. */
function filesFor(notebook: unknown, readings: unknown, logs: readonly string[], weather: readonly string[]) {
  const json = (document: unknown) => JSON.stringify(document) ?? "";
  const either = <T>(right: readonly T[], broken: fc.Arbitrary<T>) =>
    fc.oneof({ weight: 3, arbitrary: fc.constantFrom(...right) }, { weight: 1, arbitrary: broken });
  const scenario = fc.oneof(
    { weight: 4, arbitrary: fc.constantFrom<unknown>(grove, moor, withControls, withFile, outside) },
    { weight: 2, arbitrary: brokenDocument([grove, moor]) },
    { weight: 2, arbitrary: extremeScenario as fc.Arbitrary<unknown> },
  );
  return fc.record({
    "s.json": fc.oneof(
      { weight: 6, arbitrary: scenario.map(json) },
      { weight: 1, arbitrary: brokenText([json(grove)]) },
    ),
    "n.json": either([notebook], brokenDocument([notebook])).map(json),
    "r.json": either([readings], brokenDocument([readings])).map(json),
    "l.csv": either(logs, brokenText(logs)),
    "w.csv": either(weather, brokenText(weather)),
    "o.csv": either([owned], brokenText([owned])),
    empty: fc.constant(""),
  });
}

/** Values that an option may come with; `@` stands for a file of the call, `>` for one to be written. */
const VALUES: Readonly<Record<string, readonly string[]>> = {
  variant: ["meadow", "roof", "__proto__"],
  variants: ["meadow", "meadow,meadow", ","],
  members: ["4", "1", "2:5", "5:2", "0", "1e3"],
  seed: ["x", ""],
  x: ["bank.blockAh=100,200", "bank.blockAh=100:200:2", "bank.blockAh=2:1:0", "bank=1", "constructor=1,2", "=", "panels.roof.count=1,1"],
  y: ["none", "panels.roof.count=1,2", "loads.x=1,2"],
  most: ["mass", "love"],
  lock: ["bank.blockAh", ","],
  target: ["95", "0.5", "101"],
  "days-autonomy": ["2", "0"],
  readings: ["@r.json", "@s.json", "@l.csv"],
  log: ["@l.csv", "@s.json", "@w.csv"],
  map: ["zone=UTC", "charge=SOC", "__proto__=x", "@r.json", "=,="],
  owned: ["@o.csv", "@r.json", "@nowhere", "@"],
  "max-kg": ["60", "-1", "many"],
  "max-minutes": ["45", ""],
  "max-money": ["0", "1e99"],
  measured: ["@r.json", "@nowhere", "@"],
  at: ["2026-10-09T12:00", "46.9,15.6", "-89,180", "2026-10-09", "2026-02-30T25:00", "9999-12-31T00:00"],
  coldest: ["-20", "-300", "20"],
  lowest: ["20", "0.2", "-1"],
  csv: [">a.csv", "@s.json", "@"],
  svg: [">a.svg", "@s.json", ">no/such/folder/a.svg"],
  part: [">p.json", "@s.json"],
  parts: ["@r.json", "@empty", ","],
  output: [">o.html", ">o.json", ">o.csv", "@", "-"],
  from: ["2026-10-09T14:00", "2026-10-09", "9999-12-31T00:00", "soon"],
  to: ["2026-10-11T14:00", "2026-10-09T14:10", "2026-02-30"],
  bank: ["100", "2x100", "0", "x"],
  panels: ["0", "2x100", "1e9"],
  gear: ["none", "laptop,lamp:2", "zeppelin", ","],
  stations: ["0", "2", "1.5"],
}; // biome-ignore format: lists of values
const JUNK = ["", " ", "-", "--", "-1", "NaN", "Infinity", "1e999", "__proto__", "=1+1", "a\u001b[31mb", "@", "@empty", "@nowhere", "9".repeat(400)]; // biome-ignore format: a list of values

const pick = fc.nat();
const choice = fc.record({
  option: pick,
  value: pick,
  how: fc.constantFrom("apart", "apart", "joined", "alone", "junk"),
});

/** Members of everything that draws them, as few as it takes. */
const FEW: Readonly<Record<string, string>> = {
  odds: "4",
  versus: "4",
  size: "4",
  drivers: "20",
  reach: "4",
  pack: "4",
  learn: "100",
};
/** Options whose value is a file to be written: whatever comes there stays in the call's own folder. */
const WRITTEN = new Set(["csv", "svg", "part", "output"]);

/** What stands first behind a verb, where it is no scenario: what `new` writes stays in the call's own folder. */
function firstFor(takes: Verb["takes"], first: string): string {
  if (takes === "FILE") return first === "-" || first === "@" ? first : ">new.json";
  if (first !== "@s.json" || takes === undefined) return first;
  return takes === "NOTEBOOK" ? "@n.json" : takes === "WORDS" ? "fridge" : takes[0]!;
}

function argsOf(verb: number, first: string, choices: readonly { option: number; value: number; how: string }[]) {
  const called = VERBS[verb % VERBS.length]!;
  const { name, takes } = called;
  const options = optionsOf(called);
  const args = [name, firstFor(takes, first)];
  if (takes === "FILE") args.push("--at", "46.9,15.6", "--from", "2026-10-09T14:00", "--to", "2026-10-11T14:00");
  if (FEW[name] !== undefined) args.push("--members", FEW[name]);
  if ("owned" in options) args.push("--owned", "@o.csv");
  if (takes === "NOTEBOOK") args.push("-o", ">o.html");
  const names = [...Object.keys(options), "variant", "weather-anywhere", "no-such"];
  for (const { option, value, how } of choices) {
    const chosen = names[option % names.length]!;
    const words = options[chosen]?.takes;
    const known = VALUES[chosen] ?? (typeof words === "object" ? words : JUNK);
    const from = how === "junk" && !WRITTEN.has(chosen) ? JUNK : known;
    const text = from[value % from.length]!;
    const isFlag = options[chosen]?.type === "boolean";
    if (how === "alone" || (isFlag && how !== "joined")) args.push(`--${chosen}`);
    else args.push(...(how === "joined" ? [`--${chosen}=${text}`] : [`--${chosen}`, text]));
  }
  return args;
}

/** Calls of every verb with options that are right, wrong, doubled or unknown. */
export function callsWith(...given: Parameters<typeof filesFor>): fc.Arbitrary<Call> {
  const first = fc.oneof(
    { weight: 8, arbitrary: fc.constant("@s.json") },
    { weight: 1, arbitrary: fc.constantFrom("@n.json", "@empty", "@nowhere", "@", "@w.csv", "", "-", "\u0000") },
  );
  const args = fc
    .record({ verb: pick, first, choices: fc.array(choice, { maxLength: 4 }) })
    .map(({ verb, first, choices }) => argsOf(verb, first, choices));
  return fc
    .record({ files: filesFor(...given), args })
    .map((call) => ({ ...call, [fc.toStringMethod]: () => inWords(call) }));
}

/** The call, and those of its files that it names. */
function inWords({ files, args }: Call): string {
  const named = Object.entries(files).filter(([name]) => args.some((arg) => arg.includes(`@${name}`)));
  return [JSON.stringify(args), ...named.map(([name, text]) => `${name}: ${JSON.stringify(text)}`)].join("\n");
}

/** Makes the call in a folder of its own, and holds what comes of it against what is promised of every call. */
export async function callWell(call: Call, run: (args: readonly string[]) => Promise<Ended>): Promise<void> {
  const folder = mkdtempSync(join(tmpdir(), "duskline-fuzz-"));
  mkdirSync(join(folder, "here"));
  try {
    for (const [name, text] of Object.entries(call.files)) writeFileSync(join(folder, "here", name), text);
    const placed = call.args.map((arg) =>
      arg.replace(/^([^=]*=)?[@>]/, (_, before = "") => `${before}${folder}/here/`),
    );
    const ended = await run(placed);
    const written = readdirSync(join(folder, "here")).filter((name) => !(name in call.files));
    mustEndWell(ended, [...call.args, ...Object.values(call.files)], placed);
    for (const name of written) {
      if (name.endsWith(".part")) throw new Error(`a draft is left behind: ${name}`);
      mustSayNumbers(read(join(folder, "here", name)), Object.values(call.files), name);
    }
    for (const [name, text] of Object.entries(call.files))
      if (!existsSync(join(folder, "here", name)) || read(join(folder, "here", name)) !== text)
        throw new Error(`${name} was written over`);
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

/** Answers a call in this process. */
export async function answerHere(args: readonly string[]): Promise<Ended> {
  // Pictures and reports carry rules of style, which are files that only a bundler can read.
  const isStyled = args[0] === "report" || args.some((arg) => arg.startsWith("--svg"));
  // No program can be called with a NUL in its arguments.
  const isCallable = !args.some((arg) => arg.includes("\u0000"));
  if (isStyled && isCallable && process.env.VITEST === undefined) return answerApart(args);
  const printed: string[] = [];
  const complaints: string[] = [];
  const code = await commandLine(args, {
    print: (text) => printed.push(text),
    complain: (sentence) => complaints.push(sentence),
    progress: () => {},
    drafting: () => {},
    input: async function* () {},
    ask: null,
  });
  return { code, printed: printed.join("\n"), complaints };
}

/** Answers a call as a program of its own, as a person would. */
export async function answerApart(args: readonly string[]): Promise<Ended> {
  const { status, stdout, stderr } = spawnSync(process.execPath, ["dist/duskline.js", ...args], {
    encoding: "utf8",
    maxBuffer: 200_000_000,
  });
  return { code: status, printed: stdout, complaints: stderr.split("\n").filter((line) => line !== "") };
}

const NO_NUMBER = /\bNaN\b|Infinity|undefined|\[object /;

/** What nobody wrote in a file or in the call was made by us. */
function mustSayNumbers(text: string, given: readonly string[], where: string): void {
  const [word] = NO_NUMBER.exec(text) ?? [];
  if (word !== undefined && !given.some((each) => each.includes(word)))
    throw new Error(`${where} says ${word}: ${text.slice(Math.max(0, text.indexOf(word) - 200)).slice(0, 400)}`);
}

// biome-ignore lint/suspicious/noControlCharactersInRegex: they are what is looked for
const MOVES_THE_TERMINAL = /[\u0000-\u0008\u000b-\u001f\u007f-\u009f\u202a-\u202e\u2066-\u2069]/;

function mustEndWell({ code, printed, complaints }: Ended, given: readonly string[], args: readonly string[]): void {
  const said = [printed, ...complaints].join("\n");
  if (code === null || ![0, 1, 2].includes(code)) throw new Error(`it ends with ${code}: ${said.slice(0, 500)}`);
  if (/\n\s+at .*[.:]\d+:\d+/.test(said)) throw new Error(`a stack: ${said.slice(0, 500)}`);
  const moves = MOVES_THE_TERMINAL.exec(said);
  if (moves !== null)
    throw new Error(
      `it moves the terminal: ${JSON.stringify(said.slice(Math.max(0, moves.index - 40), moves.index + 20))}`,
    );
  mustSayNumbers(printed, given, "what is printed");
  // With -o the answer is in the file, and what is printed says so.
  const isInFile = args.some((arg) => /^(-o|--output)/.test(arg));
  const isJson = args.includes("--json") && !args.includes("--help") && !isInFile;
  if (code === 0) {
    if (printed.trim() === "") throw new Error("it says nothing, and ends well");
    if (complaints.length > 0) throw new Error(`it ends well, and complains: ${complaints[0]}`);
    if (isJson) JSON.parse(printed);
  } else if (complaints.length === 0) {
    // What is wrong stands in the document that was asked for.
    if (printed.trim() === "") throw new Error(`it ends with ${code} without a word`);
    if (isJson) JSON.parse(printed);
  } else mustBeSentences(complaints.map(withoutPaths));
}

/** Where a file lies is nobody's words. */
const withoutPaths = (sentence: string) => sentence.replaceAll(/\S*\/duskline-fuzz-[\w./-]*\w/g, '""');
