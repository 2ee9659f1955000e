import { type Odds, wilson, Z95 } from "../odds/wilson.ts";
import type { Scenario } from "../scenario/scenario.ts";
import { statedSum } from "../versus/burden.ts";
import type { SizeAxis } from "./sizeAxis.ts";
import { type SizeHandbook, sizeHandbook } from "./sizeHandbook.ts";
import type { SizeMap } from "./sizeMap.ts";
import type { SizePart } from "./sizeMembers.ts";

/** One cell of a map. */
export interface SizeOutcome {
  readonly x: number;
  readonly y: number | null;
  readonly holds: Odds;
  readonly dark: Odds;
  /** Keeps its reserve, and something goes without all the same. */
  readonly goesWithout: Odds;
  /** Holds at least as often as the target asks. */
  readonly meets: boolean;
  /** Whether the sample leaves it open on which side of the target the cell lies. */
  readonly isOpen: boolean;
  /** What bringing it takes; null where the scenario does not say it of everything that grows. */
  readonly cost: number | null;
  readonly massKg: number | null;
}

/** The cells with one value of y. */
export interface SizeRow {
  readonly y: number | null;
  readonly cells: readonly SizeOutcome[];
  /** Cells between the values, run to find the least size that meets the target (`solvedTally`). */
  readonly between: readonly SizeOutcome[];
  /** The smallest x of all cells that meets the target; null where none does. */
  readonly smallest: SizeOutcome | null;
  /** The largest that does: what counts where more is worse, as with sending or a reserve. */
  readonly largest: SizeOutcome | null;
  /** Values of x above the smallest that do not meet it. */
  readonly failsAgainAt: readonly number[];
}

/** What a map says, in figures. */
export interface SizeTally {
  readonly seed: string;
  readonly members: number;
  readonly targetShare: number;
  /** Fewest members with which a cell that never fails would show the target; null for a target of 1, which no number shows. */
  readonly membersToShow: number | null;
  readonly x: SizeAxis;
  readonly y: SizeAxis | null;
  /** In the order of y. */
  readonly rows: readonly SizeRow[];
  /** Of the cells that meet the target: least cost, least mass; null where none does or the scenario does not say what things take. */
  readonly cheapest: SizeOutcome | null;
  readonly lightest: SizeOutcome | null;
  /** Of the cells that meet the target: least of both numbers, each over the middle of its values. */
  readonly smallest: SizeOutcome | null;
  readonly handbook: SizeHandbook;
}

export interface SizeAims {
  /** Share of members in which the bank is to hold, above 0, at most 1. */
  readonly targetShare: number;
  /** Days without sun that the handbook's bank is to bridge. */
  readonly autonomyDays: number;
}

/**
 * Adds a map up, without the words.
 * @param part all its members, merged
 * @throws RangeError if the target or the days leave their range, or the part is of another map
 */
export function sizeTally(map: SizeMap, part: SizePart, { targetShare, autonomyDays }: SizeAims): SizeTally {
  if (!(targetShare > 0 && targetShare <= 1)) throw new RangeError(`targetShare must lie in 0…1, got ${targetShare}`);
  if (part.held.length !== map.cells.length) {
    throw new RangeError(`part must have ${map.cells.length} cells, got ${part.held.length}`);
  }
  const members = part.to - part.from;
  const columns = map.x.values.length;
  const rows = (map.y?.values ?? [null]).map((y, r): SizeRow => {
    const cells = map.x.values.map((x, c): SizeOutcome => {
      const k = r * columns + c;
      const holds = wilson(part.held[k]!, members);
      return {
        x,
        y,
        holds,
        dark: wilson(part.dark[k]!, members),
        goesWithout: wilson(part.goesWithout[k]!, members),
        meets: holds.share >= targetShare,
        isOpen: holds.low < targetShare && holds.high >= targetShare,
        ...burden(map, map.cells[k]!.scenario),
      };
    });
    return { y, cells, between: [], smallest: null, largest: null, failsAgainAt: [] };
  });
  return chosen({
    seed: part.seed,
    members,
    targetShare,
    membersToShow: targetShare === 1 ? null : Math.ceil((Z95 * Z95 * targetShare) / (1 - targetShare)),
    x: map.x,
    y: map.y,
    rows,
    cheapest: null,
    lightest: null,
    smallest: null,
    handbook: sizeHandbook(map.base, autonomyDays),
  });
}

