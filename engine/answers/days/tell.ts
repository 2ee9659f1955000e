import { html } from "../../drawing/html.ts";
import { dayName } from "../../ruler/rulerClock.ts";
import { figure } from "../../words/numbers.ts";
import type { OfOne } from "../docShapes.ts";
import type { Tell } from "../kind.ts";
import { missing, table } from "../reportParts.ts";
import { runOf } from "../run/ask.ts";
import { NOT_YET } from "../slideParts.ts";
import { dayHeads, dayRows } from "./dayRows.ts";

export const tellDays: Tell<OfOne> = {
  section: (page, { scenario }) => {
    const found = runOf(page, scenario);
    const { result } = found;
    return html`${missing([found])}${
      result !== null &&
      table(
        "Each day of the event in figures",
        ["Day", ...dayHeads(result)],
        dayRows(result).map(({ day, figures }) => ({ name: day, figures })),
      )
    }`;
  },
  slide: (page, { scenario }) => {
    const { result } = runOf(page, scenario);
    if (result === null) return NOT_YET;
    const share = (value: number | null) => (value === null ? "–" : figure(value * 100));
    return {
      body: table(
        "Each day of the event in figures",
        ["Day", "Sun, Wh", "Loads want, Wh", "Unserved, Wh", "At dusk, %", "At dawn, %", "Lowest, %"],
        result.days.map((day) => ({
          name: dayName(day.date),
          figures: [
            figure(day.groupWh.reduce((sum, wh) => sum + wh, 0)),
            figure(day.demandWh),
            figure(day.unservedWh),
            share(day.duskShare),
            share(day.dawnShare),
            share(day.lowestShare),
          ],
        })),
      ),
    };
  },
};
