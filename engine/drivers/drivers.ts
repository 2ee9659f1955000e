import type { PreparedEnsemble } from "../ensemble/prepareEnsemble.ts";
import { type DriversEnd, driversEnds } from "./driversEnds.ts";
import { type DriversReport, driversReport } from "./driversReport.ts";
import { type DriversRows, driversRows, mergeDriversRows, RUNS_PER_ROW } from "./driversRows.ts";
import { sheddableLoads, withoutEachLoad } from "./driversShedding.ts";
import { driversWhatIfs, mergeDriversWhatIfs } from "./driversWhatIfs.ts";

export const DRIVERS_FEWEST_MEMBERS = 20;
/** Rows lie at 0…N−1 and N…2N−1 of the members that a stream can tell apart. */
export const DRIVERS_MOST_MEMBERS = 100_000;

/** Rows between two calls of `between`. */
const ROWS_AT_ONCE = 10;

/**
 * What a scenario's outcome depends on: variance shares by factor, what each factor's ends do, and what switching off each load gains. Every run
 * is paired with the plain members 0…N−1, which are those of `runMembers`.
 *
 * The outcome is the *margin*: lowest charge less reserve, less what loads went without over the bank's full charge at nominal volts. While
 * nothing goes unserved it is the lowest charge; when the bank runs empty it goes on counting, where the lowest charge would stand still.
 *
 * It is `driversRows`, then `driversWhatIfs` at the ends that those rows give, then `driversReport`; workers share the rows of either.
 * @param members rows N, 20…100000; members 0…2N−1 are drawn
 * @param between called with runs done and to do; returning false gives up
 * @returns null when given up
 * @throws RangeError if `members` is out of range
 */
export function drivers(
  ensemble: PreparedEnsemble,
  members: number,
  between: (done: number, of: number) => boolean = () => true,
): DriversReport | null {
  requireDriversRows(members);
  const runs = driversRuns(ensemble, members);
  const inParts = <Part>(
    runsPerRow: number,
    before: number,
    run: (from: number, to: number) => Part,
  ): Part[] | null => {
    const parts: Part[] = [];
    for (let from = 0; from < members; from += ROWS_AT_ONCE) {
      const to = Math.min(members, from + ROWS_AT_ONCE);
      parts.push(run(from, to));
      if (!between(before + to * runsPerRow, runs)) return null;
    }
    return parts;
  };
  const rows = inParts(RUNS_PER_ROW, 0, (from, to) => driversRows(ensemble, members, from, to));
  if (rows === null) return null;
  const whole = mergeDriversRows(rows);
  const ends = endsOf(ensemble, whole);
  const perRow = runs / members - RUNS_PER_ROW;
  const withouts = withoutEachLoad(ensemble);
  const whatIfs = inParts(perRow, members * RUNS_PER_ROW, (from, to) =>
    driversWhatIfs(ensemble, members, ends, from, to, withouts),
  );
  return whatIfs === null ? null : driversReport(ensemble, whole, ends, mergeDriversWhatIfs(whatIfs));
}

/** Where the factors' ends lie, from all rows. */
export function endsOf(ensemble: PreparedEnsemble, rows: DriversRows): DriversEnd[] {
  return driversEnds(ensemble, 0, rows.lightWhM2, rows.sendingWh);
}

/** Runs that a sample takes in all. */
export function driversRuns({ prepared, hasCrowns }: PreparedEnsemble, members: number): number {
  const ends = 2 * (RUNS_PER_ROW - 2 - (hasCrowns ? 0 : 1));
  return members * (RUNS_PER_ROW + ends + sheddableLoads(prepared.scenario).length);
}

/** @throws RangeError if a sample cannot have so many rows */
export function requireDriversRows(members: number): void {
  if (!(Number.isInteger(members) && members >= DRIVERS_FEWEST_MEMBERS && members <= DRIVERS_MOST_MEMBERS)) {
    throw new RangeError(
      `members must be a whole number in ${DRIVERS_FEWEST_MEMBERS}…${DRIVERS_MOST_MEMBERS}, got ${members}`,
    );
  }
}
