import drawingCss from "../drawing/drawing.css?raw";
import driversCss from "../drawing/drivers.css?raw";
import { fontFace } from "../drawing/fontFace.ts";
import packingCss from "../drawing/packing.css?raw";
import paletteCss from "../drawing/palette.css?raw";
import reachCss from "../drawing/reach.css?raw";
import sizingCss from "../drawing/sizing.css?raw";
import spotsCss from "../drawing/spots.css?raw";
import strataCss from "../drawing/strata.css?raw";
import wiringCss from "../drawing/wiring.css?raw";

/** The rules that drawings name, in the light of the day: what is read on paper and on screens of others. */
export const drawingRules = [
  fontFace,
  paletteCss.split(":root[data-light")[0]!,
  strataCss,
  drawingCss,
  sizingCss,
  driversCss,
  packingCss,
  reachCss,
  wiringCss,
  spotsCss,
]
  .join("\n")
  .replace(/\/\*[\s\S]*?\*\//g, "");
