import type { PreparedBank } from "../bank/prepareBank.ts";
import { toGrid } from "../grid.ts";
import type { PreparedLoads } from "../load/prepareLoads.ts";
import { FIGURE_CANOPY_NORMAL, FIGURE_START_SHARE, FIGURES } from "./memberFigures.ts";

/** What a step reads besides the sky. */
export interface MemberInputs {
  /** What the gear wants in each step, W at the bank's terminals, converter included, controllers' own draw not; the member's own. */
  readonly wantedW: Float64Array;
  /**
   * The same for all members, one row of numbers per step: what the bank's temperature allows, and the peak that each station's radio can
   * meet.
   */
  readonly rows: Float64Array;
  readonly stride: number;
  /** Charge at the start and how far capacity, yield and idle draw are off, in the places that `memberFigures.ts` names. */
  readonly figures: Float64Array;
  /** Greatest peak of the whole event, W: where the bank carries that, no step need be asked. */
  readonly mostPeakW: number;
}

/** Most charging current at that temperature, A. */
export const INPUT_MAX_CHARGE_A = 0;
/** What the cold leaves out of reach, Ah. */
export const INPUT_FLOOR_AH = 1;
/** Most current that the bank gives, A; 0 while the cold locks it. */
export const INPUT_MAX_DISCHARGE_A = 2;
/** Resistance of the cells over that at 25 °C, drawing and charging, and what it leaves of the charging current. */
export const INPUT_INTERNAL_COLD = 3;
export const INPUT_CHARGING_COLD = 4;
export const INPUT_ACCEPT_SHARE = 5;
/** Demand of the whole site with the first station's peak, W; the others follow; 0 while it is unstaffed. */
export const INPUT_PEAK_W = 6;

/** @param converterShare power that the converter between bank and gear passes on; @param controllersW their own draw */
export function memberInputs(
  loads: PreparedLoads,
  bank: PreparedBank,
  converterShare: number,
  controllersW: number,
): MemberInputs {
  const steps = loads.wantedW.length;
  const stride = INPUT_PEAK_W + loads.stations.length;
  const rows = new Float64Array(steps * stride);
  for (let i = 0; i < steps; i++) {
    rows[i * stride + INPUT_MAX_CHARGE_A] = bank.maxChargeA[i]!;
    rows[i * stride + INPUT_FLOOR_AH] = bank.floorAh[i]!;
    rows[i * stride + INPUT_MAX_DISCHARGE_A] = bank.maxDischargeAt[i]!;
    rows[i * stride + INPUT_INTERNAL_COLD] = bank.internalCold[i]!;
    rows[i * stride + INPUT_CHARGING_COLD] = bank.chargingCold[i]!;
    rows[i * stride + INPUT_ACCEPT_SHARE] = bank.acceptShare[i]!;
    loads.stations.forEach((station, s) => {
      const peakW = (loads.quietW[i]! + station.peakTogetherW[i]!) / converterShare + controllersW;
      rows[i * stride + INPUT_PEAK_W + s] = station.staffedShare[i]! > 0 ? toGrid(peakW) : 0;
    });
  }
  let mostPeakW = 0;
  for (let i = 0; i < steps; i++) {
    for (let s = 0; s < loads.stations.length; s++) {
      mostPeakW = Math.max(mostPeakW, rows[i * stride + INPUT_PEAK_W + s]!);
    }
  }
  const figures = new Float64Array(FIGURES).fill(1);
  figures[FIGURE_START_SHARE] = bank.startAh / bank.fullAh;
  figures[FIGURE_CANOPY_NORMAL] = 0;
  const wantedW = loads.wantedW.map((watts) => toGrid(watts / converterShare));
  return { wantedW, rows, stride, figures, mostPeakW };
}

/**
 * Inputs of a member's own, with nothing of it drawn yet.
 * @param wantedW room for what its gear wants, taken as it is
 */
export function ownInputs({ rows, stride, figures, mostPeakW }: MemberInputs, wantedW: Float64Array): MemberInputs {
  return { wantedW, rows, stride, figures: figures.slice(), mostPeakW };
}
