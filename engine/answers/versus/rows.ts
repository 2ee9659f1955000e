import { differenceInUnits } from "../../words/displayUnits.ts";
import { energy, figure, hours, percent, THIN } from "../../words/numbers.ts";
import { inHundred, oddsRange } from "../../words/oddsWords.ts";
import type { PlanColumn } from "./planColumns.ts";
import type { Side } from "./versusPicture.ts";

/** What a table says of each scenario. */
type Row = {
  readonly id: string;
  readonly name: string;
  readonly cell: (side: Side) => string;
  /** What is compared, where one is better than another; null where it is not known. */
  readonly value?: (side: Side) => number | null;
  /** The least that it can be, where not all of it is stated. */
  readonly atLeast?: (side: Side) => number | null;
  readonly better?: "more" | "less";
  /** Where all columns say the same. */
  readonly once: (cell: string) => string;
};

export const NOT_STATED = "not stated";

const minutes = (value: number) => `${figure(value, 1)}${THIN}min`;
const workOf = ({ burden: { setupMinutes, turns, turnMinutes } }: Side) =>
  setupMinutes === null && turns === 0 ? null : (setupMinutes ?? 0) + turnMinutes;
const onAirH = ({ onAir }: Side) => onAir.reduce((sum, station) => sum + station.hours, 0);
const isWhole = ({ burden }: Side, field: "cost" | "massKg" | "setupMinutes") => !burden.lacks.includes(field);

/** "900", "at least 900" where something does not state it, "not stated" where nothing does. */
function stated(value: number | null, isAll: boolean, say: (value: number) => string): string {
  if (value === null || (!isAll && value === 0)) return NOT_STATED;
  return isAll ? say(value) : `at least ${say(value)}`;
}

/** ">99" and "<1" where a hundred skies have no whole one to show. */
export const shortOdds = (odds: Side["holds"]) =>
  inHundred(odds)
    .replace("more than ", ">")
    .replace(/^(fewer|less) than /, "<");

/** "Sat 18–21": the three hours in which most failing skies first fail. */
export function failsWindow({ failsMostly, holds }: Side): string {
  if (failsMostly === null) return "never";
  if (holds.share > 0.99) return "hardly ever";
  const [weekday, day] = failsMostly.from.words.split(" ");
  const clock = ({ clock }: { readonly clock: string }) => clock.replace(/:00$/, "");
  return `${weekday} ${day}, ${clock(failsMostly.from)}–${clock(failsMostly.to)}`;
}

const burdenRow = (
  id: string,
  name: string,
  field: "cost" | "massKg" | "setupMinutes",
  of: (side: Side) => number | null,
  say: (value: number) => string,
  once: (cell: string) => string,
): Row => ({
  id,
  name,
  cell: (side) => stated(of(side), isWhole(side, field), say),
  value: (side) => (isWhole(side, field) ? of(side) : null),
  atLeast: of,
  better: "less",
  once,
});

