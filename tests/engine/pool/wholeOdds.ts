import type { OddsPart } from "../../../engine/odds/oddsPart.ts";
import { mergePackedOdds, type PackedOdds } from "../../../engine/odds/packedOdds.ts";
import type { TaskEnd } from "../../../engine/pool/taskOrder.ts";

/** What a task for odds came to. */
export function wholeOdds(end: TaskEnd): OddsPart {
  if (end.kind !== "part") throw new Error(`the task ended in ${end.kind}`);
  return mergePackedOdds([end.part as PackedOdds]);
}
