import { toGrid } from "../grid.ts";

/** What limits charging when there is power enough; arrays have one value per step of charge from empty to full. */
export interface AcceptanceLimits {
  readonly fullAh: number;
  readonly openCircuitV: Float64Array;
  readonly absorptionV: number;
  /** Apparent resistance at each charge, Ω. */
  readonly chargingOhm: Float64Array;
  /** What charging adds to the volts besides, V, and the current from which on it adds all of it, A. */
  readonly polarisationV: number;
  readonly polarisationA: number;
  /** Most current for each missing ampere-hour, A/Ah. */
  readonly perMissingAh: number;
  readonly coulombicShare: number;
  readonly stepH: number;
}

/** Stands for "no limit" where a bank has no resistance to speak of. */
const MANY_A = 1e6;

/**
 * The mean current that a bank takes over one step when the charger could give any: it falls within the step as charge
 * and voltage rise, so the charge is followed through time instead of taking the first moment for the whole. That makes
 * long and short steps agree and keeps a fuller bank fuller.
 * @returns A, one value for each charge at the step's start
 */
export function acceptance(limits: AcceptanceLimits): Float64Array {
  const { fullAh, openCircuitV, coulombicShare, stepH } = limits;
  const last = openCircuitV.length - 1;
  const ahPerStep = fullAh / last;
  // Hours from empty to each charge at the greatest current that voltage and taper allow.
  const hoursAt = new Float64Array(last + 1);
  let reach = last;
  for (let k = 0; k < last; k++) {
    const currentA = instantA(limits, k);
    if (currentA <= 0) {
      reach = k;
      break;
    }
    hoursAt[k + 1] = hoursAt[k]! + ahPerStep / (coulombicShare * currentA);
  }
  const table = new Float64Array(last + 1);
  let later = 0;
  for (let k = 0; k < reach; k++) {
    const untilH = hoursAt[k]! + stepH;
    later = Math.max(later, k);
    while (later < reach && hoursAt[later + 1]! <= untilH) later++;
    const within = later < reach ? (untilH - hoursAt[later]!) / (hoursAt[later + 1]! - hoursAt[later]!) : 0;
    table[k] = toGrid(((later + within - k) * ahPerStep) / (coulombicShare * stepH));
  }
  return table;
}

function instantA(limits: AcceptanceLimits, k: number): number {
  const last = limits.openCircuitV.length - 1;
  const missingAh = limits.fullAh * (1 - k / last);
  const headroomV = limits.absorptionV - limits.openCircuitV[k]!;
  if (headroomV <= 0) return 0;
  return Math.min(
    currentForVolts(headroomV, limits.chargingOhm[k]!, limits.polarisationV, limits.polarisationA),
    limits.perMissingAh * missingAh,
  );
}

/**
 * Current that charging volts above those at rest drive, A: the volts rise in two straight lines, by polarisation and resistance up to a trickle,
 * then by the resistance alone.
 * @param headroomV above 0
 * @memberLoop
 */
export function currentForVolts(headroomV: number, ohm: number, polarisationV: number, polarisationA: number): number {
  const beyondV = headroomV - polarisationV - ohm * polarisationA;
  if (beyondV >= 0) return ohm > 0 ? polarisationA + beyondV / ohm : MANY_A;
  return headroomV / (ohm + polarisationV / polarisationA);
}
