/** Light can rise over 1000 W/m²: the circuit's current is a quarter above short circuit (NEC 690.8(A)(1), as
 * explained in Home Power, “PV Circuit Sizing & Current Calculations”). */
const BRIGHT_FACTOR = 1.25;
/** What flows all day asks a quarter more of wire and fuse (NEC 690.8(B), quoted in IAEI Magazine,
 * “Considering Clarified Cable Calculations”). */
const ALL_DAY_FACTOR = 1.25;

/** What a panel group's input must stand, A: 1.25 × short-circuit current × strings side by side. */
export function panelCircuitA(iscA: number, strings: number): number {
  return BRIGHT_FACTOR * iscA * strings;
}

/** What its wire must carry, A: 1.25 times that once more. */
export function panelWireA(iscA: number, strings: number): number {
  return ALL_DAY_FACTOR * panelCircuitA(iscA, strings);
}

/** What the other strings can drive into one that is shaded or shorted, A; 0 for a lone string. */
export function backfeedA(iscA: number, strings: number): number {
  return BRIGHT_FACTOR * iscA * Math.max(0, strings - 1);
}
