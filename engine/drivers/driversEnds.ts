import type { PreparedEnsemble } from "../ensemble/prepareEnsemble.ts";
import { SURENESS_SPREAD } from "../run/memberFigures.ts";
import { DRIVER_FACTORS, type DriverFactor, FIGURE_OF_FACTOR } from "./driversMember.ts";

/** One end of a factor: nine members in ten lie on its other side. */
export interface DriversEnd {
  readonly factor: DriverFactor;
  readonly isLow: boolean;
  /** Value of the factor there; its unit is `ENDS_UNIT` of the factor. */
  readonly value: number;
  /** Place of the figure that is held at `value`; −1 where members near the end lend their weather or intensity instead. */
  readonly figure: number;
  readonly lenders: Int32Array;
}

/** What an end's value is: light on the level, energy for sending, or the figure over the planned one (charge: of full). */
export const ENDS_UNIT: Readonly<Record<DriverFactor, string>> = {
  weather: "kWh/m²",
  intensity: "Wh",
  idleDraw: "of plan",
  canopy: "of plan",
  panelYield: "of plan",
  startCharge: "of full",
  bankHealth: "of plan",
};

/** The normal value that one draw in ten exceeds. */
const Z90 = 1.2815515655446004;
/** Members that lend their weather or intensity lie between these ranks, from either end: one in twenty to three in twenty. */
const LENDER_FROM = 0.05;
const LENDER_TO = 0.15;

/**
 * Where each factor's low and high end lie: figures at the tenth and ninetieth of a hundred of their draws; the weather, by
 * light on the level over the event, and intensity, by what sending takes, at the members around those ranks.
 * @param lightWhM2 of each member, from the first; @param sendingWh likewise
 */
export function driversEnds(
  ensemble: PreparedEnsemble,
  from: number,
  lightWhM2: Float64Array,
  sendingWh: Float64Array,
): DriversEnd[] {
  const { scenario } = ensemble.prepared;
  return DRIVER_FACTORS.flatMap((factor) => {
    if (factor === "canopy" && !ensemble.hasCrowns) return [];
    const figure = FIGURE_OF_FACTOR[factor];
    return [true, false].map((isLow): DriversEnd => {
      if (figure === undefined) {
        const lent = factor === "weather" ? lentBy(lightWhM2, isLow) : lentBy(sendingWh, isLow);
        const value = factor === "weather" ? lent.mean / 1000 : lent.mean;
        return { factor, isLow, value, figure: -1, lenders: lent.members.map((member) => from + member) };
      }
      const normal = isLow ? -Z90 : Z90;
      if (factor === "canopy") {
        return {
          factor,
          isLow,
          value: 1 + SURENESS_SPREAD.canopy[scenario.sureness.canopy] * normal,
          figure,
          lenders: new Int32Array(0),
        };
      }
      const planned = factor === "startCharge" ? scenario.bank.startShare : 1;
      const value = Math.max(0, planned + ensemble.spread[figure]! * normal);
      return {
        factor,
        isLow,
        value: factor === "startCharge" ? Math.min(1, value) : value,
        figure,
        lenders: new Int32Array(0),
      };
    });
  });
}

/** What the held figure is at an end: the canopy's is in standard deviations. */
export function heldFigure(end: DriversEnd): number {
  if (end.factor === "canopy") return end.isLow ? -Z90 : Z90;
  return end.value;
}

function lentBy(values: Float64Array, isLow: boolean): { members: Int32Array; mean: number } {
  const order = Array.from(values.keys()).sort((a, b) => values[a]! - values[b]! || a - b);
  if (!isLow) order.reverse();
  const first = Math.floor(LENDER_FROM * order.length);
  const members = order.slice(first, Math.max(first + 1, Math.ceil(LENDER_TO * order.length)));
  return {
    members: Int32Array.from(members),
    mean: members.reduce((sum, member) => sum + values[member]!, 0) / members.length,
  };
}
