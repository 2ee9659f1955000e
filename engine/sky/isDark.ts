/** The sun's own half width: its upper limb touches the horizon when its centre stands this far below. */
export const DARK_BELOW_DEG = -0.27;

/**
 * Whether the sun is gone: its upper limb is below a level horizon. For the step loop; `nightSpans` gives the instants by
 * the almanac's convention (34′ of refraction instead of the 29′ in `sunTrack`), which comes half a minute or so later.
 * @param elevationDeg apparent, as `sunTrack` gives it
 * @memberLoop
 */
export function isDark(elevationDeg: number): boolean {
  return elevationDeg < DARK_BELOW_DEG;
}
