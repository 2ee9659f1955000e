import { makeMemberRoom } from "../ensemble/makeMemberRoom.ts";
import type { PreparedEnsemble } from "../ensemble/prepareEnsemble.ts";
import { lanesFor, type MemberRoom } from "../ensemble/stepMember.ts";
import type { Prepared } from "../run/prepare.ts";
import { emptyCounts, type LongCounts } from "./oddsPart.ts";

/** Room for the members of one task. */
export interface TakenRoom {
  /** What its arrays' lengths depend on. */
  readonly shape: string;
  readonly members: MemberRoom;
  readonly counts: LongCounts;
}

/** Memory that goes from one task to the next. */
export interface OddsRooms {
  /** Room for members and to count in, with nothing in it: the memory of what was taken before, if it is back and fits. */
  readonly take: (ensemble: PreparedEnsemble) => TakenRoom;
  readonly giveBack: (taken: TakenRoom) => void;
}

/** A megabyte each; scenarios of one notebook are of few shapes. */
const KEPT_ROOMS = 4;

export function makeOddsRooms(): OddsRooms {
  const back = new Map<string, TakenRoom>();
  return {
    take: (ensemble) => {
      const { steps } = ensemble.prepared.grid;
      const shape = shapeOf(ensemble.prepared);
      const spare = back.get(shape);
      back.delete(shape);
      const members = makeMemberRoom(ensemble, lanesFor(steps), spare?.members);
      return { shape, members, counts: emptyCounts(steps, spare?.counts) };
    },
    giveBack: (taken) => {
      back.set(taken.shape, taken);
      const [oldest] = back.keys();
      if (back.size > KEPT_ROOMS) back.delete(oldest!);
    },
  };
}

/** What the lengths of a member's arrays depend on. */
function shapeOf({ grid, groups, sources, loads }: Prepared): string {
  return [grid.steps, groups.length, sources.length, loads.stations.length].join(" ");
}
