import { CallError } from "./callError.ts";
import { completionScript, SHELLS, type Shell } from "./completionScript.ts";
import type { Verb } from "./verb.ts";

/** @param verbs the list of all verbs, which this one is itself in */
export const completionVerb = (verbs: () => readonly Verb[]): Verb => ({
  name: "completion",
  usage: `completion ${SHELLS.join("|")}`,
  purpose: "Prints what lets a shell complete verbs, options and files; docs/command-line.md says where it goes.",
  takes: SHELLS,
  options: {},
  run: async ({ scenario, print }) => {
    const shell = SHELLS.find((each) => each === scenario) as Shell | undefined;
    if (shell === undefined)
      throw new CallError(`completion is for ${SHELLS.join(", ")}, and "${scenario}" is none of them.`);
    print(completionScript(shell, verbs()).trimEnd());
    return { ok: true };
  },
});
