import { drawSky } from "../sky/skyEnsemble.ts";
import { drawFigures } from "./memberFigures.ts";
import { drawOperators } from "./operators.ts";
import type { Prepared } from "./prepare.ts";
import { ROW_SLOTS, ROW_STORED_AH, ROW_UNSERVED_W, type RunRows } from "./runRows.ts";
import type { SizeMap } from "./sizeMap.ts";
import { NOTHING_W } from "./stepCount.ts";
import { stepRun } from "./stepRun.ts";
import { STORED_AH } from "./stepState.ts";

/**
 * Draws one member once and carries it through every cell of a map.
 * @param held receives one more for each cell in which the charge never falls below the reserve; one value per cell
 * @param dark receives one more for each cell in which any load goes unserved
 */
export function stepSizes(map: SizeMap, member: number, held: Uint32Array, dark: Uint32Array): void {
  const { words, skies, loads, inputs, cells } = map;
  for (let k = 0; k < skies.length; k++) {
    const sky = skies[k]!;
    drawSky(sky.ensemble.skies, words, member, sky.light, sky.airTempC);
  }
  for (let k = 0; k < loads.length; k++) {
    const { ensemble, spread, inputs: drawn } = loads[k]!;
    const { operators, prepared } = ensemble;
    drawFigures(1, spread, operators.state, words, member, drawn.figures);
    drawOperators(prepared, operators, words, member, drawn);
  }
  for (let k = 0; k < inputs.length; k++) {
    const fed = inputs[k]!;
    const { ensemble, spread } = fed.loads;
    drawFigures(fed.startShare, spread, ensemble.operators.state, words, member, fed.inputs.figures);
  }
  for (let k = 0; k < cells.length; k++) {
    const { prepared, sky, inputs: fed, run, reserveAh } = cells[k]!;
    stepRun(prepared, sky.light, sky.airTempC, fed, run);
    if (stepHolds(prepared, run, reserveAh)) held[k]!++;
    if (stepIsDark(prepared, run)) dark[k]!++;
  }
}

/** Whether the charge never fell below the reserve. */
function stepHolds(prepared: Prepared, run: RunRows, reserveAh: number): boolean {
  const { rows } = run;
  const last = prepared.grid.steps * ROW_SLOTS;
  for (let row = 0; row < last; row += ROW_SLOTS) if (rows[row + ROW_STORED_AH]! < reserveAh) return false;
  return run.state[STORED_AH]! >= reserveAh;
}

/** Whether any load ever went unserved. */
function stepIsDark(prepared: Prepared, run: RunRows): boolean {
  const { rows } = run;
  const last = prepared.grid.steps * ROW_SLOTS;
  for (let row = 0; row < last; row += ROW_SLOTS) if (rows[row + ROW_UNSERVED_W]! > NOTHING_W) return true;
  return false;
}
