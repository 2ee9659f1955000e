import type { TimeScale } from "../../drawing/timeScale.ts";
import { darkHours } from "./forecastLayout.ts";
import type { OddsPicture } from "./oddsPicture.ts";

const HALF_HOUR_MS = 1_800_000;
const TICK_PX = 3;
const LEAST_PX = 1.5;

/**
 * A tick for each hour in which some member is dark, standing on `foot`, as one path: a rectangle for each would be made again with every
 * answer.
 * @param rowPx height of `fullShare` of the members
 */
export function darkTicks(
  picture: OddsPicture,
  scale: TimeScale,
  foot: number,
  { fullShare, rowPx }: { readonly fullShare: number; readonly rowPx: number },
): string {
  return darkHours(picture)
    .filter(({ share }) => share > 0)
    .map(({ ms, share }) => {
      const heightPx = Math.max(LEAST_PX, (share / fullShare) * rowPx);
      return `M${scale.x(ms + HALF_HOUR_MS) - TICK_PX / 2} ${foot}v${-heightPx}h${TICK_PX}v${heightPx}Z`;
    })
    .join("");
}
