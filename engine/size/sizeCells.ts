import { applyChanges } from "../scenario/applyChanges.ts";
import { checkedScenario, type ReadResult } from "../scenario/checkedScenario.ts";
import { crossCheck } from "../scenario/crossCheck.ts";
import type { Problem } from "../scenario/problem.ts";
import type { Scenario } from "../scenario/scenario.ts";
import { timeGrid } from "../scenario/timeGrid.ts";
import { zoneOf } from "../scenario/zoneOf.ts";
import { MOST_CELLS, type SizeAxis, type SizeWish, wishLength, wishValues } from "./sizeAxis.ts";

/** The scenarios of a map, row by row: x runs within a row, y from row to row. */
export interface SizeCells {
  readonly base: Scenario;
  readonly x: SizeAxis;
  readonly y: SizeAxis | null;
  readonly scenarios: readonly Scenario[];
}

type Outcome<T> = { ok: true; value: T } | { ok: false; problems: readonly Problem[] };
const MOST_PROBLEMS = 5;

/**
 * Works every pair of values into the scenario. A map in which any cell is refused is refused: a hole in it would be taken for a
 * failure.
 * @param document a scenario as parsed from its JSON, its zone included
 * @param y null for a map over one number
 */
export function sizeCells(document: unknown, x: SizeWish, y: SizeWish | null): Outcome<SizeCells> {
  const base = checkedScenario(document);
  if (!base.ok) return base;
  const count = wishLength(x) * (y === null ? 1 : wishLength(y));
  if (count > MOST_CELLS) {
    const message = `The map would have ${count} cells and may have at most ${MOST_CELLS}; take fewer values of ${x.at}${y === null ? "" : ` or ${y.at}`}.`;
    return { ok: false, problems: [{ code: "too-many-cells", path: [], message }] };
  }
  if (y !== null && x.at === y.at) {
    const message = `Both directions of the map are ${x.at}; name another field for one of them.`;
    return { ok: false, problems: [{ code: "same-field", path: [], message }] };
  }
  const columns = read(document, base.scenario, x, y);
  if (!columns.ok) return columns;
  if (y === null) {
    return { ok: true, value: { base: base.scenario, x: columns.value.axis, y, scenarios: columns.value.scenarios } };
  }
  const rows = read(document, base.scenario, y, x);
  if (!rows.ok) return rows;
  const scenarios = pairs(document, base.scenario, columns.value, rows.value);
  return scenarios.ok
    ? {
        ok: true,
        value: { base: base.scenario, x: columns.value.axis, y: rows.value.axis, scenarios: scenarios.value },
      }
    : scenarios;
}

interface Line {
  readonly axis: SizeAxis;
  readonly scenarios: readonly Scenario[];
}

/**
 * The scenario with each value of one field.
 * @param beside the other direction: a value that makes no sense with what the scenario has there now may make sense with it
 */
function read(document: unknown, base: Scenario, wish: SizeWish, beside: SizeWish | null): Outcome<Line> {
  const present = fieldAt(base, wish.at);
  const others = beside === null ? [] : wishValues(beside);
  const withValue = (value: number): ReadResult => {
    const alone = withValues(document, [[wish.at, value]]);
    if (alone.ok || beside === null) return alone;
    for (const other of [others[0]!, others.at(-1)!]) {
      const both = withValues(document, [
        [wish.at, value],
        [beside.at, other],
      ]);
      if (both.ok) return both;
    }
    return alone;
  };
  if (present !== undefined && present !== null && typeof present !== "number") {
    // A field that may hold a word or a number, such as the bank's temperature, is tried with the first value.
    const first = withValue(wishValues(wish)[0]!);
    if (!first.ok) {
      const found = typeof present === "string" ? `"${present}"` : typeof present === "object" ? "a group" : present;
      const message = `${wish.at} holds ${found} and not a number, so it makes no direction of a map; name a number such as bank.blockAh or panels.${base.panels[0]?.id ?? "ID"}.count.`;
      return { ok: false, problems: [{ code: "not-a-number", path: wish.at.split("."), message }] };
    }
  }
  const values: number[] = [];
  const scenarios: Scenario[] = [];
  const problems: Problem[] = [];
  const mayRound = "steps" in wish.values;
  for (let value of wishValues(wish)) {
    let found = withValue(value);
    // Steps between two whole numbers may fall between whole numbers where only those are allowed.
    if (!found.ok && mayRound && !Number.isInteger(value)) {
      const whole = Math.round(value);
      const rounded = withValue(whole);
      if (rounded.ok) {
        value = whole;
        found = rounded;
      }
    }
    if (!found.ok) problems.push(...found.problems);
    else if (value !== values.at(-1)) {
      values.push(value);
      scenarios.push(found.scenario);
    }
    if (problems.length >= MOST_PROBLEMS) break;
  }
  if (problems.length > 0) return { ok: false, problems: once(problems) };
  const axis = { at: wish.at, values, present: typeof present === "number" ? present : null };
  return { ok: true, value: { axis, scenarios } };
}

