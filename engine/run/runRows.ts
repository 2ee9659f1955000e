import { type DomeLight, makeDomeLight } from "../array/domeLight.ts";
import { type FixedPower, makeFixedPower } from "../array/fixedPower.ts";
import { PLANE_SLOTS } from "../array/planeSlots.ts";
import { zeros } from "../zeros.ts";
import { FIGURES } from "./memberFigures.ts";
import type { Prepared } from "./prepare.ts";
import { STATE_SLOTS } from "./stepState.ts";

/**
 * What happens to members side by side, each in a lane of its own; made once and written over by every run, so that an ensemble allocates
 * nothing. A trace has one lane. Wherever a value stands for a step of a lane, it stands at cell `lane × steps + i`: one lane after the other,
 * so that the first lane reads as a member by itself.
 */
export interface RunRows {
  readonly lanes: number;
  /** What the members meet and want: the light on their panels, what their gear draws (W, by cell), `FIGURES` figures of each lane. */
  readonly light: DomeLight;
  readonly wantedW: Float64Array;
  readonly figures: Float64Array;
  /**
   * `ROW_SLOTS` numbers for each cell, in the places named below. A row lies side by side because the loop writes all of it at once: one stretch
   * of memory for each step costs half the time of a dozen arrays. `runRecord` turns rows into one array per quantity.
   */
  readonly rows: Float64Array;
  /** `BANK_SLOTS` numbers for each step of a member by itself; empty where members run side by side, for they are counted and nobody reads these. */
  readonly bankRows: Float64Array;
  /** `partStride` numbers for each cell: one per panel group, source (power), source (fuel), station. Most steps of most members write none. */
  readonly parts: Float64Array;
  readonly partStride: number;
  /** Where the first source's power, the first source's fuel and the first station stand among a cell's parts; the groups come first. */
  readonly sourceAt: number;
  readonly fuelAt: number;
  readonly stationAt: number;
  /** `STATE_SLOTS` numbers for each lane; at the end of a run, how things stand there. */
  readonly state: Float64Array;
  /** What the sky makes of each panel group: for each cell, in the places that `planeSlots.ts` names. */
  readonly planes: readonly Float64Array[];
  readonly fixed: FixedPower;
  /** Of each source in each lane: whether it runs (1 or 0), and the fuel left. */
  readonly runs: Float64Array;
  readonly fuelLeftL: Float64Array;
  /** Within a step: what each source could give, what each selector input offers. */
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
export const ROW_SLOTS = 5;

/** Into the bank's terminals when positive, out of them when negative; current; volts there. */
export const BANK_W = 0;
export const BANK_A = 1;
export const BANK_V = 2;
/** 1 while the low-voltage disconnect is closed, else 0. */
export const BANK_CONNECTED = 3;
export const BANK_SLOTS = 4;

/** Below these volts a controller's current limit may bite earlier; a step that gets there asks every group again. */
const LOWEST_V_PER_12V = 9;

/**
 * Room for runs of a prepared scenario.
 * @param lanes members side by side
 * @param spare rows that nobody reads any more; their memory is taken where it fits
 */
export function makeRunRows(
  prepared: Pick<Prepared, "scenario" | "bank" | "grid" | "groups" | "sources" | "loads" | "selector">,
  lanes = 1,
  spare?: RunRows,
): RunRows {
  const { steps } = prepared.grid;
  const cells = lanes * steps;
  const groups = prepared.groups.length;
  const sources = prepared.sources.length;
  const stationAt = groups + 2 * sources;
  const partStride = stationAt + prepared.loads.stations.length;
  return {
    lanes,
    light: makeDomeLight(prepared.scenario.models.transposition, steps, lanes, spare?.light),
    wantedW: zeros(cells, spare?.wantedW),
    figures: new Float64Array(lanes * FIGURES),
    rows: zeros(cells * ROW_SLOTS, spare?.rows),
    bankRows: zeros(lanes === 1 ? steps * BANK_SLOTS : 0, spare?.bankRows),
    parts: zeros(cells * partStride, spare?.parts),
    partStride,
    sourceAt: groups,
    fuelAt: groups + sources,
    stationAt,
    state: new Float64Array(lanes * STATE_SLOTS),
    fixed: makeFixedPower(
      steps,
      LOWEST_V_PER_12V * (prepared.scenario.bank.nominalV / 12),
      prepared.bank.absorptionV,
      lanes,
      spare?.fixed,
    ),
    planes: prepared.groups.map((_, g) => zeros(cells * PLANE_SLOTS, spare?.planes[g])),
    runs: new Float64Array(lanes * sources),
    fuelLeftL: new Float64Array(lanes * sources),
    offeredW: new Float64Array(sources),
    inputW: new Float64Array(prepared.selector.inputs),
  };
}
