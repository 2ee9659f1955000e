import { range } from "d3";
import { createMemo, For, Show } from "solid-js";
import type { RunPicture } from "../picture/runPicture.ts";
import { moment } from "../words/answerOf.ts";
import { percent } from "../words/numbers.ts";
import { annotationPlace, type Box } from "./annotationPlace.ts";
import { readingAt } from "./readingAt.ts";
import { reserveTeeth } from "./reserveTeeth.ts";
import type { Stratum } from "./strataLayout.ts";
import { chargePath, endMs, shortfallPath } from "./strataPaths.ts";
import type { TimeScale } from "./timeScale.ts";

interface ChargeStratumProps {
  readonly picture: RunPicture;
  readonly before: RunPicture | null;
  readonly stratum: Stratum;
  readonly scale: TimeScale;
  /** The reserve as it is being set, which may be ahead of the picture. */
  readonly reserveShare: number;
  /** The reserve's name: where its text begins, on which side of the line, and the ground that it covers. */
  readonly reserveName: { readonly text: string; readonly x: number; readonly above: boolean; readonly box: Box };
  /** Whether rings carry words. */
  readonly spelledOut: boolean;
  /** Where an instant is being read: words that its values would cover stand back. */
  readonly readingX: number | null;
}

/** Room that a reading's value takes beside its line. */
const VALUE_PX = 130;

/** Charge in the bank, the reserve with its teeth on the bad side, and the two moments that matter. */
export function ChargeStratum(props: ChargeStratumProps) {
  const reserveY = () => props.stratum.y(props.reserveShare);
  const teeth = createMemo(() =>
    reserveTeeth(props.scale.x(props.picture.startMs), props.scale.x(endMs(props.picture))),
  );
  return (
    <g>
      <g class="data">
        <path class="shortfall" d={shortfallPath(props.picture, props.stratum, props.scale, props.reserveShare)} />
        <Show when={props.before}>
          {(before) => <path class="before" d={chargePath(before(), props.stratum, props.scale)} />}
        </Show>
        <path class="charge-halo" d={chargePath(props.picture, props.stratum, props.scale)} />
        <path class="charge" d={chargePath(props.picture, props.stratum, props.scale)} />
      </g>
      <g class="reserve" transform={`translate(0 ${reserveY()})`}>
        <line x1={props.scale.x(props.picture.startMs)} x2={props.scale.x(endMs(props.picture))} y1={0} y2={0} />
        <path d={teeth()} />
        <text x={props.reserveName.x} y={props.reserveName.above ? -9 : 21}>
          {props.reserveName.text}
        </text>
      </g>
      <Annotations {...props} />
    </g>
  );
}

function Annotations(props: ChargeStratumProps) {
  const notes = createMemo(() => {
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
      if (place !== null) taken.push(place.box);
      return { ring, text, place };
    });
  });
  return (
    <For each={notes()}>
      {(note) => (
        <g class="annotation">
          <Show when={isCovered(note.place, props.readingX) ? null : note.place}>
            {(place) => (
              <>
                <path class="leader" d={`M${place().x} ${place().y - 5}H${note.ring.x}V${note.ring.y}`} />
                <text x={place().x + (place().anchor === "start" ? 4 : -4)} y={place().y} text-anchor={place().anchor}>
                  {note.text}
                </text>
              </>
            )}
          </Show>
          <circle class="ring" cx={note.ring.x} cy={note.ring.y} r={5} />
        </g>
      )}
    </For>
  );
}

function isCovered(place: { box: Box } | null, readingX: number | null): boolean {
  if (place === null || readingX === null) return false;
  return place.box.left - VALUE_PX < readingX && readingX < place.box.right + VALUE_PX;
}
