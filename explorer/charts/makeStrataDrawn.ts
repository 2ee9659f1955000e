import { createMemo } from "solid-js";
import { chargeLayer, notesLayer } from "../../engine/answers/run/chargeLayer.ts";
import { type ChargeNotesOf, chargeNotes } from "../../engine/answers/run/chargeNotes.ts";
import { powerLayer } from "../../engine/answers/run/powerLayer.ts";
import { reserveNamePlace } from "../../engine/answers/run/reserveNamePlace.ts";
import { runOnRuler } from "../../engine/answers/run/runOnRuler.ts";
import type { RunPicture } from "../../engine/answers/run/runPicture.ts";
import { strataLayout } from "../../engine/answers/run/strataLayout.ts";
import { isSameScale, timeScale } from "../../engine/drawing/timeScale.ts";
import type { Look } from "../../engine/words/look.ts";
import type { SheetRoom } from "../notebook/notebookPage.ts";

const GRIP_LEFT_PX = 20;

/** What the strata are drawn from. */
export interface StrataOf {
  readonly picture: RunPicture;
  readonly before: RunPicture | null;
  readonly look: Look;
  readonly room: SheetRoom;
  readonly reservePercent: number;
}

/** The strata as drawings, in layers by how often they change: ground and power, then charge and reserve, then the notes. */
export function makeStrataDrawn(of: StrataOf, scrollPx: () => number, readingMs: () => number | null) {
  const layout = createMemo(() => strataLayout(of.picture, of.room.isPhone ? 160 : 196));
  const scale = createMemo(() => timeScale(of.picture.ruler, of.room.daysPx), undefined, { equals: isSameScale });
  const power = createMemo(() => powerLayer(of.picture, layout(), scale()));
  const drawing = createMemo(() => {
    const { picture, before, look, room } = of;
    return runOnRuler({ picture, before, look, layout: layout(), scale: scale(), room }, [power()]);
  });
  // On a phone the grip stays in view while time moves beneath it.
  const gripX = () => Math.max(scale().x(of.picture.startMs), scrollPx()) + GRIP_LEFT_PX;
  const reserveName = createMemo(() =>
    reserveNamePlace(of.picture, layout().charge, scale(), of.reservePercent / 100, gripX()),
  );
  // Apart from the rest, because it moves: with the reserve's grip, with the view, and out of a reading's way.
  const charge = createMemo(
    (): ChargeNotesOf => ({
      picture: of.picture,
      before: of.before,
      look: of.look,
      stratum: layout().charge,
      scale: scale(),
      reserveShare: of.reservePercent / 100,
      reserveName: reserveName(),
      spelledOut: !of.room.isPhone,
    }),
  );
  const chargeDrawn = createMemo(() => chargeLayer(charge()));
  const notes = createMemo(() => chargeNotes(charge()));
  const notesDrawn = createMemo(() => {
    const ms = readingMs();
    return notesLayer(notes(), ms === null ? null : scale().x(ms));
  });
  return { layout, scale, drawing, gripX, reserveName, chargeDrawn, notesDrawn };
}
