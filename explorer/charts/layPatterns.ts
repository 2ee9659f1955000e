import { drawingPatterns } from "../../engine/drawing/drawingPatterns.ts";

let laid: Element | null = null;

/** Puts the patterns that drawings name into the page, once for all drawings and only when there is one. */
export function layPatterns(): void {
  if (laid?.isConnected) return;
  laid = document.createElementNS("http://www.w3.org/2000/svg", "svg");
  for (const [name, value] of Object.entries({ class: "unseen", "aria-hidden": "true", width: "0", height: "0" })) {
    laid.setAttribute(name, value);
  }
  laid.innerHTML = drawingPatterns.text;
  document.body.append(laid);
}
