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
/** Most resistance of one metre of flexible (class 5) plain copper at 20 °C, by nominal section in mm², mΩ (IEC 60228:2004, table 3). */
const CLASS_5_MILLIOHM_PER_M: readonly (readonly [mm2: number, milliohm: number])[] = [
  [0.5, 39],
  [0.75, 26],
  [1, 19.5],
  [1.5, 13.3],
  [2.5, 7.98],
  [4, 4.95],
  [6, 3.3],
  [10, 1.91],
  [16, 1.21],
  [25, 0.78],
  [35, 0.554],
  [50, 0.386],
  [70, 0.272],
  [95, 0.206],
  [120, 0.161],
  [150, 0.129],
  [185, 0.106],
  [240, 0.0801],
];
/** Its change with temperature, as a share of that at 20 °C (IEC 60028:1925). */
const PER_K_FROM_20C = 0.00393;

/** One copper conductor, by American gauge or by cross-section; exactly one of the two is given. */
export interface CopperSize {
  readonly awg?: string | undefined;
  readonly mm2?: number | undefined;
}

/**
 * Direct-current resistance of one metre of one copper conductor, Ω/m; a two-wire run has twice its length of it.
 * A size in mm² is flexible wire at the most that its standard allows; between two sections of the standard, and beyond them, it has the
 * metal of the nearest.
 * @param tempC temperature of the copper, not of the air about it
 * @throws RangeError if the gauge is not one of the table, or neither size is given
 * @see NFPA 70 (National Electrical Code), chapter 9, table 8, stranded uncoated copper, all 15 as printed by
 *   sfasoft.com, “Conductor Properties”, and each within 1 % of round wire's resistance with 2 % for stranding;
 *   IEC 60228:2004, table 3 (class 5), for a size in mm² (from memory), and IEC 60028:1925 for its change with temperature
 */
export function copperOhmPerM(size: CopperSize, tempC: number): number {
  if (size.mm2 !== undefined) {
    if (!(size.mm2 > 0)) throw new RangeError(`mm2 must be more than 0, got ${size.mm2}`);
    return class5OhmPerM(size.mm2) * (1 + PER_K_FROM_20C * (tempC - 20));
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

/** Ω/m at 20 °C; the table's own where the section is one of it. */
function class5OhmPerM(mm2: number): number {
  const nearest = CLASS_5_MILLIOHM_PER_M.reduce((best, each) =>
    Math.abs(Math.log(each[0] / mm2)) < Math.abs(Math.log(best[0] / mm2)) ? each : best,
  );
  return (nearest[1] * nearest[0]) / mm2 / 1000;
}
