import { transmitDrawOf } from "../load/transmitDrawOf.ts";
import { drawnW } from "../scenario/draw.ts";
import type { Station } from "../scenario/station.ts";

/**
 * Minutes for which a current must flow to count as lasting. The code's own word is three hours (NEC article 100), and a mean over three hours
 * hides a long over in FM or data, in which fuse and wire are at their temperature long before it ends: a fuse must open within the hour at
 * 135 % and within two to four minutes at twice its rating (UL 248-14, as told in a fuse maker's selection guide). Ten is our choice between.
 */
export const LASTING_MIN = 10;

/** What sending adds for ten minutes and more, W above receiving: by the radio, and by what works only while it sends. */
export interface LastingDraw {
  readonly radioW: number;
  readonly besideW: number;
  /** What part of the latter's full draw that is. */
  readonly besideShare: number;
}

/**
 * A transmission counts by its length: ten minutes and more in full, at its mode's mean; a shorter one by the part of ten minutes that it and the
 * overs beside it fill. Where no longest over is stated it is taken as long.
 */
export function lastingDraw(station: Station): LastingDraw {
  const draw = transmitDrawOf(station);
  const { longestOverMin, sendingShare, modes, companions } = station;
  let radioW = 0;
  let mostFilled = 0;
  for (const { mode, share, sendingShare: own = sendingShare } of modes) {
    if (share <= 0 || own <= 0) continue;
    const filled = longestOverMin === undefined ? 1 : Math.min(1, Math.max(longestOverMin / LASTING_MIN, own));
    radioW = Math.max(radioW, filled * (draw.sendingW(mode) - draw.receiveW));
    mostFilled = Math.max(mostFilled, filled);
  }
  const besideW = companions
    .filter(({ works }) => works === "sending")
    .reduce((sum, each) => sum + Math.max(0, drawnW(each.working) - drawnW(each.idle)) * each.count, 0);
  return { radioW, besideW: mostFilled * besideW, besideShare: mostFilled };
}
