import { windowShare } from "../scenario/clockWindow.ts";
import { presentShare } from "../scenario/presence.ts";
import type { Source } from "../scenario/source.ts";
import type { TimeGrid } from "../scenario/timeGrid.ts";

/** One source on the step grid. */
export interface PreparedSource {
  readonly id: string;
  readonly name: string;
  readonly isGenerator: boolean;
  /** Most current it gives the bank, A. */
  readonly maxA: number;
  /** Most power it gives the bank, W; only a generator's size limits it. */
  readonly maxW: number;
  /** Volts it holds. */
  readonly chargeV: number;
  /** Share of each step during which it may run. */
  readonly availableShare: Float64Array;
  /** Charge at or below which a generator is started and at which it is stopped, shares of full. */
  readonly startShare: number;
  readonly stopShare: number;
  /** Fuel: litres brought, litres per hour idling, and litres per watt-hour that reaches the bank on top of that. */
  readonly fuelL: number;
  readonly burnIdleLPerH: number;
  readonly burnLPerWh: number;
}

/**
 * Lays mains chargers, generators and vehicle chargers on the step grid.
 * @param absorptionV the bank's own voltage limit, held by a charger for which nothing else is stated
 */
export function prepareSources(sources: readonly Source[], grid: TimeGrid, absorptionV: number): PreparedSource[] {
  return sources.map((source) => {
    const prepared = prepareSource(source, grid, absorptionV);
    const there = presentShare(grid, source);
    const availableShare =
      there === null ? prepared.availableShare : prepared.availableShare.map((share, i) => Math.min(share, there[i]!));
    return { ...prepared, availableShare };
  });
}

function prepareSource(source: Source, grid: TimeGrid, absorptionV: number): PreparedSource {
  const common = {
    id: source.id,
    name: source.name,
    isGenerator: false,
    chargeV: source.chargeV ?? absorptionV,
    maxW: Number.POSITIVE_INFINITY,
    startShare: 1,
    stopShare: 1,
    fuelL: 0,
    burnIdleLPerH: 0,
    burnLPerWh: 0,
  };
  switch (source.kind) {
    case "mains":
      return { ...common, maxA: source.chargerA, availableShare: windowShare(grid, source.available) };
    case "vehicle":
      return { ...common, maxA: source.outputA, availableShare: windowShare(grid, source.running) };
    case "generator": {
      const maxW = source.continuousW * source.chargerEfficiencyShare;
      return {
        ...common,
        isGenerator: true,
        maxA: source.chargerA,
        maxW,
        availableShare: windowShare(grid, source.allowed),
        startShare: source.startShare,
        stopShare: source.stopShare,
        fuelL: source.fuelL,
        burnIdleLPerH: source.burnIdleLPerH,
        // Burn rises in a straight line from idling to continuous power (common practice, no source).
        burnLPerWh: (source.burnFullLPerH - source.burnIdleLPerH) / maxW,
      };
    }
  }
}
