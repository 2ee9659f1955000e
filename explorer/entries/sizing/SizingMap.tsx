import type { SizeDrawing } from "../../../engine/answers/sizing/sizeDrawing.ts";
import { nearest } from "../../../engine/answers/sizing/sizeLayout.ts";
import type { SizeReport } from "../../../engine/size/sizeReport.ts";
import type { SizeOutcome } from "../../../engine/size/sizeTally.ts";
import { inHundred } from "../../../engine/words/oddsWords.ts";
import { Drawn } from "../../charts/Drawn.tsx";

/** The map of sizes with a square about the cell that is read; a press reads a cell, a click makes it a scenario. */
export function SizingMap(props: {
  drawing: SizeDrawing;
  report: SizeReport;
  chosen: SizeOutcome;
  onRead: (row: number, column: number) => void;
  onMake: (row: number, column: number) => void;
}) {
  const layout = () => props.drawing.layout;
  const cellAt = (event: MouseEvent & { currentTarget: SVGSVGElement }): [number, number] => {
    const box = event.currentTarget.getBoundingClientRect();
    const { x, y } = layout();
    const rows = props.report.y?.values ?? [];
    return [nearest(rows, y, event.clientY - box.top), nearest(props.report.x.values, x, event.clientX - box.left)];
  };
  return (
    // biome-ignore lint/a11y/useKeyWithClickEvents: the table beneath is the way by keyboard; this only adds the mouse
    <svg
      class="size-pick"
      width={props.drawing.widthPx}
      height={props.drawing.heightPx}
      role="img"
      aria-label={props.drawing.label}
      onPointerMove={(event) => event.pointerType !== "touch" && props.onRead(...cellAt(event))}
      onPointerDown={(event) => props.onRead(...cellAt(event))}
      onClick={(event) => {
        // A thumb reads first; the button beside the reading makes the scenario.
        if ((event as unknown as PointerEvent).pointerType !== "touch") props.onMake(...cellAt(event));
      }}
    >
      <Drawn of={props.drawing.body} />
      <g class="size-map">
        <g
          class="size-chosen"
          transform={`translate(${layout().x(props.chosen.x)} ${layout().y(props.chosen.y ?? 0)})`}
        >
          <rect x={-13} y={-13} width={26} height={26} />
          <text x={0} y={-19} text-anchor="middle">
            {inHundred(props.chosen.holds)}
          </text>
        </g>
      </g>
    </svg>
  );
}
