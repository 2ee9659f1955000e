import { replayMember } from "../../odds/odds.ts";
import { type Trace, tracePrepared } from "../../run/trace.ts";
import type { Work } from "../kind.ts";
import { valueOrRefused } from "../refused.ts";
import type { RunAsks, Why } from "./ask.ts";
import { type RunPicture, runPicture } from "./runPicture.ts";

/** Which run: a member of the seed's ensemble; under the stated weather where it is left out. */
export interface RunChoices {
  readonly member?: number;
}

/** The run itself, with every quantity on the way. */
export const workTrace: Work<RunChoices, Trace> = async ({ documents, choices: { member }, seed }, shop) => {
  const opened = await shop.open(documents[0]!);
  if (member !== undefined) return replayMember(shop.ensemble({ ...opened, seed }), member);
  return tracePrepared(valueOrRefused(shop.store.prepared(opened)));
};

export const workPicture: Work<object, RunPicture> = async (want, shop) =>
  runPicture(await workTrace({ ...want, choices: {} }, shop));

export const workRun: Work<RunAsks, RunPicture | Why> = async (want, shop) => {
  const { whyMs } = want.choices;
  if (whyMs === undefined) return workPicture(want, shop);
  const run = await workTrace({ ...want, choices: {} }, shop);
  const { explain } = await import("../../run/explain.ts");
  return { parts: explain(run, whyMs) };
};
