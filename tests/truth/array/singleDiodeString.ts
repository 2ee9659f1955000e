/** A string of single-diode cells at 45 °C with bypass diodes of 0.5 V: the physics behind the simple section rules. */

const THERMAL_V = 1.2 * 0.0274158; // ideality 1.2 × kT/q at 45 °C
const OPEN_CELL_V = 0.593;
const SERIES_OHM = 0.022; // per ampere of short-circuit current, which is 1 here
const SATURATION_A = 1 / (Math.exp(OPEN_CELL_V / THERMAL_V) - 1);
const BYPASS_V = 0.5;

/** Cells of one bypass section: how many have which share of full light. */
export type Section = readonly { readonly cells: number; readonly light: number }[];

function cellV(currentA: number, light: number): number {
  const excess = (light - currentA) / SATURATION_A + 1;
  return excess > 0 ? THERMAL_V * Math.log(excess) - currentA * SERIES_OHM : Number.NEGATIVE_INFINITY;
}

/** Volts of the string when it carries a current (1 = short circuit in full light). */
export function stringV(sections: readonly Section[], currentA: number): number {
  return sections.reduce((sum, section) => {
    const ownV = section.reduce((volts, part) => volts + part.cells * cellV(currentA, part.light), 0);
    return sum + Math.max(ownV, -BYPASS_V);
  }, 0);
}

/** The best point of the string's curve. */
export function powerPoint(sections: readonly Section[]): { powerW: number; voltV: number } {
  let best = { powerW: 0, voltV: 0 };
  for (let currentA = 0.0005; currentA < 1; currentA += 0.0005) {
    const voltV = stringV(sections, currentA);
    if (currentA * voltV > best.powerW) best = { powerW: currentA * voltV, voltV };
  }
  return best;
}

/** Current at a fixed voltage: the largest that the string still carries there. */
export function currentAt(sections: readonly Section[], voltV: number): number {
  let most = 0;
  for (let currentA = 0.0005; currentA < 1; currentA += 0.0005) {
    if (stringV(sections, currentA) >= voltV) most = currentA;
  }
  return most;
}

/** `diodes` sections of equal size, in full light except for one cell. */
export function oneDimCell(cells: number, diodes: number, light: number): Section[] {
  const each = cells / diodes;
  const bright: Section = [{ cells: each, light: 1 }];
  const dim: Section = [
    { cells: each - 1, light: 1 },
    { cells: 1, light },
  ];
  return [...Array.from({ length: diodes - 1 }, () => bright), dim];
}
