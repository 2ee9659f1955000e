import { commandLine } from "../../engine/cli/commandLine.ts";
import type { Said } from "../../engine/cli/said.ts";
import type { Call } from "./duskline.ts";

/** Answers a call in this process: what a program of its own would print, in a fraction of the time. @param input its standard input */
export async function callHere(
  args: readonly string[],
  { input = "", ask = null }: { input?: string; ask?: Said["ask"] } = {},
): Promise<Call> {
  const [out, err]: [string[], string[]] = [[], []];
  const code = await commandLine(args, {
    print: (text) => out.push(`${text}\n`),
    complain: (sentence) => err.push(`${sentence}\n`),
    progress: () => {},
    drafting: () => {},
    input: async function* () {
      yield new TextEncoder().encode(input);
    },
    ask,
  });
  return { code, out: out.join(""), err: err.join("") };
}
