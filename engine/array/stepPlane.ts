import type { DomeLight } from "./domeLight.ts";
import type { FixedPower } from "./fixedPower.ts";
import type { PreparedGroup } from "./preparedGroup.ts";
import { stepFreePlane } from "./stepFreePlane.ts";
import { stepShadedPlane } from "./stepShadedPlane.ts";

/**
 * First half of a group's work, for all steps of an event at once, since the bank has no say in it: light on the plane, what
 * shade and glass leave of it, how warm that makes the cells, and which number of conducting sections gives most.
 *
 * *Sections.* With k of a string's N sections conducting, the current is that of the k-th brightest and the voltage that
 * of k sections less the drop of N − k bypass diodes; the k that brings most through the cable to a tracking controller
 * wins. This is cautious in mild shade (one cell of 36 at three quarters of its light: 0.75 here, 0.87 real); see
 * `mildlyLitWm2` for the other rule. The power point's voltage follows temperature and not light: in dim light real modules run a little lower.
 *
 * *Fixed power.* In most steps of most groups the bank's volts cannot change what the group gives: a tracking controller whose
 * choice of sections stands above any volts that the bank may have, and whose current limit is out of reach. Such a step's
 * power is added to `fixed.sumW` and done with; for the others a bit is set, and `stepGroup` has the last word.
 *
 * One loop over the steps and not one call for each, and in it over members side by side: what a group is stays at hand, which halves the time
 * twice.
 * @param g number of the group, 0…19: its bit in `fixed.coupled`
 * @param light of each member, sorted by the group's own dome
 * @param lanes members side by side, from the first lane on
 * @param plane receives `PLANE_SLOTS` numbers for each step of each lane, in the places that `planeSlots.ts` names; those of steps with fixed
 *   power only where `noteAll` asks for them
 * @param noteAll whether every step is written into `plane`: traces, and runs in which one input shuts out another
 * @see A. Dobos, PVWatts Version 5 Manual, NREL/TP-6A20-62641, 2014 (power of a module by light and temperature)
 */
export function stepPlane(
  group: PreparedGroup,
  g: number,
  light: DomeLight,
  lanes: number,
  plane: Float64Array,
  fixed: FixedPower,
  noteAll: boolean,
): void {
  stepFreePlane(group, g, light, lanes, plane, fixed, noteAll);
  stepShadedPlane(group, g, light, lanes, plane, fixed, noteAll);
}
