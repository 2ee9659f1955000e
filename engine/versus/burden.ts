import type { Bring } from "../scenario/bring.ts";
import type { Scenario } from "../scenario/scenario.ts";
import type { TimeGrid } from "../scenario/timeGrid.ts";
import { MINUTES_A_TURN, turnsIn } from "./turns.ts";

const BURDEN_FIELDS = ["cost", "massKg", "setupMinutes"] as const;
type BurdenField = (typeof BURDEN_FIELDS)[number];

/** What bringing a scenario's blocks, panels and sources takes: sums of what is stated, null where nothing is. */
export interface Burden {
  readonly cost: number | null;
  readonly massKg: number | null;
  readonly setupMinutes: number | null;
  /** Sums that are short of something: not every block, module or source states it. */
  readonly lacks: readonly BurdenField[];
  /** Re-aimings by hand over the event, all groups together, and the minutes that they are counted as. */
  readonly turns: number;
  readonly turnMinutes: number;
}

/** What one scenario takes more than another; null where what they do not share is not stated. */
export interface BurdenMore {
  readonly cost: number | null;
  readonly massKg: number | null;
  /** Setting up and re-aiming. */
  readonly minutes: number | null;
}

interface Piece {
  readonly times: number;
  /** Ampere-hours of a block, watts of a module. */
  readonly size: number;
  readonly bring: Bring | undefined;
}

type Pieces = ReadonlyMap<string, Piece>;

function piecesOf({ bank, panels, sources }: Scenario): Pieces {
  return new Map<string, Piece>([
    ["bank", { times: bank.inSeries * bank.inParallel, size: bank.blockAh, bring: bank.bring }],
    ...panels.map(({ id, count, module, bring }): [string, Piece] => [
      `panels.${id}`,
      { times: count, size: module.ratedW, bring },
    ]),
    ...sources.map(({ id, bring }): [string, Piece] => [`sources.${id}`, { times: 1, size: 0, bring }]),
  ]);
}

/**
 * The pieces with what is stated of them, and not of what they were before: a block of another size whose money, weight and work are all as they
 * were has had none of them stated.
 */
function restated(pieces: Pieces, before: Pieces): Pieces {
  const isLeft = ({ size, bring }: Piece, was: Piece | undefined) =>
    was !== undefined &&
    bring !== undefined &&
    size !== was.size &&
    BURDEN_FIELDS.every((field) => bring[field] === was.bring?.[field]);
  return new Map(
    [...pieces].map(([key, piece]): [string, Piece] => {
      return [key, isLeft(piece, before.get(key)) ? { ...piece, bring: undefined } : piece];
    }),
  );
}

function sumOf(pieces: Pieces, field: BurdenField): number | null {
  let total: number | null = null;
  for (const { times, bring } of pieces.values()) {
    const value = bring?.[field];
    if (value !== undefined && times > 0) total = (total ?? 0) + times * value;
  }
  return total;
}

/** Sums what is stated of one thing for blocks, panels and sources; null where nothing is. */
export function statedSum(scenario: Scenario, field: BurdenField): number | null {
  return sumOf(piecesOf(scenario), field);
}

/** Of what is at hand for nothing, more is seldom to be had for nothing: a stated 0 says nothing of a further one. */
const isFreeAndMore = (value: number, times: number, before: number) => value === 0 && before > 0 && times > before;

/**
 * Sums what is stated for blocks, panels and sources, and counts the turns by hand.
 * @param grid the event's; @param against what it is held against: of what both bring, more for nothing is not stated
 */
export function burdenOf(scenario: Scenario, grid: TimeGrid, against: Scenario | null = null): Burden {
  const before: Pieces = against === null ? new Map() : piecesOf(against);
  const pieces = restated(piecesOf(scenario), before);
  const lacks = new Set<BurdenField>();
  for (const field of BURDEN_FIELDS) {
    for (const [key, { times, bring }] of pieces) {
      const value = bring?.[field];
      const isShort = value === undefined || isFreeAndMore(value, times, before.get(key)?.times ?? 0);
      if (times > 0 && isShort) lacks.add(field);
    }
  }
  const turns = turnsOf(scenario, grid);
  const [cost, massKg, setupMinutes] = [sumOf(pieces, "cost"), sumOf(pieces, "massKg"), sumOf(pieces, "setupMinutes")];
  return { cost, massKg, setupMinutes, lacks: [...lacks], turns, turnMinutes: MINUTES_A_TURN * turns };
}

function turnsOf({ panels }: Scenario, grid: TimeGrid): number {
  return panels.reduce(
    (sum, { count, mount }) =>
      sum +
      (mount.kind === "aimed" && count > 0
        ? turnsIn(
            mount.aims.map(({ at }) => at),
            grid,
          )
        : 0),
    0,
  );
}

/** What a scenario takes more than the first: what both bring alike cancels, stated or not. */
export function burdenMore(first: Scenario, other: Scenario, grids: readonly [TimeGrid, TimeGrid]): BurdenMore {
  const a = piecesOf(first);
  const b = restated(piecesOf(other), a);
  const keys = [...new Set([...a.keys(), ...b.keys()])];
  const none: Piece = { times: 0, size: 0, bring: undefined };
  const more = (field: BurdenField) =>
    keys.reduce<number | null>((sum, key) => {
      const [was, is] = [a.get(key) ?? none, b.get(key) ?? none];
      const [from, to] = [was.bring?.[field], is.bring?.[field]];
      if (sum === null || (was.times === is.times && from === to)) return sum;
      const isUnstated = (was.times > 0 && from === undefined) || (is.times > 0 && to === undefined);
      if (isUnstated || (is.times > 0 && isFreeAndMore(to!, is.times, was.times))) return null;
      return sum + is.times * (to ?? 0) - was.times * (from ?? 0);
    }, 0);
  const minutes = more("setupMinutes");
  const turns = turnsOf(other, grids[1]) - turnsOf(first, grids[0]);
  return {
    cost: more("cost"),
    massKg: more("massKg"),
    minutes: minutes === null ? null : minutes + MINUTES_A_TURN * turns,
  };
}
