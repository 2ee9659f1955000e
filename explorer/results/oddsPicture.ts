import type { OddsReport, PreparedEnsemble } from "../../engine/index.ts";
import { nightSpans } from "../../engine/sky/index.ts";
import { quietSpans } from "../time/quietSpans.ts";
import { rulerOf } from "../time/rulerOf.ts";
import type { OddsPicture, TimePicture } from "./answers.ts";

/** The dates and nights that an event's charts hang from. */
export function timePicture({ prepared }: Pick<PreparedEnsemble, "prepared">): TimePicture {
  const { grid, scenario } = prepared;
  const ruler = rulerOf(grid.dates, grid.zone);
  const { latitudeDeg, longitudeDeg } = scenario.place;
  const turnedDeg = longitudeDeg > 180 ? longitudeDeg - 360 : longitudeDeg;
  return {
    ruler,
    nights: nightSpans(latitudeDeg, turnedDeg, ruler.startMs, ruler.endMs),
    quiet: quietSpans(prepared),
    startMs: grid.startMs,
    stepMs: grid.stepMs,
    steps: grid.steps,
  };
}

/** Takes from an ensemble what the page shows. */
export function oddsPicture(ensemble: PreparedEnsemble, odds: OddsReport): OddsPicture {
  const { charge, solarW, loadW, ...report } = odds;
  return {
    ...timePicture(ensemble),
    members: odds.members,
    fullAh: ensemble.prepared.bank.fullAh,
    reserveShare: odds.reserveShare,
    report,
    charge,
    solarW,
    loadW,
    remarks: ensemble.remarks,
  };
}
