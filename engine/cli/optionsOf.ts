import type { Verb, VerbOption } from "./verb.ts";

const VARIANT: VerbOption = { type: "string", help: "work with this variant of the scenario" };
const OUTPUT: VerbOption = { type: "string", short: "o", takes: "FILE", help: "write it into this file and not here" };
const FORCE: VerbOption = { type: "boolean", help: "write over a file that is there already" };
const ANYWHERE: VerbOption = { type: "boolean", help: "let weather.file lie outside the scenario's folder" };
const HELP: VerbOption = { type: "boolean", short: "h", help: "this text" };

/** Whether a verb reads scenarios, which may name weather files. */
const readsScenarios = ({ takes }: Verb) => takes === undefined || takes === "NOTEBOOK";

/** All options that a verb takes, its own and those of all verbs, in the order in which help lists them. */
export function optionsOf(verb: Verb): Readonly<Record<string, VerbOption>> {
  return {
    ...(verb.takes === undefined ? { variant: VARIANT } : {}),
    ...verb.options,
    ...(verb.options.output === undefined ? { output: OUTPUT } : {}),
    ...(readsScenarios(verb) ? { "weather-anywhere": ANYWHERE } : {}),
    force: FORCE,
    help: HELP,
  };
}
