import { drawOperators } from "../ensemble/operators.ts";
import { NOTHING_W } from "../odds/stepCount.ts";
import { drawFigures } from "../run/memberFigures.ts";
import type { Prepared } from "../run/prepare.ts";
import { requireFedLoads, requireFedSky } from "../run/requireFed.ts";
import { ROW_SLOTS, ROW_STORED_AH, ROW_UNSERVED_W, type RunRows } from "../run/runRows.ts";
import { stepLaneFigures, stepLaneLight, stepPanels, stepPower } from "../run/stepRun.ts";
import { STATE_SLOTS, STORED_AH } from "../run/stepState.ts";
import { drawSky } from "../sky/skyEnsemble.ts";
import type { SizeCell } from "./sizeCell.ts";
import type { SizeMap } from "./sizeMap.ts";

/** One value per cell, row by row. */
export interface SizeCounts {
  /** Members that never fall below the reserve and serve every load. */
  readonly held: Uint32Array;
  /** Members in which any load ever goes unserved, and those of them that keep their reserve. */
  readonly dark: Uint32Array;
  readonly goesWithout: Uint32Array;
}

/**
 * Draws members once, side by side, and carries them through every cell of a map.
 * @param count of the members from `from` on, 1…`map.lanes`
 * @param counts receive one more for each cell and member of which they are true
 */
export function stepSizes(map: SizeMap, from: number, count: number, { held, dark, goesWithout }: SizeCounts): void {
  for (let lane = 0; lane < count; lane++) drawSizesMember(map, from + lane, lane);
  const { cells, panels } = map;
  for (let k = 0; k < panels.length; k++) panels[k]!.isSettled = false;
  for (let k = 0; k < cells.length; k++) {
    const cell = cells[k]!;
    stepCell(cell, count);
    for (let lane = 0; lane < count; lane++) {
      const isDark = stepIsDark(cell.prepared, cell.run, lane);
      if (isDark) dark[k]!++;
      if (stepKeepsReserve(cell, lane)) (isDark ? goesWithout : held)[k]!++;
    }
  }
}

/** Draws a member's skies, loads and figures into a lane of all runs that share them. */
function drawSizesMember({ seed, words, skies, under, loads, inputs }: SizeMap, member: number, lane: number): void {
  for (let k = 0; k < skies.length; k++) {
    const { ensemble, light, airTempC } = skies[k]!;
    drawSky(ensemble.skies, words, member, light, airTempC);
    requireFedSky(seed, member, light, airTempC);
    stepLaneLight(under[k]!.prepared, light, airTempC, under[k]!.run, lane);
  }
  for (let k = 0; k < loads.length; k++) {
    const { ensemble, spread, inputs: drawn, wantedW } = loads[k]!;
    const { operators, prepared } = ensemble;
    drawFigures(1, spread, operators.state, words, member, drawn.figures);
    drawOperators(prepared, operators, words, member, drawn);
    requireFedLoads(seed, member, drawn);
    wantedW.set(drawn.wantedW, lane * drawn.wantedW.length);
  }
  for (let k = 0; k < inputs.length; k++) {
    const { startShare, figures, loads: of } = inputs[k]!;
    drawFigures(startShare, of.spread, of.ensemble.operators.state, words, member, figures[lane]!);
  }
}

function stepCell({ prepared, run, inputs, panels }: SizeCell, count: number): void {
  for (let lane = 0; lane < count; lane++) stepLaneFigures(prepared, inputs.figures[lane]!, run, lane);
  if (!panels.isSettled) {
    stepPanels(prepared, run, count);
    panels.isSettled = isSettled(run);
  }
  stepPower(prepared, run, count, 0);
}

/** Whether no step depends on the bank's volts. */
function isSettled({ fixed }: RunRows): boolean {
  const { coupled } = fixed;
  for (let cell = 0; cell < coupled.length; cell++) if (coupled[cell] !== 0) return false;
  return true;
}

/** Whether the charge never fell below the reserve. */
function stepKeepsReserve({ prepared, run, reserveAh }: SizeCell, lane: number): boolean {
  const { rows } = run;
  const { steps } = prepared.grid;
  const last = (lane + 1) * steps * ROW_SLOTS;
  for (let row = lane * steps * ROW_SLOTS; row < last; row += ROW_SLOTS) {
    if (rows[row + ROW_STORED_AH]! < reserveAh) return false;
  }
  return run.state[lane * STATE_SLOTS + STORED_AH]! >= reserveAh;
}

/** Whether any load ever went unserved. */
function stepIsDark(prepared: Prepared, run: RunRows, lane: number): boolean {
  const { rows } = run;
  const { steps } = prepared.grid;
  const last = (lane + 1) * steps * ROW_SLOTS;
  for (let row = lane * steps * ROW_SLOTS; row < last; row += ROW_SLOTS) {
    if (rows[row + ROW_UNSERVED_W]! > NOTHING_W) return true;
  }
  return false;
}
