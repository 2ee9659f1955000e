/**
 * Everything on the way from light to the bank, one value per step, for one group. While it is set out for part of a
 * step, light and power are the step's means and `cellTempC` and `mppV` those of the time outside. What leaves the
 * panels is accounted for: dcW = lossesW + cableLossW + controllerLossW + limitedW + busW.
 */
export interface GroupDetail {
  /** Light on the plane with nothing standing about. */
  readonly planeBeforeWm2: Float64Array;
  /** Light on the plane after shade, mean over the modules. */
  readonly planeWm2: Float64Array;
  /** The same after the glass. */
  readonly effectiveWm2: Float64Array;
  /** °C; that of the air when there is no light. */
  readonly cellTempC: Float64Array;
  /** Sections of each string that carry the current, 0 when the group gives nothing. */
  readonly sectionsConducting: Float64Array;
  /** Volts of a string where the controller runs it, power point or not; 0 when the group gives nothing. */
  readonly mppV: Float64Array;
  /** Volts of the bank as the controller sees it. */
  readonly seenV: Float64Array;
  readonly dcW: Float64Array;
  readonly lossesW: Float64Array;
  readonly cableLossW: Float64Array;
  readonly controllerLossW: Float64Array;
  /** Held back because the controller gives no more current. */
  readonly limitedW: Float64Array;
  readonly busW: Float64Array;
  /** What the same chain would have given with nothing standing about, less what it gave. */
  readonly shadeLossW: Float64Array;
}

/** Room for the detail of `steps` steps. */
export function groupDetail(steps: number): GroupDetail {
  return {
    planeBeforeWm2: new Float64Array(steps),
    planeWm2: new Float64Array(steps),
    effectiveWm2: new Float64Array(steps),
    cellTempC: new Float64Array(steps),
    sectionsConducting: new Float64Array(steps),
    mppV: new Float64Array(steps),
    seenV: new Float64Array(steps),
    dcW: new Float64Array(steps),
    lossesW: new Float64Array(steps),
    cableLossW: new Float64Array(steps),
    controllerLossW: new Float64Array(steps),
    limitedW: new Float64Array(steps),
    busW: new Float64Array(steps),
    shadeLossW: new Float64Array(steps),
  };
}
