import type { PreparedEnsemble } from "../ensemble/prepareEnsemble.ts";
import { CANOPY_REACH, FIGURE_CANOPY_NORMAL } from "../run/memberFigures.ts";
import { INPUT_MAX_CHARGE_A, ownInputs } from "../run/memberInputs.ts";
import type { Prepared } from "../run/prepare.ts";
import { makeRunRows, ROW_SLOTS, ROW_SOLAR_W } from "../run/runRows.ts";
import { stepRun } from "../run/stepRun.ts";
import type { SkyLight } from "../sky/splitDiffuse.ts";

/** Most charging current that the bank's temperature allows in each step, A. */
export interface ChargeLimits {
  readonly maxChargeA: Float64Array;
}

/** What the plan has for each step, against which a log is read. */
export interface PlannedRows extends ChargeLimits {
  /** Drawn between transmissions, and on top of it by sending, W at the bank's terminals. */
  readonly quietW: Float64Array;
  readonly sendingW: Float64Array;
  /** Panels' power at the bank under the sky that the log is read against. */
  readonly sunW: Float64Array;
  /** How far that moves, as a share of itself, when the crowns let one spread more through; 0 where no crown has a say. */
  readonly canopyShare: Float64Array;
}

/** @param light the sky to hold the log against: a cloudless one, or the one that was measured */
export function plannedRows(ensemble: PreparedEnsemble, light: SkyLight): PlannedRows {
  const { prepared } = ensemble;
  const { loads, converterShare } = prepared;
  const sunW = offeredW(prepared, light, 0);
  const lighterW = ensemble.hasCrowns ? offeredW(prepared, light, CANOPY_REACH) : sunW;
  return {
    quietW: loads.quietW.map((watts) => watts / converterShare),
    sendingW: loads.wantedW.map((watts, i) => (watts - loads.quietW[i]!) / converterShare),
    sunW,
    canopyShare: sunW.map((watts, i) => (watts > 0 ? (lighterW[i]! - watts) / watts / CANOPY_REACH : 0)),
    ...chargeLimits(prepared),
  };
}

export function chargeLimits({ grid, inputs }: Prepared): ChargeLimits {
  const maxChargeA = Float64Array.from(
    { length: grid.steps },
    (_, i) => inputs.rows[i * inputs.stride + INPUT_MAX_CHARGE_A]!,
  );
  return { maxChargeA };
}

/** @param canopyNormal how much lighter the crowns are, in standard deviations */
function offeredW(prepared: Prepared, light: SkyLight, canopyNormal: number): Float64Array {
  const inputs = ownInputs(prepared.inputs, prepared.inputs.wantedW);
  inputs.figures[FIGURE_CANOPY_NORMAL] = canopyNormal;
  const run = makeRunRows(prepared);
  stepRun(prepared, light, prepared.airTempC, inputs, run);
  return Float64Array.from({ length: prepared.grid.steps }, (_, i) => run.rows[i * ROW_SLOTS + ROW_SOLAR_W]!);
}
