import type { PreparedEnsemble } from "../../ensemble/prepareEnsemble.ts";
import { oddsReport } from "../../odds/odds.ts";
import type { OddsPart } from "../../odds/oddsPart.ts";
import type { Work } from "../kind.ts";
import { type OddsPicture, oddsPicture } from "./oddsPicture.ts";

/** Members as they were counted, with what it takes to say what they came to. */
export interface CountedMembers {
  readonly ensemble: PreparedEnsemble;
  readonly part: OddsPart;
}

export const workMembers: Work<object, CountedMembers> = async ({ documents, seed, members }, shop) => {
  const started = await shop.start(documents[0]!, seed, members);
  await shop.run(started, 0);
  // What it has by now: a part that was looked at before may have grown in its memory since.
  return { ensemble: shop.shown(started), part: started.part! };
};

/** What it takes to say what members came to that were counted elsewhere. */
export const workNone: Work<object, PreparedEnsemble> = async ({ documents, seed }, shop) =>
  shop.shown({ ...(await shop.open(documents[0]!)), seed });

export const workOdds: Work<object, OddsPicture> = async (want, shop) => {
  const { ensemble, part } = await workMembers(want, shop);
  return oddsPicture(ensemble, oddsReport(ensemble, part));
};
