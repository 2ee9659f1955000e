import { createRenderEffect } from "solid-js";
import type { Markup } from "../../engine/drawing/html.ts";
import { drawInto } from "./drawInto.ts";

/** A piece of a drawing, the same text that goes into files, reports and slides; stands in an `svg`. */
export function Drawn(props: { of: Markup }) {
  const draw = (element: Element) =>
    createRenderEffect((drawn: string | null) => {
      const { text } = props.of;
      if (text !== drawn) drawInto(element, text);
      return text;
    }, null);
  return <g ref={draw} />;
}
