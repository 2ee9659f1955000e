import { type FixedPower, makeFixedPower } from "../array/fixedPower.ts";
import { PLANE_SLOTS } from "../array/planeSlots.ts";
import { zeros } from "../zeros.ts";
import type { Prepared } from "./prepare.ts";
import { STATE_SLOTS } from "./stepState.ts";

/**
 * What happens to a member, one row of numbers per step; made once and written over by every run, so that an ensemble allocates
 * nothing. A row lies side by side because the loop writes all of it at once: one stretch of memory for each step costs half
 * the time of a dozen arrays. `runRecord` turns rows into one array per quantity.
 */
export interface RunRows {
  /** `stride` numbers per step: the named places below, then one per panel group, source (power), source (fuel), station. */
  readonly rows: Float64Array;
  readonly stride: number;
  /** Where the first group, the first source's power, the first source's fuel and the first station stand in a row. */
  readonly groupAt: number;
  readonly sourceAt: number;
  readonly fuelAt: number;
  readonly stationAt: number;
  /** Charge at the end, Ah; each row has that at its start. */
  readonly state: Float64Array;
  /** What the sky makes of each panel group, in the places that `planeSlots.ts` names. */
  readonly planes: readonly Float64Array[];
  readonly fixed: FixedPower;
  /** Which generator runs (1 or 0), fuel left, what each source could give, what each selector input offers. */
  readonly runs: Float64Array;
  readonly fuelLeftL: Float64Array;
  readonly offeredW: Float64Array;
  readonly inputW: Float64Array;
}

/** Charge at the step's start, Ah. */
export const ROW_STORED_AH = 0;
/** What the controllers offer, W, whether it can be used or not. */
export const ROW_SOLAR_W = 1;
/** Solar power that nobody could take, or that the selector shut out. */
export const ROW_SPILLED_W = 2;
/** What loads, converter and controllers want, and what of it they did not get. */
export const ROW_DEMAND_W = 3;
export const ROW_UNSERVED_W = 4;
/** Into the bank's terminals when positive, out of them when negative; volts there; current. */
export const ROW_BANK_W = 5;
export const ROW_BANK_A = 6;
export const ROW_BANK_V = 7;
/** 1 while the low-voltage disconnect is closed, else 0. */
export const ROW_CONNECTED = 8;
/** Below these volts a controller's current limit may bite earlier; a step that gets there asks every group again. */
const LOWEST_V_PER_12V = 9;
const ROW_FIRST_GROUP = 9;

/**
 * Room for runs of a prepared scenario.
 * @param spare rows that nobody reads any more; their memory is taken where it fits
 */
export function makeRunRows(
  prepared: Pick<Prepared, "scenario" | "bank" | "grid" | "groups" | "sources" | "loads" | "selector">,
  spare?: RunRows,
): RunRows {
  const groups = prepared.groups.length;
  const sources = prepared.sources.length;
  const stationAt = ROW_FIRST_GROUP + groups + 2 * sources;
  const stride = stationAt + prepared.loads.stations.length;
  return {
    rows: zeros(prepared.grid.steps * stride, spare?.rows),
    stride,
    groupAt: ROW_FIRST_GROUP,
    sourceAt: ROW_FIRST_GROUP + groups,
    fuelAt: ROW_FIRST_GROUP + groups + sources,
    stationAt,
    state: new Float64Array(STATE_SLOTS),
    fixed: makeFixedPower(
      prepared.grid.steps,
      LOWEST_V_PER_12V * (prepared.scenario.bank.nominalV / 12),
      prepared.bank.absorptionV,
      spare?.fixed,
    ),
    planes: prepared.groups.map((_, g) => zeros(prepared.grid.steps * PLANE_SLOTS, spare?.planes[g])),
    runs: new Float64Array(sources),
    fuelLeftL: new Float64Array(sources),
    offeredW: new Float64Array(sources),
    inputW: new Float64Array(prepared.selector.inputs),
  };
}