/** The scenario with each pair of values. */
function pairs(document: unknown, base: Scenario, x: Line, y: Line): Outcome<Scenario[]> {
  const xPart = x.axis.at.split(".")[0] as keyof Scenario;
  const yPart = y.axis.at.split(".")[0] as keyof Scenario;
  // Reading takes milliseconds, which many cells make seconds. Two parts that were read apart go together without reading
  // again, except for what is checked across parts; when and where decide how much of that there is.
  const areApart = xPart !== yPart && ![xPart, yPart].some((part) => part === "time" || part === "place");
  const times = timeGrid(base.time, zoneOf(base.place));
  const scenarios: Scenario[] = [];
  for (const [r, row] of y.scenarios.entries()) {
    for (const [c, column] of x.scenarios.entries()) {
      const both: readonly [string, number][] = [
        [x.axis.at, x.axis.values[c]!],
        [y.axis.at, y.axis.values[r]!],
      ];
      let found: ReadResult;
      if (areApart && times.ok) {
        const scenario = { ...row, [xPart]: column[xPart] };
        const problems = crossCheck(scenario, times.grid);
        found = problems.length > 0 ? { ok: false, problems } : { ok: true, scenario };
      } else found = withValues(document, both);
      if (!found.ok) {
        const where = both.map(([at, value]) => `${at} ${value}`).join(" and ");
        const said = found.problems.map((problem) => ({ ...problem, message: `With ${where}: ${problem.message}` }));
        return { ok: false, problems: said };
      }
      scenarios.push(found.scenario);
    }
  }
  return { ok: true, value: scenarios };
}

function withValues(document: unknown, values: readonly (readonly [string, number])[]): ReadResult {
  const changed = applyChanges(
    document,
    values.map(([at, to]) => ({ at, to })),
  );
  if (changed.ok) return checkedScenario(changed.document);
  const problems = changed.problems.map((problem, p) => {
    const [at] = values[p] ?? values[0]!;
    const missing = /finds no "([^"]*)"/.exec(problem.message)?.[1] ?? at;
    const message = `There is no field ${at}: the scenario has no "${missing}" there; check the names, and inside a list write the id of what you mean.`;
    return { code: problem.code, path: at.split("."), message };
  });
  return { ok: false, problems };
}

function once(problems: readonly Problem[]): Problem[] {
  const first = problems.filter((problem, p) => problems.findIndex((each) => each.message === problem.message) === p);
  return first.slice(0, MOST_PROBLEMS);
}

/** What a scenario has at a place written with dots and ids. */
function fieldAt(scenario: Scenario, at: string): unknown {
  let value: unknown = scenario;
  for (const segment of at.split(".")) {
    if (typeof value !== "object" || value === null) return undefined;
    const byId = Array.isArray(value) ? value.find((item) => (item as { id?: unknown })?.id === segment) : undefined;
    value = byId ?? (Object.hasOwn(value, segment) ? (value as Record<string, unknown>)[segment] : undefined);
  }
  return value;
}
