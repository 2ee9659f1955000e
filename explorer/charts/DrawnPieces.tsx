import { Index, type JSX } from "solid-js";
import type { RulerDrawing } from "../../engine/drawing/rulerDrawing.ts";
import { Drawn } from "./Drawn.tsx";
import { layPatterns } from "./layPatterns.ts";

/** Titles and values at the left of a drawing; on a phone they stay while time moves beneath them. */
export function DrawnAxis(props: { drawing: RulerDrawing }) {
  const axisPx = () => props.drawing.room.axisPx;
  return (
    <svg class="strata-axis" width={axisPx()} height={props.drawing.plotPx} aria-hidden="true">
      <g transform={`translate(${axisPx()} 0)`}>
        <Drawn of={props.drawing.axis} />
      </g>
    </svg>
  );
}

/** What lies over the days; the children are laid over it. */
export function DrawnPlot(props: { drawing: RulerDrawing; class: string; children?: JSX.Element }) {
  layPatterns();
  return (
    <svg
      class={props.class}
      width={props.drawing.scale.widthPx}
      height={props.drawing.plotPx}
      role="img"
      aria-label={props.drawing.label}
    >
      <Index each={props.drawing.layers}>{(layer) => <Drawn of={layer()} />}</Index>
      {props.children}
    </svg>
  );
}

/** Names and figures beyond the ruler, each on its leader; there is no legend. */
export function DrawnNames(props: { drawing: RulerDrawing }) {
  return (
    <svg
      class="strata-labels data"
      width={props.drawing.room.labelsPx}
      height={props.drawing.plotPx}
      aria-hidden="true"
    >
      <g transform={`translate(${-props.drawing.scale.widthPx} 0)`}>
        <Drawn of={props.drawing.names} />
      </g>
    </svg>
  );
}
