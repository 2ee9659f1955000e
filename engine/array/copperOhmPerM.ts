/** Ohm per 1000 ft of one conductor at 75 °C: copper, uncoated, stranded. */
const OHM_PER_KFT_AT_75C: Readonly<Record<string, number>> = {
  "18": 7.95,
  "16": 4.99,
  "14": 3.14,
  "12": 1.98,
  "10": 1.24,
  "8": 0.778,
  "6": 0.491,
  "4": 0.308,
  "3": 0.245,
  "2": 0.194,
  "1": 0.154,
  "1/0": 0.122,
  "2/0": 0.0967,
  "3/0": 0.0766,
  "4/0": 0.0608,
};

const M_PER_KFT = 304.8;
/** Change of copper's resistance with temperature, as a share of that at 75 °C (NEC chapter 9, note to table 8). */
const PER_K_FROM_75C = 0.00323;
/** Resistivity of annealed copper at 20 °C, Ω mm²/m (IEC 60028:1925, "one fifty-eighth"). */
const OHM_MM2_PER_M_AT_20C = 1 / 58;
/** Its change with temperature, as a share of that at 20 °C (IEC 60028:1925). */
const PER_K_FROM_20C = 0.00393;

/** One copper conductor, by American gauge or by cross-section; exactly one of the two is given. */
export interface CopperSize {
  readonly awg?: string | undefined;
  readonly mm2?: number | undefined;
}

/**
 * Direct-current resistance of one metre of one copper conductor, Ω/m; a two-wire run has twice its length of it.
 * A real stranded wire of a given mm² may be up to a tenth above this (IEC 60228 states maxima, not means).
 * @param tempC temperature of the copper, not of the air about it
 * @throws RangeError if the gauge is not one of the table, or neither size is given
 * @see NFPA 70 (National Electrical Code), chapter 9, table 8, stranded uncoated copper, all 15 as printed by
 *   sfasoft.com, “Conductor Properties”, and each within 1 % of round wire's resistance with 2 % for stranding;
 *   IEC 60028:1925 for a size in mm²
 */
export function copperOhmPerM(size: CopperSize, tempC: number): number {
  if (size.mm2 !== undefined) {
    if (!(size.mm2 > 0)) throw new RangeError(`mm2 must be more than 0, got ${size.mm2}`);
    return (OHM_MM2_PER_M_AT_20C / size.mm2) * (1 + PER_K_FROM_20C * (tempC - 20));
  }
  const ohmPerKft = size.awg === undefined ? undefined : OHM_PER_KFT_AT_75C[size.awg];
  if (ohmPerKft === undefined) {
    const known = Object.keys(OHM_PER_KFT_AT_75C)
      .sort((a, b) => OHM_PER_KFT_AT_75C[b]! - OHM_PER_KFT_AT_75C[a]!)
      .join(", ");
    throw new RangeError(`awg must be one of ${known} (or give mm2 instead), got ${size.awg}`);
  }
  return (ohmPerKft / M_PER_KFT) * (1 + PER_K_FROM_75C * (tempC - 75));
}
