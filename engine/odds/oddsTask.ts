import type { PreparedEnsemble } from "../ensemble/prepareEnsemble.ts";
import { MemberFault } from "../fault.ts";
import type { Scenario } from "../scenario/scenario.ts";
import {
  FEWEST_RUN_ONCE,
  membersAtOnce,
  ofOneScenario,
  type Stretch,
  type TaskKind,
  type TaskWork,
} from "../task/taskKind.ts";
import type { TaskStore } from "../task/taskStore.ts";
import { countingOf } from "./odds.ts";
import { makeOddsPart, type OddsPart } from "./oddsPart.ts";
import { makeOddsRooms } from "./oddsRooms.ts";
import { mergePackedOdds, type PackedOdds, packOdds } from "./packedOdds.ts";
import { stepCount } from "./stepCount.ts";

/** Members of a scenario's ensemble. */
export interface OddsTask extends Stretch {
  readonly scenario: Scenario;
}

/** Memory in which members are put together. */
export interface OddsMemory {
  /** The part that the members follow, which is put before them: it grows in its own memory and is not to be used afterwards. */
  readonly before?: OddsPart | null;
  /** Where there is none: a part that nobody looks at any more, whose memory is taken for the counts. */
  readonly spare?: OddsPart | null;
}

/** Members counted; they are sent packed. */
export const oddsTask: TaskKind<"odds", OddsTask, PackedOdds, OddsPart, OddsMemory> = {
  name: "odds",
  fewest: FEWEST_RUN_ONCE,
  ...ofOneScenario,
  work: (task, store, at) => {
    const ready = store.ensemble(task);
    return ready.ok ? { ok: true, value: counted(ready.value, task, store, at) } : ready;
  },
  merge: (parts, { before, spare } = {}) => mergePackedOdds(parts, before, spare),
};

function counted(
  ensemble: PreparedEnsemble,
  { from: first, to: end }: OddsTask,
  store: TaskStore,
  at: (member: number) => void,
): TaskWork<PackedOdds> {
  const { stepMembers } = store;
  const rooms = store.own(makeOddsRooms);
  const counting = countingOf(ensemble);
  const taken = rooms.take(ensemble);
  const room = taken.members;
  const part = makeOddsPart(ensemble.prepared, ensemble.seed, first, end, taken.counts);
  const { endShare, demandWh } = part.outcomes;
  const run = (from: number, to: number) => {
    const { lanes } = room.run;
    for (let next = from; next < to; next += lanes) {
      const count = Math.min(lanes, to - next);
      at(next);
      stepMembers(ensemble, next, count, room);
      for (let lane = 0; lane < count; lane++) {
        const member = next + lane;
        at(member);
        stepCount(ensemble.prepared, room.run, lane, member, counting, part);
        if (!Number.isFinite(endShare[member - first]! + demandWh[member - first]!)) {
          throw new MemberFault(ensemble.seed, member, `it ends with a charge of ${endShare[member - first]}`);
        }
      }
    }
  };
  const packed = () => {
    const sent = packOdds(part);
    rooms.giveBack(taken);
    return sent;
  };
  return { membersAtOnce: membersAtOnce(ensemble.prepared.grid.steps, 1), run, part: packed };
}
