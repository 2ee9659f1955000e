import type { Prepared } from "../run/prepare.ts";
import { nightSpans } from "../sky/nightSpans.ts";
import { quietSpans, type Span } from "./quietSpans.ts";
import type { Ruler } from "./ruler.ts";
import { rulerOf } from "./rulerOf.ts";

/** What stands on the ruler whatever is drawn: dates, nights, and the steps of the event. */
export interface TimePicture {
  readonly ruler: Ruler;
  readonly nights: readonly Span[];
  /** Hours in which no generator may run. */
  readonly quiet: readonly Span[];
  readonly startMs: number;
  readonly stepMs: number;
  readonly steps: number;
}

type RulerPicture = Pick<TimePicture, "ruler" | "nights">;

/** By the event's own nights, which scenarios at one place and time share: each answer of each edit asks for them. */
const rulers = new WeakMap<object, RulerPicture>();

function rulerPicture({ grid, scenario, nights }: Prepared): RulerPicture {
  const known = rulers.get(nights);
  if (known !== undefined) return known;
  const ruler = rulerOf(grid.dates, grid.zone);
  const { latitudeDeg, longitudeDeg } = scenario.place;
  const turnedDeg = longitudeDeg > 180 ? longitudeDeg - 360 : longitudeDeg;
  const picture = { ruler, nights: nightSpans(latitudeDeg, turnedDeg, ruler.startMs, ruler.endMs) };
  rulers.set(nights, picture);
  return picture;
}

/** The dates and nights that an event's charts share. */
export function timePicture({ prepared }: { readonly prepared: Prepared }): TimePicture {
  const { grid } = prepared;
  return {
    ...rulerPicture(prepared),
    quiet: quietSpans(prepared),
    startMs: grid.startMs,
    stepMs: grid.stepMs,
    steps: grid.steps,
  };
}
