import type { TimeScale } from "../../drawing/timeScale.ts";
import { ampHours, percent } from "../../words/numbers.ts";
import type { Box } from "./annotationPlace.ts";
import type { RunPicture } from "./runPicture.ts";
import type { Stratum } from "./strataLayout.ts";
import { stepMs } from "./strataPaths.ts";

const WIDTH_PX = 190;
const GRIPS_PX = 20;

/** Where the reserve's name stands: its text, where that begins, on which side of the line, and the ground that it covers. */
export interface ReserveName {
  readonly text: string;
  readonly x: number;
  readonly above: boolean;
  readonly box: Box;
}

/**
 * Puts the reserve's name above its line unless the charge runs there and not below.
 * @param leftX where the name and the grips before it begin
 */
export function reserveNamePlace(
  picture: RunPicture,
  charge: Stratum,
  scale: TimeScale,
  reserveShare: number,
  leftX: number,
): ReserveName {
  const y = charge.y(reserveShare);
  const heights = picture.chargeShare.filter((_, i) => {
    const x = scale.x(stepMs(picture, i)) - leftX;
    return x > -4 && x < WIDTH_PX;
  });
  const crosses = (top: number, bottom: number) =>
    heights.some((share) => charge.y(share) > top && charge.y(share) < bottom);
  const hasRoomAbove = y - charge.top >= 28;
  return {
    text: `Reserve ${percent(reserveShare)}, ${ampHours(reserveShare * picture.fullAh)}`,
    x: leftX + GRIPS_PX,
    above: hasRoomAbove && (!crosses(y - 28, y) || crosses(y, y + 28) || charge.bottom - y < 28),
    box: { left: leftX - 8, right: leftX + WIDTH_PX, top: y - 28, bottom: y + 28 },
  };
}
