import type { PreparedEnsemble } from "../ensemble/prepareEnsemble.ts";
import type { DriversEnd } from "./driversEnds.ts";
import { heldFigure } from "./driversEnds.ts";
import { INTENSITY, makeDriversRoom, stepDriversMember, WEATHER } from "./driversMember.ts";
import { type DriversRuns, inOrder, joinDriversRuns, keepDriversRun, makeDriversRuns } from "./driversRows.ts";
import { withoutEachLoad } from "./driversShedding.ts";

/** Rows `from` to `to` (not included) of what would be if: a factor at one of its ends, a load switched off. Plain data. */
export interface DriversWhatIfs {
  readonly seed: string;
  readonly of: number;
  readonly from: number;
  readonly to: number;
  /** In the order of the ends that were given. */
  readonly ends: readonly DriversRuns[];
  /** In the order of `sheddableLoads`. */
  readonly shedding: readonly DriversRuns[];
}

/**
 * Runs rows `from` to `to` (not included) with each factor at either end, and without each load.
 * @param of rows of the whole sample
 * @param ends from `driversEnds`, worked out over the whole sample
 * @param withouts from `withoutEachLoad`; given where several stretches are run, for it takes some rows' time
 */
export function driversWhatIfs(
  ensemble: PreparedEnsemble,
  of: number,
  ends: readonly DriversEnd[],
  from: number,
  to: number,
  withouts: readonly PreparedEnsemble[] = withoutEachLoad(ensemble),
): DriversWhatIfs {
  const room = makeDriversRoom(ensemble);
  const { memberOf, held } = room;
  const found = ends.map((end) => ({ end, runs: makeDriversRuns(to - from) }));
  const skyLast = [...found].sort((x, y) => Number(x.end.factor === "weather") - Number(y.end.factor === "weather"));
  const shed = withouts.map((without) => ({
    without,
    room: makeDriversRoom(without, room),
    runs: makeDriversRuns(to - from),
  }));
  for (let m = from; m < to; m++) {
    held[0] = -1;
    for (const { without, room: own, runs } of shed) {
      own.memberOf.fill(m);
      stepDriversMember(without, own);
      keepDriversRun(without, own, runs, m - from);
    }
    for (const { end, runs } of skyLast) {
      memberOf.fill(m);
      if (end.figure < 0)
        memberOf[end.factor === "weather" ? WEATHER : INTENSITY] = end.lenders[m % end.lenders.length]!;
      held[0] = end.figure;
      held[1] = heldFigure(end);
      stepDriversMember(ensemble, room);
      keepDriversRun(ensemble, room, runs, m - from);
    }
  }
  return {
    seed: ensemble.seed,
    of,
    from,
    to,
    ends: found.map(({ runs }) => runs),
    shedding: shed.map(({ runs }) => runs),
  };
}

/**
 * Puts rows together, exactly.
 * @throws RangeError if the parts do not follow one another or are not of one sample
 */
export function mergeDriversWhatIfs(parts: readonly DriversWhatIfs[]): DriversWhatIfs {
  const sorted = inOrder(parts);
  const first = sorted[0]!;
  return {
    seed: first.seed,
    of: first.of,
    from: first.from,
    to: sorted.at(-1)!.to,
    ends: first.ends.map((_, k) => joinDriversRuns(sorted.map(({ ends }) => ends[k]!))),
    shedding: first.shedding.map((_, k) => joinDriversRuns(sorted.map(({ shedding }) => shedding[k]!))),
  };
}
