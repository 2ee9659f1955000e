import { optionsOf } from "./optionsOf.ts";
import type { Verb, VerbOption } from "./verb.ts";

/** Characters before what an option does. */
const ROOM = 22;

/** What `duskline help` prints: every verb in a line. */
export function overview(verbs: readonly Verb[]): string {
  return [
    "duskline VERB SCENARIO [options]",
    "",
    ...verbs.map((verb) => `  ${verb.usage}\n      ${verb.purpose}`),
    "  help [VERB]\n      Says what a verb takes.",
    "",
    "  - in the place of a file to be read is standard input. -o FILE, with every verb, writes the answer into a file.",
    "  --version says which duskline this is.",
    "  Exit codes: 0 all is well, 1 the scenario or notebook is wrong, 2 the call is wrong, 3 duskline itself is at fault,\n  4 the answer could not be written whole, 130 stopped with Ctrl-C.",
  ].join("\n");
}

/** What `duskline help VERB` prints: every option in a line. */
export function helpOn(verb: Verb): string {
  const lines = Object.entries(optionsOf(verb)).map(
    ([name, option]) => `  ${spoken(name, option).padEnd(ROOM)} ${option.help}`,
  );
  return [`duskline ${verb.usage}`, "", verb.purpose, "", ...lines].join("\n");
}

function spoken(name: string, { short, type, takes }: VerbOption): string {
  const value = type === "boolean" ? "" : takes === "FILE" ? " FILE" : " …";
  return `${short === undefined ? "" : `-${short}, `}--${name}${value}`;
}
