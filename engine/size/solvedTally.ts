import type { Scenario } from "../scenario/scenario.ts";
import type { SizeAxis, SizeWish } from "./sizeAxis.ts";
import { chosen, isSize, type SizeOutcome, type SizeRow, type SizeTally } from "./sizeTally.ts";

/** Runs a smaller map of the same scenario under the same members and aims. */
export type RunSizes = (x: SizeWish, y: SizeWish | null) => Promise<SizeTally>;

/** Values of one round: enough that a second round ends nearly every search. */
const MOST_AT_ONCE = 8;

/**
 * Finds, between the values that were asked for, the least size of each row that meets the target: to 5 Ah of a block (1 Ah of a small one), to
 * one string of modules, one block, 5 W. It holds the target and the next smaller does not, under the map's own members. Columns that it
 * takes are run for all rows, so that lines of equal odds go through what is found.
 * @returns the tally as it was where the direction is no size, or nothing lies between
 */
export async function solvedTally(tally: SizeTally, base: Scenario, run: RunSizes): Promise<SizeTally> {
  const { x, y } = tally;
  if (!isSize(x)) return tally;
  const step = stepOf(x, base);
  const values = new Set<number>();
  for (const row of tally.rows) {
    const ends = await leastBetween(row, step, (inside) =>
      run({ at: x.at, values: inside }, y === null ? null : { at: y.at, values: [row.y!] }),
    );
    for (const end of ends) if (!x.values.includes(end)) values.add(end);
  }
  if (values.size === 0) return tally;
  const wish = { at: x.at, values: [...values].sort((a, b) => a - b) };
  const more = await run(wish, y === null ? null : { at: y.at, values: y.values });
  const rows = tally.rows.map((row, r) => ({ ...row, between: more.rows[r]!.cells }));
  return chosen({ ...tally, rows });
}

/** The values on either side of the target, one step apart; none where it is met by the first cell or by none. */
async function leastBetween(
  row: SizeRow,
  step: number,
  run: (values: readonly number[]) => Promise<SizeTally>,
): Promise<readonly number[]> {
  const k = row.cells.findIndex(({ meets }) => meets);
  if (k < 1) return [];
  let [low, high] = [row.cells[k - 1]!.x, row.cells[k]!.x];
  for (let inside = valuesBetween(low, high, step); inside.length > 0; inside = valuesBetween(low, high, step)) {
    const { cells } = (await run(inside)).rows[0]!;
    const met = cells.findIndex(({ meets }) => meets);
    if (met < 0) low = cells.at(-1)!.x;
    else {
      high = cells[met]!.x;
      if (met > 0) low = cells[met - 1]!.x;
    }
  }
  return [low, high];
}

/** Multiples of a step between two values, spread evenly where there are many. */
function valuesBetween(low: number, high: number, step: number): number[] {
  const [first, last] = [Math.floor(low / step + 1e-9) + 1, Math.ceil(high / step - 1e-9) - 1];
  const count = last - first + 1;
  if (count <= 0) return [];
  const many = Math.min(count, MOST_AT_ONCE);
  const at = (k: number) =>
    many === 1 ? Math.floor((first + last) / 2) : first + Math.round((k * (count - 1)) / (many - 1));
  return [...new Set(Array.from({ length: many }, (_, k) => at(k) * step))];
}

/** The smallest difference in a size that anybody buys. */
function stepOf({ at }: SizeAxis, { bank, panels }: Scenario): number {
  if (at === "bank.blockAh") return bank.blockAh >= 20 ? 5 : 1;
  const [, id, field] = /^panels\.([^.]+)\.(count|module\.ratedW)$/.exec(at) ?? [];
  if (field === "module.ratedW") return 5;
  return panels.find((group) => group.id === id)?.inSeries ?? 1;
}

/** All cells of a row, those between the values with the others, in order. */
export function allCells({ cells, between }: SizeRow): readonly SizeOutcome[] {
  return [...cells, ...between].sort((a, b) => a.x - b.x);
}
