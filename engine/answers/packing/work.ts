import { ownedOfPlans } from "../../packing/ownedOfPlans.ts";
import { OwnedList, type OwnedThing } from "../../packing/ownedThing.ts";
import { packingPlan } from "../../packing/packingPlan.ts";
import type { PackingReport } from "../../packing/packingReport.ts";
import { fittedNames, packList } from "../../packing/packList.ts";
import { makePackingMemory, type PackingMemory, PackingRefused, runPacking } from "../../packing/runPacking.ts";
import { identities } from "../../task/taskStore.ts";
import type { Work } from "../kind.ts";
import { Refused } from "../refused.ts";
import type { PackingChoices } from "./ask.ts";
import type { PackingPicture } from "./packingPicture.ts";

export const workPacking: Work<PackingChoices, PackingPicture> = async (
  { documents, choices, seed, members },
  shop,
) => {
  const [document, ...others] = documents;
  const { surroundings } = await shop.open(document!);
  const things = choices.owned === null ? ownedOfPlans(documents) : readOwned(choices.owned);
  const ready = packingPlan(document!, others, things);
  if (!ready.ok) throw new Refused(ready.problems);
  const { plan } = ready;
  const fitted = fittedNames(plan);
  const picture = (report: PackingReport): PackingPicture => ({
    report,
    things,
    changes: report.frontier.map(({ key }) => plan.changesOf(key)),
    fitted,
    list: packList(plan, report),
  });
  const report = await runPacking(plan, choices, {
    pool: shop.pool,
    surroundings: shop.sent(surroundings),
    seed,
    members,
    signal: shop.signal,
    memory: memoryOf(shop.store.own(makeMemories), [documents, things, seed, ...identities(surroundings)]),
    early: (known) => shop.early(picture(known)),
    onProgress: (share) => shop.tick(0, Math.round(share * members)),
  }).catch((error: unknown) => {
    throw error instanceof PackingRefused ? new Refused(error.problems) : error;
  });
  return picture(report);
};

/** @throws Refused where a thing of the list says what it may not */
function readOwned(owned: unknown): readonly OwnedThing[] {
  const read = OwnedList.safeParse(owned);
  if (read.success) return read.data;
  const problems = read.error.issues.slice(0, MOST_PROBLEMS).map(({ path, message }) => {
    const [place, field] = path;
    const which =
      typeof place === "number" ? `owned.${place + 1}${field === undefined ? "" : `.${String(field)}`}` : "owned";
    return {
      code: "owned",
      path: ["owned", ...path],
      message: `${which}: ${message}; correct it or take the thing out.`,
    };
  });
  throw new Refused(problems as ConstructorParameters<typeof Refused>[0]);
}

const MOST_PROBLEMS = 8;

/** Lists whose counts are remembered: who moves a limit or the target waits for nothing. */
const KEPT_LISTS = 4;
const makeMemories = (): Map<string, PackingMemory> => new Map();

/** @param of everything that decides who holds: the plan, the list, the seed, climate and weather */
function memoryOf(kept: Map<string, PackingMemory>, of: readonly unknown[]): PackingMemory {
  const key = JSON.stringify(of);
  const memory = kept.get(key) ?? makePackingMemory();
  kept.delete(key);
  kept.set(key, memory);
  const [oldest] = kept.keys();
  if (kept.size > KEPT_LISTS) kept.delete(oldest!);
  return memory;
}
