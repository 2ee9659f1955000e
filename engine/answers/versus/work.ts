import { TaskCancelled, type TaskRun } from "../../task/taskRun.ts";
import type { PairedCharge } from "../../versus/pairedCharge.ts";
import { pairsTask } from "../../versus/pairsTask.ts";
import type { Want } from "../asked.ts";
import type { Work } from "../kind.ts";
import { Refused } from "../refused.ts";
import type { Shop, Started } from "../shop.ts";
import type { VersusChoices } from "./ask.ts";
import { type VersusPicture, versusPicture } from "./versusPicture.ts";

/** Pairs from which the picture of a difference is drawn; odds and intervals come from all of them. */
const PAIRS = 200;
const COARSE_PAIRS = 40;
const STRETCH_PAIRS = 450;

export const workVersus: Work<VersusChoices, VersusPicture> = (want, shop) => answer(want, shop, shop.upTo);

async function answer(want: Want<VersusChoices>, shop: Shop, upTo: number): Promise<VersusPicture> {
  const { documents, seed, members } = want;
  const [first, second] = (await Promise.all(documents.map((document) => shop.start(document, seed, members)))) as [
    Started,
    Started,
  ];
  const parts = [first, second].map((side, k) => shop.run(side, k, upTo));
  const pairs = want.choices.isUndrawn ? null : pairsOf(first, second, want, shop, upTo);
  const [paired] = await Promise.all([pairs && settled(pairs, isApart(first, second)), ...parts]);
  // What each has by now: one that other entries have driven further is shown with as many members as both have.
  const [one, other] = [first.part!, second.part!];
  if (one.to !== other.to) return answer(want, shop, Math.max(one.to, other.to));
  // Pairs that are run here need what stands about.
  const ensemble = paired === undefined ? shop.ensemble : shop.shown;
  return versusPicture({ ensemble: ensemble(first), part: one }, { ensemble: ensemble(second), part: other }, paired);
}

/** Waits in line behind the odds themselves. An order carries one weather file; pairs with two are run where the picture is made. */
function pairsOf(first: Started, second: Started, { seed, members }: Want, shop: Shop, upTo: number) {
  const files = [first, second].flatMap(({ surroundings }) => surroundings.weatherFile ?? []);
  if (new Set(files).size > 1) return undefined;
  return shop.pool.run(
    pairsTask,
    {
      scenario: first.scenario,
      other: second.scenario,
      surroundings: shop.sent({ ...second.surroundings, ...first.surroundings }),
      seed,
      from: 0,
      to: Math.min(upTo, upTo < members ? COARSE_PAIRS : PAIRS),
    },
    { signal: shop.signal, fewest: COARSE_PAIRS, most: STRETCH_PAIRS },
  );
}

const isApart = (first: Started, second: Started) => {
  const when = ({ scenario: { time, place } }: Started) => JSON.stringify([time, place]);
  return when(first) !== when(second);
};

/** The pairs; null where the two do not last equally long. */
async function settled(pairs: Promise<TaskRun<PairedCharge>>, isApart: boolean): Promise<PairedCharge | null> {
  try {
    const run = await pairs;
    if (!run.ok) throw new Refused(run.problems);
    return run.part;
  } catch (error) {
    if (error instanceof TaskCancelled || error instanceof Refused || !isApart) throw error;
    return null;
  }
}
