import { PLANE_SLOTS } from "../array/planeSlots.ts";
import { drawOperators } from "../ensemble/operators.ts";
import { drawFigures } from "../run/memberFigures.ts";
import { requireFedLoads, requireFedSky } from "../run/requireFed.ts";
import { stepLaneFigures, stepLaneLight, stepPanels, stepPower } from "../run/stepRun.ts";
import { drawSky } from "../sky/skyEnsemble.ts";
import type { KeptPanels, SizeStretch } from "./makeSizeStretch.ts";
import type { SizeCell } from "./sizeCell.ts";
import type { SizeMap } from "./sizeMap.ts";

/**
 * Draws into a map's stretch members `from` to `from + count` (not included) and works out what they bring.
 * @param count 1…`stretch.most`
 */
export function fillStretch(map: SizeMap, from: number, count: number): void {
  const { stretch } = map;
  for (let first = 0; first < count; first += map.lanes) {
    const lanes = Math.min(map.lanes, count - first);
    for (let lane = 0; lane < lanes; lane++) fillMember(map, from + first + lane, first + lane, lane);
    for (const kept of stretch.panels.values()) keepPanels(kept, stretch, first, lanes);
  }
}

function fillMember(map: SizeMap, member: number, at: number, lane: number): void {
  const { seed, words, skies, under, loads, inputs, stretch } = map;
  for (let k = 0; k < skies.length; k++) {
    const { ensemble, light, airTempC } = skies[k]!;
    drawSky(ensemble.skies, words, member, light, airTempC);
    requireFedSky(seed, member, light, airTempC);
    stepLaneLight(under[k]!.prepared, light, airTempC, under[k]!.run, lane);
  }
  for (let k = 0; k < loads.length; k++) {
    const { ensemble, spread, inputs: drawn } = loads[k]!;
    const { operators, prepared } = ensemble;
    drawFigures(1, spread, operators.state, words, member, drawn.figures);
    drawOperators(prepared, operators, words, member, drawn);
    requireFedLoads(seed, member, drawn);
    stretch.wanted.get(loads[k]!)!.set(drawn.wantedW, at * drawn.wantedW.length);
  }
  for (let k = 0; k < inputs.length; k++) {
    const { startShare, loads: of } = inputs[k]!;
    const figures = stretch.figures.get(inputs[k]!)![at]!;
    drawFigures(startShare, of.spread, of.ensemble.operators.state, words, member, figures);
  }
}

/** Works out what the sky makes of a cell's panels for the members in its lanes, and keeps it. */
function keepPanels(kept: KeptPanels, { figures }: SizeStretch, first: number, lanes: number): void {
  const { prepared, run, inputs } = kept.cell;
  const { steps } = prepared.grid;
  for (let lane = 0; lane < lanes; lane++) stepLaneFigures(prepared, figures.get(inputs)![first + lane]!, run, lane);
  stepPanels(prepared, run, lanes);
  const { sumW, coupled } = run.fixed;
  kept.sumW.set(sumW.subarray(0, lanes * steps), first * steps);
  kept.coupled.set(coupled.subarray(0, lanes * steps), first * steps);
  // A selector asks every group in every step.
  const keepsAll = prepared.selector.inputs > 0;
  const groups = run.planes.length;
  if (first === 0) kept.firstRow[0] = 0;
  for (let lane = 0; lane < lanes; lane++) {
    let row = kept.firstRow[first + lane]!;
    for (let i = 0; i < steps; i++) {
      const cell = lane * steps + i;
      if (!keepsAll && coupled[cell] === 0) continue;
      if (row === kept.rowStep.length) growRows(kept, groups);
      kept.rowStep[row] = i;
      for (let g = 0; g < groups; g++) {
        const from = cell * PLANE_SLOTS;
        const to = (row * groups + g) * PLANE_SLOTS;
        for (let k = 0; k < PLANE_SLOTS; k++) kept.rows[to + k] = run.planes[g]![from + k]!;
      }
      row++;
    }
    kept.firstRow[first + lane + 1] = row;
  }
}

const FIRST_ROWS = 256;

function growRows(kept: KeptPanels, groups: number): void {
  const { rowStep, rows } = kept;
  const length = Math.max(FIRST_ROWS, 2 * rowStep.length);
  kept.rowStep = new Int32Array(length);
  kept.rowStep.set(rowStep);
  kept.rows = new Float64Array(length * groups * PLANE_SLOTS);
  kept.rows.set(rows);
}

/**
 * Carries some members of a stretch through one cell, side by side; afterwards the cell's rows tell how each went, one lane after the other.
 * @param members their places in the stretch
 * @param first where among `members` they stand, and `lanes` how many there are, 1…`map.lanes`
 */
export function runCell(
  { prepared, run, inputs, panels }: SizeCell,
  stretch: SizeStretch,
  members: Int32Array,
  first: number,
  lanes: number,
): void {
  const { steps } = prepared.grid;
  const kept = stretch.panels.get(panels)!;
  const wantedW = stretch.wanted.get(inputs.loads)!;
  const figures = stretch.figures.get(inputs)!;
  for (let lane = 0; lane < lanes; lane++) {
    const member = members[first + lane]!;
    const from = member * steps;
    const to = lane * steps;
    for (let i = 0; i < steps; i++) {
      run.wantedW[to + i] = wantedW[from + i]!;
      run.fixed.sumW[to + i] = kept.sumW[from + i]!;
      run.fixed.coupled[to + i] = kept.coupled[from + i]!;
    }
    putRows(kept, member, run.planes, to);
    stepLaneFigures(prepared, figures[member]!, run, lane);
  }
  stepPower(prepared, run, lanes, 0);
}

/** Puts a member's kept rows back where the bank's volts may write over them. */
function putRows(kept: KeptPanels, member: number, planes: readonly Float64Array[], to: number): void {
  const groups = planes.length;
  const last = kept.firstRow[member + 1]!;
  for (let row = kept.firstRow[member]!; row < last; row++) {
    const cell = to + kept.rowStep[row]!;
    for (let g = 0; g < groups; g++) {
      const plane = planes[g]!;
      const from = (row * groups + g) * PLANE_SLOTS;
      for (let k = 0; k < PLANE_SLOTS; k++) plane[cell * PLANE_SLOTS + k] = kept.rows[from + k]!;
    }
  }
}
