import packageFile from "../../package.json" with { type: "json" };
import { nearestName } from "../nearestName.ts";
import { makeCallContext } from "./callContext.ts";
import { CallError } from "./callError.ts";
import { harmless } from "./harmless.ts";
import { helpOn, overview } from "./helpText.ts";
import { OutputError } from "./outputError.ts";
import { type ParsedCall, parseCall } from "./parseCall.ts";
import { printInto } from "./printInto.ts";
import type { Said } from "./said.ts";
import type { Verb, VerbCall } from "./verb.ts";
import { VERBS } from "./verbs.ts";
import { requireRoom, writeText } from "./writeFile.ts";

/** Ends of the program: all is well; the scenario is wrong; the call is wrong; the answer could not be written whole. */
const OK = 0;
const SCENARIO_WRONG = 1;
const CALL_WRONG = 2;
export const OUTPUT_BROKEN = 4;
/** A promise of ours is broken; never the caller's doing. */
export const FAULT = 3;

function verbOf(name: string): Verb {
  const verb = VERBS.find((each) => each.name === name);
  if (verb !== undefined) return verb;
  const names = VERBS.map((each) => each.name);
  const meant = nearestName(name, [...names, "help"]);
  const remedy = meant === null ? "" : ` Did you mean ${meant}?`;
  throw new CallError(`There is no verb "${name}".${remedy} Known: ${names.join(", ")}, help.`);
}

const firstOf = ({ takes }: Verb) =>
  typeof takes === "object" ? "word" : `${(takes ?? "SCENARIO").toLowerCase()} file`;

/** What stands first behind the verb, and what else. @throws CallError where it is lacking or too much */
function filesOf(verb: Verb, positionals: readonly string[]): Pick<VerbCall, "scenario" | "others"> {
  const [scenario, ...others] = positionals;
  if (scenario === undefined && verb.takes !== "FILE")
    throw new CallError(
      verb.takes === "WORDS"
        ? `${verb.name} needs words to look for: duskline ${verb.usage}.`
        : `${verb.name} needs a ${firstOf(verb)}: duskline ${verb.usage}.`,
    );
  if (others.length > 0 && verb.takesSeveral !== true)
    throw new CallError(`${verb.name} takes one ${firstOf(verb)}, and "${others[0]}" is one too many.`);
  return { scenario: scenario ?? "", others };
}

async function runVerb(verb: Verb, { values, positionals }: ParsedCall, said: Said): Promise<number> {
  const { variant, ...more } = values;
  const { input, progress, drafting, print, ask } = said;
  const context = makeCallContext({ weatherAnywhere: values["weather-anywhere"] === true, input, progress });
  const force = values.force === true;
  const call: VerbCall = {
    ...filesOf(verb, positionals),
    variant: typeof variant === "string" ? variant : undefined,
    values: more,
    context,
    write: (path, text) => writeText(path, text, { force, inputs: context.read() }, drafting),
    requireRoom: (path) => requireRoom(path, { force, inputs: [] }),
    print,
    ask,
  };
  const outcome = await (verb.writesItself === true ? verb.run(call) : printInto(verb, call));
  if (outcome.ok) return OK;
  for (const problem of outcome.problems) said.complain(problem.message);
  return SCENARIO_WRONG;
}

async function answer(args: readonly string[], said: Said): Promise<number> {
  const [name, ...rest] = args;
  if (name === "--version") {
    said.print(`duskline ${packageFile.version}`);
    return OK;
  }
  if (name === undefined || name === "--help" || name === "-h" || (name === "help" && rest.length === 0)) {
    said.print(overview(VERBS));
    return name === undefined ? CALL_WRONG : OK;
  }
  if (name === "help") {
    if (rest.length > 1) throw new CallError(`help takes one verb, and "${rest[1]}" is one too many.`);
    said.print(rest[0] === "help" ? overview(VERBS) : helpOn(verbOf(rest[0]!)));
    return OK;
  }
  const verb = verbOf(name);
  const parsed = parseCall(verb, rest);
  if (parsed.values.help === true) {
    said.print(helpOn(verb));
    return OK;
  }
  return runVerb(verb, parsed, said);
}

/**
 * Answers one call of the command.
 * @param args what stands behind the program's name
 * @returns the code that the program ends with
 */
export async function commandLine(args: readonly string[], { print, complain, ...rest }: Said): Promise<number> {
  const said: Said = {
    ...rest,
    print: (text) => print(harmless(text)),
    complain: (sentence) => complain(harmless(sentence)),
  };
  try {
    return await answer(args, said);
  } catch (error) {
    const isCall = error instanceof CallError || error instanceof OutputError;
    const message = error instanceof Error ? error.message : String(error);
    said.complain(isCall ? message : faultSentence(message));
    return error instanceof OutputError ? OUTPUT_BROKEN : isCall ? CALL_WRONG : FAULT;
  }
}

export const faultSentence = (message: string) =>
  `This is a fault of duskline and not yours; please report it with the scenario: ${message}`;
