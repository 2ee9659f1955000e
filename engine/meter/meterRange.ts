import type { MeterQuantity } from "./meterMapping.ts";

/** What a quantity may be; beyond it a cell is taken for a fault of the meter or of the mapping. */
export const METER_RANGE: Record<MeterQuantity, readonly [low: number, high: number, unit: string]> = {
  charge: [-0.001, 110, "%"],
  bankV: [1, 80, "V"],
  bankA: [-2000, 2000, "A"],
  bankW: [-60_000, 60_000, "W"],
  pvW: [-50, 60_000, "W"],
  loadW: [-50, 60_000, "W"],
  loadA: [-5, 2000, "A"],
  usedAh: [-50_000, 50_000, "Ah"],
};
