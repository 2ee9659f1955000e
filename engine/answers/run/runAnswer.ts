import { endMs } from "../../ruler/readingTime.ts";
import type { Look } from "../../words/look.ts";
import { type Answer, answerOf } from "./answerOf.ts";
import type { RunPicture } from "./runPicture.ts";

/** What one run says. @param withWords names of the scenario, and of what is in it; @param look the scenario's */
export function runAnswer(run: RunPicture, withWords: readonly string[], look: Look): Answer {
  const { verdict, ruler, reserveShare, ledger } = run;
  const { solarWh, spilledWh, wantedWh } = ledger;
  return answerOf({ verdict, ruler, endMs: endMs(run), reserveShare, solarWh, spilledWh, wantedWh, withWords, look });
}
