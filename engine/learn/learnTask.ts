import { prepareEnsemble } from "../ensemble/prepareEnsemble.ts";
import type { Surroundings } from "../run/surroundings.ts";
import type { Problem } from "../scenario/problem.ts";
import type { Scenario } from "../scenario/scenario.ts";
import { learn } from "./learn.ts";
import type { LearnHooks } from "./learnHooks.ts";
import { type LearnReport, learnReport } from "./learnReport.ts";
import type { Readings } from "./reading.ts";
import { readReadings } from "./readReadings.ts";
import { type StillHelps, whatStillHelps } from "./whatStillHelps.ts";

/** A scenario with its readings: plain data, so that a worker can be sent it. */
export interface LearnTask {
  readonly scenario: Scenario;
  readonly surroundings: Surroundings;
  /** Any text: the same seed gives the same members. */
  readonly seed: string;
  /** 100…20000. */
  readonly members: number;
  readonly readings: Readings["readings"];
}

/** What came of it; plain data too. */
export type LearnEnd =
  | {
      readonly ok: true;
      readonly report: LearnReport;
      readonly helps: readonly StillHelps[];
      readonly remarks: readonly string[];
    }
  | { readonly ok: false; readonly problems: readonly Problem[] };

/**
 * Learns from readings and tries what can still be done, from plain data to plain data: for a worker.
 * @param hooks progress, turns for others, and a way to stop it
 * @throws RangeError if members leaves its range; LearnCancelled once the hooks say so
 */
export async function runLearn(task: LearnTask, hooks: LearnHooks = {}): Promise<LearnEnd> {
  const ready = prepareEnsemble(task.scenario, task.surroundings, task.seed);
  if (!ready.ok) return ready;
  const { ensemble } = ready;
  const document = { format: "duskline-readings", version: 1, readings: task.readings };
  const read = readReadings(document, ensemble.prepared.grid);
  if (!read.ok) return read;
  const learned = await learn(ensemble, read.readings, task.members, hooks);
  const report = learnReport(learned);
  return { ok: true, report, helps: await whatStillHelps(learned, hooks), remarks: ensemble.remarks };
}
