import { reserveTeeth } from "../../engine/drawing/reserveTeeth.ts";
import type { TimeScale } from "../../engine/drawing/timeScale.ts";
import type { TimePicture } from "../../engine/ruler/timePicture.ts";
import { ampHours, percent } from "../../engine/words/numbers.ts";

/** The reserve over the whole event, ruled, with teeth on its bad side and its name. */
export function ReserveLine(props: {
  time: TimePicture;
  reserveShare: number;
  fullAh: number;
  y: (share: number) => number;
  scale: TimeScale;
}) {
  const x0 = () => props.scale.x(props.time.startMs);
  const x1 = () => props.scale.x(props.time.startMs + props.time.steps * props.time.stepMs);
  return (
    <g class="reserve" transform={`translate(0 ${props.y(props.reserveShare)})`}>
      <line x1={x0()} x2={x1()} y1={0} y2={0} />
      <path d={reserveTeeth(x0(), x1())} />
      <text x={x0() + 12} y={-9}>
        Reserve {percent(props.reserveShare)}, {ampHours(props.reserveShare * props.fullAh)}
      </text>
    </g>
  );
}
