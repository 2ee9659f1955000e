import type { PreparedGroup } from "../array/preparedGroup.ts";
import { INPUT_MAX_CHARGE_A } from "../run/memberInputs.ts";
import type { Prepared } from "../run/prepare.ts";
import { inShape } from "../run/prepare.ts";
import type { PreparedEnsemble } from "../run/prepareEnsemble.ts";
import { makeRunRows, ROW_SOLAR_W } from "../run/runRows.ts";
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
  const { prepared, canopy } = ensemble;
  const { loads, converterShare } = prepared;
  const sunW = offeredW(prepared, prepared.groups, light);
  const lighterW = canopy === null ? sunW : offeredW(prepared, canopy.lighter, light);
  return {
    quietW: loads.quietW.map((watts) => watts / converterShare),
    sendingW: loads.wantedW.map((watts, i) => (watts - loads.quietW[i]!) / converterShare),
    sunW,
    // The lighter crowns stand two spreads off.
    canopyShare: sunW.map((watts, i) => (watts > 0 ? (lighterW[i]! - watts) / watts / 2 : 0)),
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

function offeredW(prepared: Prepared, groups: readonly PreparedGroup[], light: SkyLight): Float64Array {
  const own = inShape({ ...prepared, groups });
  const run = makeRunRows(own);
  stepRun(own, light, prepared.airTempC, prepared.inputs, run);
  return Float64Array.from({ length: prepared.grid.steps }, (_, i) => run.rows[i * run.stride + ROW_SOLAR_W]!);
}
