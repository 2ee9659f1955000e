import { NOTHING_W } from "../odds/stepCount.ts";
import { ROW_SLOTS, ROW_STORED_AH, ROW_UNSERVED_W } from "../run/runRows.ts";
import { STATE_SLOTS, STORED_AH } from "../run/stepState.ts";
import type { SizeCell } from "./sizeCell.ts";
import type { SizeMap } from "./sizeMap.ts";
import { fillStretch, runCell } from "./sizeStretch.ts";

/** One value per cell, row by row. */
export interface SizeCounts {
  /** Members that never fall below the reserve and serve every load. */
  readonly held: Uint32Array;
  /** Members in which any load ever goes unserved, and those of them that keep their reserve. */
  readonly dark: Uint32Array;
  readonly goesWithout: Uint32Array;
}

/** What is known of a member in a cell: that it fell below the reserve, that a load went unserved, that it was run at all. */
const BELOW = 1;
const DARK = 2;
const KNOWN = 4;

/**
 * Draws members once, and carries them through the cells of a map: through every one, or, where more only helps, along each member's frontier.
 * @param count of the members from `from` on, 1…`map.stretch.most`
 * @param counts receive one more for each cell and member of which they are true
 */
export function countFates(map: SizeMap, from: number, count: number, counts: SizeCounts): void {
  fillStretch(map, from, count);
  const fates = new Uint8Array(map.cells.length * count);
  if (!map.grows || !walkFrontiers(map, count, fates)) runAll(map, count, fates);
  for (let at = 0; at < fates.length; at++) {
    const k = Math.floor(at / count);
    const isDark = (fates[at]! & DARK) !== 0;
    if (isDark) counts.dark[k]!++;
    if ((fates[at]! & BELOW) === 0) (isDark ? counts.goesWithout : counts.held)[k]!++;
  }
}

/** Carries everybody through every cell. */
function runAll(map: SizeMap, count: number, fates: Uint8Array): void {
  const everybody = Int32Array.from({ length: count }, (_, m) => m);
  for (let k = 0; k < map.cells.length; k++) runMembers(map, k, everybody, 0, count, count, fates);
}

/** Carries members through a cell, as many side by side as there are lanes, and notes how each went. */
function runMembers(
  map: SizeMap,
  k: number,
  members: Int32Array,
  first: number,
  last: number,
  count: number,
  fates: Uint8Array,
): void {
  const cell = map.cells[k]!;
  for (let from = first; from < last; from += map.lanes) {
    const lanes = Math.min(map.lanes, last - from);
    runCell(cell, map.stretch, members, from, lanes);
    for (let lane = 0; lane < lanes; lane++) fates[k * count + members[from + lane]!] = fateOf(cell, lane);
  }
}

/**
 * Finds for each member and row the first cell in which it keeps its reserve, and the first in which it stays lit; what lies before fails, what
 * lies after holds. A row's search begins at the frontier of the row before, which it cannot lie beyond.
 * @returns false where somebody goes without and keeps the reserve: cut off by the volts, a smaller plan may keep what a larger one uses
 */
function walkFrontiers(map: SizeMap, count: number, fates: Uint8Array): boolean {
  const width = map.x.values.length;
  const rows = map.cells.length / width;
  const everybody = Int32Array.from({ length: count }, (_, m) => m);
  // Cut off by its volts, the smallest plan is so with the most of its charge left.
  for (let k = 0; k < map.cells.length; k += width) askCell(map, k, everybody, 0, count, count, fates);
  if (fates.some((fate) => (fate & (BELOW | DARK)) === DARK)) return false;
  for (const bit of [BELOW, DARK]) {
    const fails = new Int32Array(count);
    const holds = new Int32Array(count).fill(width);
    for (let y = 0; y < rows; y++) {
      fails.fill(-1);
      searchRow(map, y, bit, count, fails, holds, fates);
      for (let m = 0; m < count; m++) for (let x = 0; x < holds[m]!; x++) fates[(y * width + x) * count + m]! |= bit;
    }
  }
  return !fates.some((fate) => (fate & (BELOW | DARK)) === DARK);
}

/**
 * Narrows, for every member, the stretch of a row in which its frontier lies to nothing.
 * @param fails the last cell known to fail, −1 for none; @param holds the first known to hold; both are moved towards one another
 */
function searchRow(
  map: SizeMap,
  y: number,
  bit: number,
  count: number,
  fails: Int32Array,
  holds: Int32Array,
  fates: Uint8Array,
): void {
  const width = map.x.values.length;
  const starts = new Int32Array(width + 1);
  const asked = new Int32Array(count);
  const members = new Int32Array(count);
  for (let round = 0; ; round++) {
    starts.fill(0);
    for (let m = 0; m < count; m++) {
      const [low, high] = [fails[m]! + 1, holds[m]!];
      // From the frontier of the row before in steps that double; in the first row, by halves.
      asked[m] = low >= high ? -1 : y > 0 ? Math.max(low, high - 2 ** round) : (low + high) >> 1;
      if (asked[m]! >= 0) starts[asked[m]! + 1]!++;
    }
    for (let x = 0; x < width; x++) starts[x + 1]! += starts[x]!;
    if (starts[width] === 0) return;
    const next = starts.slice();
    for (let m = 0; m < count; m++) if (asked[m]! >= 0) members[next[asked[m]!]!++] = m;
    for (let x = 0; x < width; x++) {
      askCell(map, y * width + x, members, starts[x]!, starts[x + 1]!, count, fates);
      for (let at = starts[x]!; at < starts[x + 1]!; at++) {
        const m = members[at]!;
        if ((fates[(y * width + x) * count + m]! & bit) !== 0) fails[m] = Math.max(fails[m]!, x);
        else holds[m] = Math.min(holds[m]!, x);
      }
    }
  }
}

/** Runs those of some members through a cell that have not been there. */
function askCell(
  map: SizeMap,
  k: number,
  members: Int32Array,
  first: number,
  last: number,
  count: number,
  fates: Uint8Array,
): void {
  const fresh = members.subarray(first, last).filter((m) => (fates[k * count + m]! & KNOWN) === 0);
  runMembers(map, k, fresh, 0, fresh.length, count, fates);
}

/** How the member in a lane went: whether the charge ever fell below the reserve, and whether any load ever went unserved. */
function fateOf({ prepared, run, reserveAh }: SizeCell, lane: number): number {
  const { rows } = run;
  const { steps } = prepared.grid;
  const last = (lane + 1) * steps * ROW_SLOTS;
  let fate = KNOWN;
  if (run.state[lane * STATE_SLOTS + STORED_AH]! < reserveAh) fate |= BELOW;
  for (let row = lane * steps * ROW_SLOTS; row < last; row += ROW_SLOTS) {
    if (rows[row + ROW_STORED_AH]! < reserveAh) fate |= BELOW;
    if (rows[row + ROW_UNSERVED_W]! > NOTHING_W) fate |= DARK;
  }
  return fate;
}
