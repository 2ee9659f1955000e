import { ReachRefused } from "../../reach/makeHeld.ts";
import { reachPlan } from "../../reach/reachPlan.ts";
import type { ReachReport } from "../../reach/reachReport.ts";
import { makeReachMemory, type ReachMemory, runReach } from "../../reach/runReach.ts";
import { identities } from "../../task/taskStore.ts";
import type { Work } from "../kind.ts";
import { Refused } from "../refused.ts";
import type { ReachChoices } from "./ask.ts";
import type { ReachPicture } from "./reachPicture.ts";

export const workReach: Work<ReachChoices, ReachPicture> = async ({ documents, choices, seed, members }, shop) => {
  const [document, ...others] = documents;
  const { surroundings } = await shop.open(document!);
  const ready = reachPlan(document!, others);
  if (!ready.ok) throw new Refused(ready.problems);
  const { plan } = ready;
  const picture = (report: ReachReport): ReachPicture => ({
    report,
    levers: plan.levers.map(({ id, name }) => ({ id, name })),
  });
  const report = await runReach(plan, choices, {
    pool: shop.pool,
    surroundings: shop.sent(surroundings),
    seed,
    members,
    signal: shop.signal,
    memory: memoryOf(shop.store.own(makeMemories), [document, others, seed, ...identities(surroundings)]),
    early: (known) => shop.early(picture(known)),
    onProgress: (share) => shop.tick(0, Math.round(share * members)),
  }).catch((error: unknown) => {
    throw error instanceof ReachRefused ? new Refused(error.problems) : error;
  });
  return picture(report);
};

/** Plans whose members are remembered: who locks a lever or moves the target waits for what is new alone. */
const KEPT_PLANS = 4;
const makeMemories = (): Map<string, ReachMemory> => new Map();

/** @param of everything that decides who holds: the plan, its seed, its climate and weather */
function memoryOf(kept: Map<string, ReachMemory>, of: readonly unknown[]): ReachMemory {
  const key = JSON.stringify(of);
  const memory = kept.get(key) ?? makeReachMemory();
  kept.delete(key);
  kept.set(key, memory);
  const [oldest] = kept.keys();
  if (kept.size > KEPT_PLANS) kept.delete(oldest!);
  return memory;
}
