import { parseArgs } from "node:util";
import { nearestName } from "../nearestName.ts";
import { STANDARD_INPUT } from "./callContext.ts";
import { CallError } from "./callError.ts";
import { optionsOf } from "./optionsOf.ts";
import type { Verb, VerbOption } from "./verb.ts";

/** A call of a verb, taken apart. */
export interface ParsedCall {
  readonly values: Readonly<Record<string, string | boolean | undefined>>;
  readonly positionals: readonly string[];
}

/** @returns what stands behind a verb, taken apart; @throws CallError in our own words */
export function parseCall(verb: Verb, args: readonly string[]): ParsedCall {
  const known = optionsOf(verb);
  const options = Object.fromEntries(
    Object.entries(known).map(([name, { type, short }]) => [name, { type, ...(short === undefined ? {} : { short }) }]),
  );
  try {
    const { values, positionals } = parseArgs({ args: withNegatives(args, known), allowPositionals: true, options });
    const parsed = { values: values as ParsedCall["values"], positionals };
    requireOneInput(known, parsed);
    return parsed;
  } catch (error) {
    if (error instanceof CallError) throw error;
    const names = Object.keys(known).map((name) => `--${name}`);
    const message = (error as Error).message.split(". ")[0]!;
    const [, wrong] = /^Unknown option '(--[^']+)'/.exec(message) ?? [];
    const meant = wrong === undefined ? null : nearestName(wrong, names);
    throw new CallError(
      `${message}${meant === null ? "." : `; did you mean ${meant}?`} Known here: ${names.join(", ")}.`,
    );
  }
}

/** A number below 0 behind an option is its value and no option of its own: --coldest -20 means --coldest=-20. */
function withNegatives(args: readonly string[], options: Readonly<Record<string, VerbOption>>): string[] {
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

/** Standard input has one beginning and one end: it is one file and no two. */
function requireOneInput(options: Readonly<Record<string, VerbOption>>, { values, positionals }: ParsedCall): void {
  const fromOptions = Object.entries(values).filter(
    ([name, value]) => value === STANDARD_INPUT && name !== "output" && options[name]?.takes === "FILE",
  );
  const uses = positionals.filter((each) => each === STANDARD_INPUT).length + fromOptions.length;
  if (uses > 1) throw new CallError(`"${STANDARD_INPUT}" is standard input and stands for one file; name the others.`);
}
