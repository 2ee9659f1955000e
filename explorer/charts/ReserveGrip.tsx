import { percent } from "../../engine/words/numbers.ts";

/** Most of the bank that may be kept back, as the scenario format has it. */
const MOST_PERCENT = 95;

/**
 * The reserve's grip: two arrowheads on the line; it reaches over the line's name. Dragged, or moved with the arrow keys by one point and
 * with Page Up and Page Down by five.
 */
export function ReserveGrip(props: {
  percent: number;
  ah: string;
  /** Height of the line in the drawing, and where 0 and 100 % lie. */
  y: number;
  zeroY: number;
  fullY: number;
  x: number;
  above: boolean;
  onMove: (percent: number) => void;
  onSettle: () => void;
}) {
  const clamp = (value: number) => Math.min(MOST_PERCENT, Math.max(0, Math.round(value)));
  let grabbedAt: { y: number; percent: number } | null = null;

  function drag(event: PointerEvent): void {
    if (grabbedAt === null) return;
    event.preventDefault();
    const perPx = 100 / (props.zeroY - props.fullY);
    props.onMove(clamp(grabbedAt.percent - (event.clientY - grabbedAt.y) * perPx));
  }

  function press(event: KeyboardEvent): void {
    const moves: Record<string, number> = {
      ArrowUp: props.percent + 1,
      ArrowRight: props.percent + 1,
      ArrowDown: props.percent - 1,
      ArrowLeft: props.percent - 1,
      PageUp: props.percent + 5,
      PageDown: props.percent - 5,
      Home: 0,
      End: MOST_PERCENT,
    };
    const next = moves[event.key];
    if (next === undefined) return;
    event.preventDefault();
    event.stopPropagation();
    props.onMove(clamp(next));
  }

  return (
    <div
      class="reserve-grip"
      classList={{ "reserve-grip-below": !props.above }}
      role="slider"
      tabIndex={0}
      aria-label="Reserve"
      aria-orientation="vertical"
      aria-valuemin={0}
      aria-valuemax={MOST_PERCENT}
      aria-valuenow={props.percent}
      aria-valuetext={`${percent(props.percent / 100)}, ${props.ah}`}
      style={{ top: `${props.y}px`, left: `${props.x}px` }}
      onPointerDown={(event) => {
        event.currentTarget.setPointerCapture(event.pointerId);
        grabbedAt = { y: event.clientY, percent: props.percent };
      }}
      onPointerMove={drag}
      onPointerUp={() => {
        grabbedAt = null;
        props.onSettle();
      }}
      onPointerCancel={() => {
        grabbedAt = null;
      }}
      onKeyDown={press}
      onBlur={() => props.onSettle()}
    >
      <svg class="grips" width="14" height="28" aria-hidden="true">
        <path d="M2 9L7 2L12 9ZM2 19L7 26L12 19Z" />
      </svg>
    </div>
  );
}
