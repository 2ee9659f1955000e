import type { OddsReport, PreparedEnsemble } from "../../engine/index.ts";
import { nightSpans } from "../../engine/sky/index.ts";
import { quietSpans } from "../time/quietSpans.ts";
import { rulerOf } from "../time/rulerOf.ts";
import type { OddsPicture, TimePicture } from "./answers.ts";

type RulerPicture = Pick<TimePicture, "ruler" | "nights">;

/** By the event's own nights, which scenarios at one place and time share: each answer of each edit asks for them. */
const rulers = new WeakMap<object, RulerPicture>();

function rulerPicture({ grid, scenario, nights }: PreparedEnsemble["prepared"]): RulerPicture {
  const known = rulers.get(nights);
  if (known !== undefined) return known;
  const ruler = rulerOf(grid.dates, grid.zone);
  const { latitudeDeg, longitudeDeg } = scenario.place;
  const turnedDeg = longitudeDeg > 180 ? longitudeDeg - 360 : longitudeDeg;
  const picture = { ruler, nights: nightSpans(latitudeDeg, turnedDeg, ruler.startMs, ruler.endMs) };
  rulers.set(nights, picture);
  return picture;
}

/** The dates and nights that an event's charts hang from. */
export function timePicture({ prepared }: Pick<PreparedEnsemble, "prepared">): TimePicture {
  const { grid } = prepared;
  return {
    ...rulerPicture(prepared),
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
