import type { SpotsDrawing } from "../../../engine/answers/shade/spotsDrawing.ts";
import type { SpotsPicture } from "../../../engine/answers/shade/spotsPicture.ts";
import { figure } from "../../../engine/words/numbers.ts";
import { Drawn } from "../../charts/Drawn.tsx";
import { type ReadSpot, readSpot, spotBeside, spotNearest } from "./readSpot.ts";

const WAYS: Readonly<Record<string, readonly [east: number, north: number]>> = {
  ArrowLeft: [-1, 0],
  ArrowRight: [1, 0],
  ArrowUp: [0, 1],
  ArrowDown: [0, -1],
};
/** Spots that one press with Shift goes. */
const LONG_STEP = 5;

/** The map of spots with a cross at the one that is read; a pointer reads, a click puts the panels there, keys do both. */
export function SpotsMap(props: {
  picture: SpotsPicture;
  drawing: SpotsDrawing;
  chosen: ReadSpot;
  onRead: (k: number) => void;
  onPut: (spot: ReadSpot) => void;
  onMake: (spot: ReadSpot) => void;
}) {
  const grid = () => props.picture.report.grid;
  const under = (event: MouseEvent & { currentTarget: SVGSVGElement }): number => {
    const box = event.currentTarget.getBoundingClientRect();
    return spotNearest(grid(), props.drawing.layout.at(event.clientX - box.left, event.clientY - box.top));
  };
  const press = (event: KeyboardEvent) => {
    const way = WAYS[event.key];
    if (way !== undefined) {
      const times = event.shiftKey ? LONG_STEP : 1;
      props.onRead(spotBeside(grid(), props.chosen.k, way[0] * times, way[1] * times));
    } else if (event.key === "Home") props.onRead(spotNearest(grid(), props.picture.report.here));
    else if (event.key === "Enter") props.onMake(props.chosen);
    else return;
    event.preventDefault();
  };
  const x = () => props.drawing.layout.x(props.chosen.eastM);
  const y = () => props.drawing.layout.y(props.chosen.northM);
  const isRight = () => x() > props.drawing.widthPx - 60;
  return (
    <svg
      class="spots-pick"
      width={props.drawing.widthPx}
      height={props.drawing.heightPx}
      // biome-ignore lint/a11y/noNoninteractiveTabindex: arrow keys move the spot on it
      tabIndex={0}
      role="application"
      aria-label={`${props.drawing.label} Arrow keys move the spot, with Shift five at a time; Home goes to where the panels are; Enter makes a scenario.`}
      onKeyDown={press}
      onPointerMove={(event) => event.pointerType === "mouse" && props.onRead(under(event))}
      onPointerDown={(event) => props.onRead(under(event))}
      onClick={(event) => {
        // A thumb reads first; the button beside the reading puts them there.
        if ((event as unknown as PointerEvent).pointerType !== "touch")
          props.onPut(readSpot(props.picture, under(event)));
      }}
    >
      <Drawn of={props.drawing.body} />
      <g class="spots-cursor" transform={`translate(${x()} ${y()})`}>
        <path d="M-11 0H-4M4 0H11M0 -11V-4M0 4V11" />
        <circle r={11} />
        <text x={isRight() ? -15 : 15} y={-12} text-anchor={isRight() ? "end" : "start"}>
          {props.chosen.isNamed ? "" : figure(props.chosen.dayWh)}
        </text>
      </g>
    </svg>
  );
}