/** The tally with its choices made from its cells: in each row, and among all. */
export function chosen(tally: SizeTally): SizeTally {
  const { x, y } = tally;
  const rows = tally.rows.map((row): SizeRow => {
    const all = [...row.cells, ...row.between].sort((a, b) => a.x - b.x);
    const smallest = all.find((cell) => cell.meets) ?? null;
    const failsAgainAt = smallest === null ? [] : all.filter((cell) => cell.x > smallest.x && !cell.meets);
    const largest = all.findLast((cell) => cell.meets) ?? null;
    return { ...row, smallest, largest, failsAgainAt: failsAgainAt.map((cell) => cell.x) };
  });
  const meeting = rows.flatMap((row) => [...row.cells, ...row.between].filter((cell) => cell.meets));
  return {
    ...tally,
    rows,
    cheapest: least(meeting, (cell) => cell.cost),
    lightest: least(meeting, (cell) => cell.massKg),
    smallest: least(meeting, (cell) => overMiddle(x, cell.x) + (y === null ? 0 : overMiddle(y, cell.y!))),
  };
}

/** Whether a cell misses the target only by loads that go without while the charge keeps its reserve. */
export function missesByLoads(cell: SizeOutcome, targetShare: number): boolean {
  return !cell.meets && cell.holds.share + cell.goesWithout.share >= targetShare;
}

/** A value over the present one, or over the middle of the values where there is none. */
function overMiddle(axis: SizeAxis, value: number): number {
  const middle = axis.present ?? axis.values[Math.floor(axis.values.length / 2)]!;
  return middle > 0 ? value / middle : value;
}

/** The cell with the least of something; of equals the one that holds more often. Null where nobody says it. */
function least(cells: readonly SizeOutcome[], of: (cell: SizeOutcome) => number | null): SizeOutcome | null {
  let best: SizeOutcome | null = null;
  for (const cell of cells) {
    const value = of(cell);
    if (value === null) continue;
    const before = best === null ? Number.POSITIVE_INFINITY : of(best)!;
    if (value < before || (value === before && cell.holds.count > best!.holds.count)) best = cell;
  }
  return best;
}

/**
 * What a cell takes to bring. A block's and a module's figures are stated for the present size and taken in proportion to
 * ampere-hours and watts. Where no direction of the map is a size, there is nothing to choose; where something grows for which nothing (or nothing but 0) is stated, the sum would be a lie: null.
 */
function burden(map: SizeMap, scenario: Scenario): { cost: number | null; massKg: number | null } {
  const base = map.base.scenario;
  const perAh = scenario.bank.blockAh / base.bank.blockAh;
  const scaled: Scenario = {
    ...scenario,
    bank: { ...scenario.bank, bring: times(scenario.bank.bring, perAh) },
    panels: scenario.panels.map((group, g) => {
      const perW = group.module.ratedW / (base.panels[g]?.module.ratedW ?? group.module.ratedW);
      return { ...group, bring: times(group.bring, perW) };
    }),
  };
  const grown = [map.x, map.y].flatMap((axis) => (axis === null ? [] : grownBy(axis, base)));
  const known = (field: "cost" | "massKg") => grown.length > 0 && grown.every((bring) => (bring?.[field] ?? 0) > 0);
  return {
    cost: known("cost") ? statedSum(scaled, "cost") : null,
    massKg: known("massKg") ? statedSum(scaled, "massKg") : null,
  };
}

type Bring = Scenario["bank"]["bring"];

function times(bring: Bring, factor: number): Bring {
  if (bring === undefined) return undefined;
  return {
    ...bring,
    ...(bring.cost === undefined ? {} : { cost: bring.cost * factor }),
    ...(bring.massKg === undefined ? {} : { massKg: bring.massKg * factor }),
  };
}

/** Whether a direction of the map is a size, of which more is bought; else it is a habit, a setting or a place. */
export function isSize({ at }: SizeAxis): boolean {
  return BANK_SIZE.test(at) || PANEL_SIZE.test(at);
}

const BANK_SIZE = /^bank\.(blockAh|inParallel)$/;
const PANEL_SIZE = /^panels\.([^.]+)\.(count|module\.ratedW)$/;

/** What is bought more of along a direction of the map. */
function grownBy({ at }: SizeAxis, base: Scenario): Bring[] {
  if (BANK_SIZE.test(at)) return [base.bank.bring];
  const [, id] = PANEL_SIZE.exec(at) ?? [];
  if (id === undefined) return [];
  return [(base.panels.find((group) => group.id === id) ?? base.panels[Number(id)])?.bring];
}
