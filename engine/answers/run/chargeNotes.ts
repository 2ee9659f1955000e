import { range } from "d3";
import type { TimeScale } from "../../drawing/timeScale.ts";
import { endMs } from "../../ruler/readingTime.ts";
import { moment } from "../../ruler/rulerClock.ts";
import type { Look } from "../../words/look.ts";
import { percent } from "../../words/numbers.ts";
import { annotationPlace, type Box } from "./annotationPlace.ts";
import { readingAt } from "./readingAt.ts";
import type { ReserveName } from "./reserveNamePlace.ts";
import type { RunPicture } from "./runPicture.ts";
import type { Stratum } from "./strataLayout.ts";

/** What the notes on a charge's line depend on. */
export interface ChargeNotesOf {
  readonly picture: RunPicture;
  readonly before: RunPicture | null;
  readonly look: Look;
  readonly stratum: Stratum;
  readonly scale: TimeScale;
  /** The reserve as it is being set, which may be ahead of the picture. */
  readonly reserveShare: number;
  readonly reserveName: ReserveName;
  /** Whether rings carry words. */
  readonly spelledOut: boolean;
}

/** The two moments that matter: a ring each, and words where there is empty ground for them. */
export function chargeNotes(props: ChargeNotesOf) {
  const { picture, stratum, scale, reserveShare } = props;
  const { verdict, ruler } = picture;
  const chart = { left: 4, right: scale.widthPx - 4, top: stratum.top + 2, bottom: stratum.bottom - 2 };
  const yAt = (run: RunPicture, x: number) => stratum.y(readingAt(run, scale.ms(x)).chargeShare);
  const startX = scale.x(picture.startMs);
  const lineYs = (x: number) => {
    if (x < startX || x > scale.x(endMs(picture))) return [];
    const before = props.before === null ? [] : [yAt(props.before, x)];
    const [chargeY, reserveY] = [yAt(picture, x), stratum.y(reserveShare)];
    // The hatch between the reserve and a charge under it is as good as lines.
    return [chargeY, reserveY, ...before, ...range(reserveY, chargeY, 8)];
  };
  const wanted = [
    {
      ms: verdict.lowestMs,
      share: verdict.lowestShare,
      text: `Lowest ${percent(verdict.lowestShare)}, ${moment(ruler, verdict.lowestMs)}`,
    },
  ];
  const { belowReserveFromMs } = verdict;
  if (belowReserveFromMs !== null && scale.x(verdict.lowestMs) - scale.x(belowReserveFromMs) > 24) {
    const text = `Under the reserve from ${moment(ruler, belowReserveFromMs)}`;
    wanted.push({ ms: belowReserveFromMs, share: picture.reserveShare, text });
  }
  const taken: Box[] = [props.reserveName.box];
  return wanted.map(({ ms, share, text }) => {
    const ring = { x: scale.x(ms), y: stratum.y(share) };
    taken.push({ left: ring.x - 7, right: ring.x + 7, top: ring.y - 7, bottom: ring.y + 7 });
    // At 86 % width the face takes about 7.3 px a letter.
    const place = props.spelledOut ? annotationPlace(ring, text.length * 7.3, chart, taken, lineYs) : null;
    if (place !== null) taken.push(place.box, place.leader);
    return { ring, text, place };
  });
}
