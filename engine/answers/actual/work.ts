import type { MeterLog } from "../../meter/meterLog.ts";
import type { Work } from "../kind.ts";
import { Refused } from "../refused.ts";
import { type ActualPicture, actualPicture, type HeldAgainst, heldAgainst } from "./actualPicture.ts";
import type { KeptLog } from "./doc.ts";
import { meterLogOf } from "./keptLog.ts";

/** What is held against a plan. */
export interface LogChoices {
  readonly log: MeterLog;
  /** Of the search for corrections; its own usual one where it is left out. */
  readonly seed?: string;
}

/** A log as it was read, held against the plan. */
export const workLog: Work<LogChoices, HeldAgainst> = async ({ documents, choices: { log, seed } }, shop) => {
  const { scenario, surroundings } = await shop.open(documents[0]!);
  const held = heldAgainst(scenario, log, surroundings, seed);
  if (!held.ok) throw new Refused(held.problems);
  return held;
};

export const workActual: Work<KeptLog, ActualPicture> = async (want, shop) => {
  const choices = { log: meterLogOf(want.choices), seed: want.seed };
  return actualPicture(await workLog({ ...want, choices }, shop));
};