const ROWS: readonly Row[] = [
  {
    id: "holds",
    name: "Holds, of 100 skies",
    cell: ({ holds }) => `${shortOdds(holds)} (${oddsRange(holds)})`,
    value: ({ holds }) => holds.share,
    better: "more",
    once: (cell) => `holds in ${cell} of 100`,
  },
  {
    id: "dark",
    name: "Goes dark, of 100",
    cell: ({ dark }) => shortOdds(dark),
    value: ({ dark }) => dark.share,
    better: "less",
    once: (cell) => `goes dark in ${cell} of 100`,
  },
  {
    id: "fails",
    name: "Most often fails",
    cell: failsWindow,
    once: (cell) => (/ever$/.test(cell) ? `${cell} fails` : `fails most often ${cell}`),
  },
  {
    id: "lowest",
    name: "Lowest, 1 in 20 under",
    cell: ({ lowestShare }) => percent(lowestShare.p5),
    value: ({ lowestShare }) => lowestShare.p5,
    better: "more",
    once: (cell) => `1 in 20 under ${cell}`,
  },
  {
    id: "sun",
    name: "From the sun",
    cell: ({ solarWh }) => energy(solarWh.p50),
    value: ({ solarWh }) => solarWh.p50,
    better: "more",
    once: (cell) => `${cell} from the sun`,
  },
  {
    id: "fuel",
    name: "Fuel",
    cell: ({ burnsFuel, fuelL }) => (burnsFuel ? differenceInUnits(fuelL.p50, "L", 1) : "none"),
    value: ({ burnsFuel, fuelL }) => (burnsFuel ? fuelL.p50 : 0),
    better: "less",
    once: (cell) => (cell === "none" ? "no fuel" : `${cell} of fuel`),
  },
  {
    id: "onAir",
    name: "On the air, planned",
    cell: (side) => hours(onAirH(side)),
    value: onAirH,
    better: "more",
    once: (cell) => `${cell} on the air`,
  },
  burdenRow(
    "money",
    "Money",
    "cost",
    ({ burden }) => burden.cost,
    (value) => figure(value, 2),
    (cell) => (cell === NOT_STATED ? `money ${cell}` : `${cell} in money`),
  ),
  burdenRow(
    "mass",
    "Weight",
    "massKg",
    ({ burden }) => burden.massKg,
    (value) => differenceInUnits(value, "kg"),
    (cell) => `weight ${cell}`,
  ),
  burdenRow("work", "Work", "setupMinutes", workOf, minutes, (cell) => `work ${cell}`),
  {
    id: "reserve",
    name: "Reserve",
    cell: ({ reserveShare }) => percent(reserveShare),
    once: (cell) => `reserve ${cell}`,
  },
];

/** A row of a decision table: what each scenario has, and which are the best of those that state it. */
export interface DecisionRow {
  readonly id: string;
  readonly name: string;
  readonly cells: readonly { readonly text: string; readonly isBest: boolean }[];
}

/** A decision table: rows that tell scenarios apart, and what is the same in all of them. */
export interface DecisionTable {
  readonly rows: readonly DecisionRow[];
  readonly same: string;
}

/** The rows of a decision table; those equal in all columns fold into one sentence, but for the odds, which are what it is about. */
export function decisionTable(columns: readonly PlanColumn[]): DecisionTable {
  const sides = columns.map(({ side }) => side);
  const all = ROWS.map((row) => ({ row, cells: sides.map(row.cell) }));
  const isSame = ({ row, cells }: (typeof all)[number]) =>
    row.id !== "holds" && cells.every((cell) => cell === cells[0]);
  const members = sides[0]?.holds.of ?? 0;
  const same = [...all.filter(isSame).map(({ row, cells }) => row.once(cells[0]!)), sameMembers(members)];
  return {
    rows: all
      .filter((each) => !isSame(each))
      .map(({ row, cells }) => {
        const best = bestOf(row, sides);
        return {
          id: row.id,
          name: row.name,
          cells: cells.map((text, k) => ({ text, isBest: best[k]! && cells.some((other) => other !== text) })),
        };
      }),
    same: `${same.join("; ")}.`,
  };
}

const sameMembers = (members: number) => `the same ${figure(members)} skies and operators`;

/** Which columns have the best of a row; none is where one that is short of something could be better. */
function bestOf({ value, atLeast, better }: Row, sides: readonly Side[]): boolean[] {
  if (value === undefined) return sides.map(() => false);
  const sign = better === "more" ? -1 : 1;
  const values = sides.map((side) => {
    const known = value(side);
    return known === null ? null : sign * known;
  });
  const least = Math.min(...values.filter((each) => each !== null));
  const isOpen = sides.some((side, k) => {
    if (values[k] !== null || atLeast === undefined) return false;
    const low = atLeast(side);
    return low !== null && low > 0 && low < least;
  });
  return values.map((each) => !isOpen && each !== null && each === least);
}
