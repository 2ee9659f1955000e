import type { PreparedEnsemble } from "../ensemble/prepareEnsemble.ts";
import type { OddsPart } from "../odds/oddsPart.ts";
import { memberRange } from "./memberRange.ts";
import type { Opened } from "./openScenario.ts";
import { runOdds } from "./pool.ts";

/**
 * Runs the members that `--members` asks for on all cores, and says on a terminal how far it has come.
 * @param members the option's value
 */
export async function runOnAllCores(
  ensemble: PreparedEnsemble,
  members: string | boolean | undefined,
): Promise<Opened<OddsPart>> {
  const { from, to } = memberRange(members);
  const { scenario } = ensemble.prepared;
  const say = process.stderr.isTTY
    ? (done: number) => process.stderr.write(`\r${done} of ${to - from} members `)
    : () => {};
  const run = await runOdds(scenario, ensemble.surroundings, ensemble.seed, from, to, { onProgress: say });
  if (process.stderr.isTTY) process.stderr.write("\r\u001b[K");
  return run.ok ? { ok: true, value: run.part } : run;
}
