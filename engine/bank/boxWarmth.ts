import { toGrid } from "../grid.ts";
import type { Bank, BankBox } from "../scenario/bank.ts";
import { CHEMISTRY_DATA } from "./chemistryData.ts";

/** How warm a bank in a box is, and what its pad draws for that; one value per step. */
export interface BoxWarmth {
  /** Mean over the step, °C. */
  readonly tempC: Float64Array;
  /** Power of the heater, mean over the step, W; 0 without one. */
  readonly heaterW: Float64Array;
}

/**
 * Follows the temperature of a bank in its box: one body that loses heat to the air in proportion to how much warmer it is, and is warmed by a pad
 * with a thermostat. Exact for air that is steady within a step: the pad's mean power is what brings the bank to the set point by the step's
 * end, at most all that it has. The bank's own losses warm nothing, and the pad is taken to be fed: where it is not, the bank is colder.
 * @param airTempC one value per step
 * @see Newton's law of cooling, as any textbook of heat transfer has it
 */
export function boxWarmth(bank: Bank, box: BankBox, airTempC: Float64Array, stepH: number): BoxWarmth {
  const steps = airTempC.length;
  const tempC = new Float64Array(steps);
  const heaterW = new Float64Array(steps);
  const left = Math.exp((-box.lossWPerK * stepH) / heatCapacityWhPerK(bank, box));
  let nowC = box.startC ?? airTempC[0] ?? 0;
  for (let i = 0; i < steps; i++) {
    const airC = airTempC[i]!;
    const endAt = (watts: number) => {
      const restC = airC + watts / box.lossWPerK;
      return restC + (nowC - restC) * left;
    };
    let watts = 0;
    if (box.heater !== undefined && endAt(0) < box.heater.setC) {
      const restC = (box.heater.setC - nowC * left) / (1 - left);
      watts = Math.min(box.heater.drawW, Math.max(0, (restC - airC) * box.lossWPerK));
    }
    const endC = endAt(watts);
    tempC[i] = toGrid((nowC + endC) / 2);
    heaterW[i] = toGrid(watts);
    nowC = endC;
  }
  return { tempC, heaterW };
}

/** Heat that warms the bank by a degree, Wh/K: as stated, or by its chemistry and ampere-hours. */
export function heatCapacityWhPerK(bank: Bank, box: BankBox): number {
  const blocks = (bank.blockAh * bank.inParallel * bank.nominalV) / (100 * 12);
  return box.heatCapacityWhPerK ?? CHEMISTRY_DATA[bank.chemistry].heatWhPerKPer100Ah * blocks;
}
