import { EngineFault } from "../fault.ts";
import type { Scenario } from "../scenario/scenario.ts";
import { FEWEST_RUN_ONCE, type Stretch, type TaskKind, workInParts } from "../task/taskKind.ts";
import { mergePairedCharge, type PairedCharge, pairedCharge } from "./pairedCharge.ts";

/** Members of two scenarios, one against the other. */
export interface PairsTask extends Stretch {
  readonly scenario: Scenario;
  readonly other: Scenario;
}

/** The same members of two scenarios, one against the other. */
export const pairsTask: TaskKind<"pairs", PairsTask, PairedCharge> = {
  name: "pairs",
  fewest: FEWEST_RUN_ONCE,
  scenarios: ({ scenario, other }) => [scenario, other],
  varies: () => [],
  work: (task, store) => {
    const first = store.ensemble(task);
    if (!first.ok) return first;
    const second = store.ensemble({ ...task, scenario: task.other });
    if (!second.ok) return second;
    const partOf = (from: number, to: number) => {
      const part = pairedCharge(first.value, second.value, from, to, store.stepMembers);
      if (part === null) throw new EngineFault("a pair of scenarios does not last equally long");
      return part;
    };
    return { ok: true, value: workInParts(first.value, 2, partOf, mergePairedCharge) };
  },
  merge: mergePairedCharge,
};
