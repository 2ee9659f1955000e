import drawingCss from "../../engine/drawing/drawing.css?raw";
import type { Drawing } from "../../engine/drawing/drawing.ts";
import driversCss from "../../engine/drawing/drivers.css?raw";
import { fontFace } from "../../engine/drawing/fontFace.ts";
import packingCss from "../../engine/drawing/packing.css?raw";
import reachCss from "../../engine/drawing/reach.css?raw";
import sizingCss from "../../engine/drawing/sizing.css?raw";
import strataCss from "../../engine/drawing/strata.css?raw";
import { svgDocument } from "../../engine/drawing/svgDocument.ts";
import wiringCss from "../../engine/drawing/wiring.css?raw";

/** Pixels of a PNG to one of the page: sharp on paper and on a projector. */
const PNG_SCALE = 2;

/** The rules of a picture, in the light that the page is read by. */
function rulesNow(): string {
  const rules = [strataCss, drawingCss, driversCss, packingCss, reachCss, sizingCss, wiringCss]
    .join("\n")
    .replace(/\/\*[\s\S]*?\*\//g, "");
  const computed = getComputedStyle(document.documentElement);
  const names = [...new Set(rules.match(/--[a-z0-9-]+/g) ?? [])];
  const colours = names.map((name) => `${name}:${computed.getPropertyValue(name).trim()}`).join(";");
  return `${fontFace}svg{${colours}}${rules}`.replaceAll("<", "").replaceAll("&", "");
}

export function svgOf(drawing: Drawing): string {
  return svgDocument(drawing, rulesNow());
}

/** Paints a picture twice as fine as the page shows it. @throws Error when the browser cannot */
export async function pngOf(drawing: Drawing): Promise<Blob> {
  const image = new Image();
  image.src = `data:image/svg+xml;charset=utf-8,${encodeURIComponent(svgOf(drawing))}`;
  await image.decode();
  const canvas = document.createElement("canvas");
  canvas.width = image.naturalWidth * PNG_SCALE;
  canvas.height = image.naturalHeight * PNG_SCALE;
  canvas.getContext("2d")!.drawImage(image, 0, 0, canvas.width, canvas.height);
  return new Promise((resolve, reject) =>
    canvas.toBlob(
      (blob) => (blob === null ? reject(new Error("the picture is too large")) : resolve(blob)),
      "image/png",
    ),
  );
}
