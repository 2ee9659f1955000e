import { displayUnit, toDisplay } from "../../words/displayUnits.ts";
import { energy, figure, percent } from "../../words/numbers.ts";
import { inHundred, oddsRange } from "../../words/oddsWords.ts";
import type { Side, VersusPicture } from "./versusPicture.ts";

/** Two scenarios in figures, the one that is judged beside the one that it is held against. */
export function versusRows({ first, second }: VersusPicture) {
  const row = (name: string, say: (side: Side) => string) => ({ name, first: say(first), second: say(second) });
  const stated = (value: number | null) => (value === null ? "–" : figure(value, 1));
  return [
    row("Holds, of 100 skies", (side) => `${inHundred(side.holds)} (${oddsRange(side.holds)})`),
    row("Ever dark, of 100 skies", (side) => `${inHundred(side.dark)} (${oddsRange(side.dark)})`),
    row("Lowest charge, median", (side) => percent(side.lowestShare.p50)),
    row("Lowest charge, 1 in 20 under", (side) => percent(side.lowestShare.p5)),
    row("From the sun, median", (side) => energy(side.solarWh.p50)),
    row("Unserved, mean", (side) => energy(side.unservedWh.mean)),
    row("Cost, as stated", (side) => stated(side.burden.cost)),
    row(`Mass, ${displayUnit("kg")}, as stated`, ({ burden: { massKg } }) =>
      stated(massKg === null ? null : toDisplay(massKg, "kg")),
    ),
    row("Work, min, as stated", (side) => stated(side.burden.setupMinutes)),
  ];
}
