import { displayUnit, toDisplay } from "../../words/displayUnits.ts";
import { energy, figure, percent } from "../../words/numbers.ts";
import { inHundred, oddsRange } from "../../words/oddsWords.ts";
import type { Column } from "../column.ts";
import type { Side, VersusPicture } from "./versusPicture.ts";

const stated = (value: number | null) => (value === null ? "–" : figure(value, 1));

/** What is said of a scenario that is held against another. */
export const VERSUS_COLUMNS = {
  holds: {
    head: "Holds, of 100 skies",
    cell: ({ holds }) => `${inHundred(holds)} (${oddsRange(holds)})`,
  },
  dark: {
    head: "Ever dark, of 100 skies",
    cell: ({ dark }) => `${inHundred(dark)} (${oddsRange(dark)})`,
  },
  lowestMedian: { head: "Lowest charge, median", cell: ({ lowestShare }) => percent(lowestShare.p50) },
  lowestTail: { head: "Lowest charge, 1 in 20 under", cell: ({ lowestShare }) => percent(lowestShare.p5) },
  solar: { head: "From the sun, median", cell: ({ solarWh }) => energy(solarWh.p50) },
  unserved: { head: "Unserved, mean", cell: ({ unservedWh }) => energy(unservedWh.mean) },
  cost: { head: "Cost, as stated", cell: ({ burden }) => stated(burden.cost) },
  mass: {
    get head() {
      return `Mass, ${displayUnit("kg")}, as stated`;
    },
    cell: ({ burden: { massKg } }) => stated(massKg === null ? null : toDisplay(massKg, "kg")),
  },
  work: { head: "Work, min, as stated", cell: ({ burden }) => stated(burden.setupMinutes) },
} satisfies Record<string, Column<Side>>;

/** Two scenarios in figures, one line for each column: the one that is judged beside the one that it is held against. */
export function versusRows({ first, second }: VersusPicture) {
  return Object.values<Column<Side>>(VERSUS_COLUMNS).map(({ head, cell }) => ({
    name: head,
    first: cell(first),
    second: cell(second),
  }));
}
