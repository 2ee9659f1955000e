import { toGrid } from "../grid.ts";
import { requireSameLength } from "../require.ts";
import type { ClearSky } from "./clearSky.ts";
import type { DayLight } from "./dayClearIndex.ts";
import { monthlyDiffuseShare } from "./monthlyDiffuseShare.ts";
import type { SkyLight } from "./splitDiffuse.ts";

/**
 * The light of a day that stands for its month: as bright as the mean of the days, and with as much beam as they bring
 * together. Splitting the mean brightness by the hour would make it one evenly hazy day: a third more light from the
 * sky and half the beam, which takes 10 to 15 % off a tilted panel in October and gives a shaded one 40 % too much.
 * @param clear from `clearSky`
 * @param days from `dayLight`
 * @param clearIndex GHI over the clear sky's, one value per step, the same throughout each day
 * @param out where the result goes
 */
export function typicalLight(clear: ClearSky, days: DayLight, clearIndex: Float64Array, out: SkyLight): void {
  requireSameLength({ clearIndex, ghiWm2: clear.ghiWm2, dayOfStep: days.dayOfStep });
  for (let i = 0; i < clearIndex.length; i++) {
    const day = days.dayOfStep[i]!;
    const sinElevation = clear.sinElevation[i]!;
    const ghi = clearIndex[i]! * clear.ghiWm2[i]!;
    const dni =
      sinElevation > 0 ? Math.min(beamShare(days, day, clearIndex[i]!) * clear.dniWm2[i]!, ghi / sinElevation) : 0;
    out.ghiWm2[i] = ghi;
    out.dniWm2[i] = dni;
    out.dhiWm2[i] = Math.max(0, ghi - dni * sinElevation);
  }
}

/** What of a cloudless day's beam is left; never more than all of it. */
function beamShare(days: DayLight, day: number, clearIndex: number): number {
  const levelWhM2 = clearIndex * days.clearWhM2[day]!;
  const aboveWhM2 = days.extraterrestrialWhM2[day]!;
  const clearBeamWhM2 = days.clearBeamWhM2[day]!;
  if (aboveWhM2 <= 0 || clearBeamWhM2 <= 0) return 0;
  const diffuseShare = monthlyDiffuseShare(levelWhM2 / aboveWhM2, days.sunsetAngleRad[day]!);
  return toGrid(Math.min(1, ((1 - diffuseShare) * levelWhM2) / clearBeamWhM2));
}
