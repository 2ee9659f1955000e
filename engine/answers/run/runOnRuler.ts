import type { DrawingRoom } from "../../drawing/drawingRoom.ts";
import type { Markup } from "../../drawing/html.ts";
import { type RulerDrawing, rulerDrawing } from "../../drawing/rulerDrawing.ts";
import type { TimeScale } from "../../drawing/timeScale.ts";
import type { Look } from "../../words/look.ts";
import { endLabels } from "./runLabels.ts";
import type { RunPicture } from "./runPicture.ts";
import { strataAxis } from "./strataAxis.ts";
import type { StrataLayout } from "./strataLayout.ts";

/** Where a run is drawn, and the one before it, dotted. */
export interface RunGround {
  readonly picture: RunPicture;
  readonly before: RunPicture | null;
  readonly look: Look;
  readonly layout: StrataLayout;
  readonly scale: TimeScale;
  readonly room: DrawingRoom;
}

/** Layers of a run among its titles and names. */
export function runOnRuler(
  { picture, before, look, layout, scale, room }: RunGround,
  layers: readonly Markup[],
  isChargeAlone = false,
): RulerDrawing {
  const axis = strataAxis(picture, layout, room.isShort);
  const labels = endLabels(picture, before, look, layout, scale);
  return rulerDrawing({
    time: picture,
    scale,
    room,
    heightPx: isChargeAlone ? layout.charge.bottom + 12 : layout.heightPx,
    axis: isChargeAlone ? axis.slice(0, 1) : axis,
    labels: isChargeAlone ? labels.filter(({ y }) => y <= layout.charge.bottom) : labels,
    label: `Charge, sun and loads over time. ${picture.verdict.sentences.join(" ")}`,
    layers,
  });
}
