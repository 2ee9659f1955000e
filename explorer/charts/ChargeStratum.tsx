import { createMemo, For, Show } from "solid-js";
import type { Box } from "../../engine/answers/run/annotationPlace.ts";
import { type ChargeNotesOf, chargeNotes } from "../../engine/answers/run/chargeNotes.ts";
import { chargePath, endMs, shortfallPath } from "../../engine/answers/run/strataPaths.ts";
import { reserveTeeth } from "../../engine/drawing/reserveTeeth.ts";

interface ChargeStratumProps extends ChargeNotesOf {
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
  const notes = createMemo(() => chargeNotes(props));
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
