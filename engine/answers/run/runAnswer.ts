import { endMs } from "../../ruler/readingTime.ts";
import { type Answer, answerOf } from "./answerOf.ts";
import type { RunPicture } from "./runPicture.ts";

/** What one run says. @param withWords names of the scenario, and of what is in it */
export function runAnswer(run: RunPicture, withWords: readonly string[]): Answer {
  const { verdict, ruler, reserveShare, ledger } = run;
  const { solarWh, spilledWh, wantedWh } = ledger;
  return answerOf({ verdict, ruler, endMs: endMs(run), reserveShare, solarWh, spilledWh, wantedWh, withWords });
}
