import { type DrawingRoom, SHEET_ROOM } from "../../drawing/drawingRoom.ts";
import type { RulerDrawing } from "../../drawing/rulerDrawing.ts";
import { timeScale } from "../../drawing/timeScale.ts";
import type { Look } from "../../words/look.ts";
import { chargeLayer, notesLayer } from "./chargeLayer.ts";
import { type ChargeNotesOf, chargeNotes } from "./chargeNotes.ts";
import { powerLayer } from "./powerLayer.ts";
import { reserveNamePlace } from "./reserveNamePlace.ts";
import { runOnRuler } from "./runOnRuler.ts";
import type { RunPicture } from "./runPicture.ts";
import { strataLayout } from "./strataLayout.ts";

/** One run: charge, what comes in, what goes out, and volts where a radio drops out; or its charge alone. */
export function runDrawing(
  picture: RunPicture,
  look: Look,
  room: DrawingRoom = SHEET_ROOM,
  { chargePx, isChargeAlone }: { readonly chargePx: number; readonly isChargeAlone: boolean } = {
    chargePx: 196,
    isChargeAlone: false,
  },
): RulerDrawing {
  const layout = strataLayout(picture, chargePx);
  const scale = timeScale(picture.ruler, room.daysPx);
  const { reserveShare } = picture;
  const reserveName = reserveNamePlace(picture, layout.charge, scale, reserveShare, scale.x(picture.startMs));
  const of: ChargeNotesOf = {
    picture,
    before: null,
    look,
    stratum: layout.charge,
    scale,
    reserveShare,
    reserveName,
    spelledOut: true,
  };
  const charge = [chargeLayer(of), notesLayer(chargeNotes(of))];
  const layers = isChargeAlone ? charge : [powerLayer(picture, layout, scale), ...charge];
  return runOnRuler({ picture, before: null, look, layout, scale, room }, layers, isChargeAlone);
}
