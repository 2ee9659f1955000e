import { parseArgs } from "node:util";
import { actualVerb } from "./actualVerb.ts";
import { CallError } from "./callError.ts";
import { checkVerb } from "./checkVerb.ts";
import { driversVerb } from "./driversVerb.ts";
import { explainVerb } from "./explainVerb.ts";
import { gearVerb } from "./gearVerb.ts";
import { harmless } from "./harmless.ts";
import { learnVerb } from "./learnVerb.ts";
import { ledgerVerb } from "./ledgerVerb.ts";
import { limitsVerb } from "./limitsVerb.ts";
import { oddsVerb } from "./oddsVerb.ts";
import { allowWeatherAnywhere } from "./openScenario.ts";
import { OutputError } from "./outputError.ts";
import { packVerb } from "./packVerb.ts";
import { reachVerb } from "./reachVerb.ts";
import { reportVerb } from "./reportVerb.ts";
import { sizeVerb } from "./sizeVerb.ts";
import { spotsVerb } from "./spotsVerb.ts";
import { traceVerb } from "./traceVerb.ts";
import type { Verb } from "./verb.ts";
import { versusVerb } from "./versusVerb.ts";

/** All words of the command line. */
export const VERBS: readonly Verb[] = [
  traceVerb,
  oddsVerb,
  versusVerb,
  sizeVerb,
  driversVerb,
  reachVerb,
  packVerb,
  spotsVerb,
  learnVerb,
  actualVerb,
  limitsVerb,
  ledgerVerb,
  explainVerb,
  checkVerb,
  reportVerb,
  gearVerb,
];

/** Ends of the program: all is well; the scenario is wrong; the call is wrong; the answer could not be written whole. */
const OK = 0;
const SCENARIO_WRONG = 1;
const CALL_WRONG = 2;
export const OUTPUT_BROKEN = 4;
/** A promise of ours is broken; never the caller's doing. */
const FAULT = 3;

/** Where the command line says what it says, one text at a time, with nothing in it that a terminal obeys. */
export interface Said {
  readonly print: (text: string) => void;
  readonly complain: (sentence: string) => void;
}

function overview(): string {
  return [
    "duskline VERB SCENARIO [options]",
    "",
    ...VERBS.map((verb) => `  ${verb.usage}\n      ${verb.purpose}`),
    "",
    "  VERB --help says more. Exit codes: 0 all is well, 1 the scenario or notebook is wrong, 2 the call is wrong,\n  3 duskline itself is at fault, 4 the answer could not be written whole.",
  ].join("\n");
}

function helpOn(verb: Verb): string {
  const options = [
    ...(verb.takes === undefined ? [["--variant ID", "work with this variant of the scenario"]] : []),
    ...(verb.takes === "WORDS" ? [] : [["--weather-anywhere", "let weather.file lie outside the scenario's folder"]]),
    ...Object.entries(verb.options).map(([name, option]) => [
      `${option.short === undefined ? "" : `-${option.short}, `}--${name}${option.type === "string" ? " …" : ""}`,
      option.help,
    ]),
    ["--help", "this text"],
  ];
  return [
    `duskline ${verb.usage}`,
    "",
    verb.purpose,
    "",
    ...options.map(([name, help]) => `  ${name!.padEnd(14)} ${help}`),
  ].join("\n");
}

/** A number below 0 behind an option is its value and no option of its own: --coldest -20 means --coldest=-20. */
function withNegatives(args: readonly string[], options: Readonly<Record<string, { type: string }>>): string[] {
  const joined: string[] = [];
  for (let k = 0; k < args.length; k++) {
    const [arg, next] = [args[k]!, args[k + 1]];
    const takesText = arg.startsWith("--") && options[arg.slice(2)]?.type === "string";
    if (takesText && next !== undefined && /^-[\d.]/.test(next)) joined.push(`${arg}=${args[++k]}`);
    else if (arg === "--") return [...joined, ...args.slice(k)];
    else joined.push(arg);
  }
  return joined;
}

/** Names of what a verb takes, its own first. */
function namesOf(verb: Verb): string[] {
  const own = Object.keys(verb.options).filter((name) => name !== "force");
  const first = verb.takes === undefined ? ["variant"] : [];
  const last = verb.takes === "WORDS" ? [] : ["weather-anywhere"];
  return [...first, ...own, "help", ...("force" in verb.options ? ["force"] : []), ...last];
}

/** @returns what parseArgs makes of the call; @throws CallError in our own words */
function parse(verb: Verb, args: readonly string[]) {
  const options = Object.fromEntries(
    Object.entries(verb.options).map(([name, { type, short }]) => [
      name,
      { type, ...(short === undefined ? {} : { short }) },
    ]),
  );
  try {
    return parseArgs({
      args: withNegatives(args, options),
      allowPositionals: true,
      options: {
        ...options,
        ...(verb.takes === undefined ? { variant: { type: "string" as const } } : {}),
        ...(verb.takes === "WORDS" ? {} : { "weather-anywhere": { type: "boolean" as const } }),
        help: { type: "boolean" as const },
      },
    });
  } catch (error) {
    throw new CallError(
      `${(error as Error).message.split(". ")[0]}. Known here: ${namesOf(verb)
        .map((name) => `--${name}`)
        .join(", ")}.`,
    );
  }
}

async function answer(args: readonly string[], { print, complain }: Said): Promise<number> {
  const [name, ...rest] = args;
  if (name === undefined || name === "help" || name === "--help" || name === "-h") {
    print(overview());
    return name === undefined ? CALL_WRONG : OK;
  }
  const verb = VERBS.find((each) => each.name === name);
  if (verb === undefined)
    throw new CallError(`There is no verb "${name}". Known: ${VERBS.map((each) => each.name).join(", ")}.`);
  const { values, positionals } = parse(verb, rest);
  if (values.help === true) {
    print(helpOn(verb));
    return OK;
  }
  const [scenario, ...others] = positionals;
  if (scenario === undefined)
    throw new CallError(
      verb.takes === "WORDS"
        ? `${verb.name} needs words to look for: duskline ${verb.usage}.`
        : `${verb.name} needs a ${(verb.takes ?? "SCENARIO").toLowerCase()} file: duskline ${verb.usage}.`,
    );
  if (others.length > 0 && verb.takesSeveral !== true)
    throw new CallError(
      `${verb.name} takes one ${(verb.takes ?? "SCENARIO").toLowerCase()} file, and "${others[0]}" is one too many.`,
    );
  const { variant, ...more } = values as Record<string, string | boolean | undefined>;
  allowWeatherAnywhere(more["weather-anywhere"] === true);
  const outcome = await verb.run({
    scenario,
    others,
    variant: typeof variant === "string" ? variant : undefined,
    values: more,
    print,
  });
  if (outcome.ok) return OK;
  for (const problem of outcome.problems) complain(problem.message);
  return SCENARIO_WRONG;
}

/**
 * Answers one call of the command.
 * @param args what stands behind the program's name
 * @returns the code that the program ends with
 */
export async function commandLine(args: readonly string[], { print, complain }: Said): Promise<number> {
  const said: Said = {
    print: (text) => print(harmless(text)),
    complain: (sentence) => complain(harmless(sentence)),
  };
  try {
    return await answer(args, said);
  } catch (error) {
    const isCall = error instanceof CallError || error instanceof OutputError;
    const message = error instanceof Error ? error.message : String(error);
    said.complain(
      isCall ? message : `This is a fault of duskline and not yours; please report it with the scenario: ${message}`,
    );
    return error instanceof OutputError ? OUTPUT_BROKEN : isCall ? CALL_WRONG : FAULT;
  }
}
