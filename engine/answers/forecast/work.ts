import { oddsReport } from "../../odds/odds.ts";
import type { Work } from "../kind.ts";
import { type OddsPicture, oddsPicture } from "./oddsPicture.ts";

export const workOdds: Work<object, OddsPicture> = async ({ documents, seed, members }, shop) => {
  const started = await shop.start(documents[0]!, seed, members);
  await shop.run(started, 0);
  const ensemble = shop.shown(started);
  // What it has by now: a part that was looked at before may have grown in its memory since.
  return oddsPicture(ensemble, oddsReport(ensemble, started.part!));
};
