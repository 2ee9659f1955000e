import { createMemo, For, Show } from "solid-js";
import { optionRoom, stationRoom } from "../../../engine/answers/sizing/nameRoom.ts";
import { sizeContours, targetName } from "../../../engine/answers/sizing/sizeContours.ts";
import { nearest, type SizeLayout } from "../../../engine/answers/sizing/sizeLayout.ts";
import type { SizePicture } from "../../../engine/answers/sizing/sizePicture.ts";
import type { AxisWords } from "../../../engine/answers/sizing/sizingWords.ts";
import type { SizeOutcome } from "../../../engine/size/sizeTally.ts";
import { inHundred } from "../../../engine/words/oddsWords.ts";

/** A scenario of the notebook that lies on the map, or one of the options that the map names. */
export interface MapMark {
  readonly x: number;
  readonly y: number;
  readonly name: string;
}

/** Odds over two numbers as lines of equal odds, the target's with teeth on the side that misses it. */
export function SizingMap(props: {
  picture: SizePicture;
  layout: SizeLayout;
  xAxis: AxisWords;
  yAxis: AxisWords;
  /** What the picture shows, as a sentence; the numbers are in the table beneath it. */
  label: string;
  chosen: SizeOutcome;
  stations: readonly MapMark[];
  options: readonly MapMark[];
  onRead: (row: number, column: number) => void;
  onMake: (row: number, column: number) => void;
}) {
  const report = () => props.picture.report;
  const rows = () => report().y?.values ?? [];
  const spot = ({ x, y }: MapMark) => ({ x: props.layout.x(x), y: props.layout.y(y) });
  const taken = () => [
    ...props.stations.flatMap((mark) => stationRoom(spot(mark), mark.name)),
    ...props.options.map((mark) => optionRoom(spot(mark))),
  ];
  const lines = createMemo(() => sizeContours(report(), props.layout, taken()));
  const cellAt = (event: MouseEvent & { currentTarget: SVGSVGElement }): [number, number] => {
    const box = event.currentTarget.getBoundingClientRect();
    const { x, y } = props.layout;
    return [nearest(rows(), y, event.clientY - box.top), nearest(report().x.values, x, event.clientX - box.left)];
  };
  return (
    // biome-ignore lint/a11y/useKeyWithClickEvents: the table beneath is the way by keyboard; this only adds the mouse
    <svg
      class="size-map"
      width={props.layout.widthPx}
      height={props.layout.heightPx}
      role="img"
      aria-label={props.label}
      onPointerMove={(event) => event.pointerType !== "touch" && props.onRead(...cellAt(event))}
      onPointerDown={(event) => props.onRead(...cellAt(event))}
      onClick={(event) => {
        // A thumb reads first; the button beside the reading makes the scenario.
        if ((event as unknown as PointerEvent).pointerType !== "touch") props.onMake(...cellAt(event));
      }}
    >
      <g class="data">
        <For each={lines().areas}>{({ path }) => <path class="size-area" d={path} />}</For>
        <For each={lines().lines}>{({ path }) => <path class="size-line" d={path} />}</For>
        <For each={lines().lines}>
          {({ label, in100 }) => (
            <Show when={label}>
              {(at) => (
                <text
                  class="size-line-name"
                  text-anchor="middle"
                  transform={`translate(${at().x} ${at().y}) rotate(${at().turnDeg})`}
                  dy="5"
                >
                  {in100}
                </text>
              )}
            </Show>
          )}
        </For>
        <path class="size-teeth" d={lines().target.teeth} />
        <path class="size-target" d={lines().target.path} />
        <Show when={lines().target.label}>
          {(at) => (
            <text
              class="size-target-name"
              text-anchor="middle"
              transform={`translate(${at().x} ${at().y}) rotate(${at().turnDeg})`}
              dy="-9"
            >
              {targetName(report().targetShare)}
            </text>
          )}
        </Show>
      </g>
      <Axes layout={props.layout} xAxis={props.xAxis} yAxis={props.yAxis} />
      <g class="size-grid">
        <For each={report().rows}>
          {(row) => (
            <For each={row.cells}>
              {(cell) => <circle class="size-cell" r={1.5} cx={props.layout.x(cell.x)} cy={props.layout.y(cell.y!)} />}
            </For>
          )}
        </For>
      </g>
      <For each={props.stations}>
        {(mark) => {
          const anchor = () => {
            const x = props.layout.x(mark.x);
            return x > props.layout.right - 60 ? "end" : x < props.layout.left + 60 ? "start" : "middle";
          };
          return (
            <g class="size-station" transform={`translate(${props.layout.x(mark.x)} ${props.layout.y(mark.y)})`}>
              <path d="M0 -8L7.5 5.5H-7.5Z" />
              <circle r={1.6} />
              <text y={30} text-anchor={anchor()}>
                {mark.name}
              </text>
            </g>
          );
        }}
      </For>
      <For each={props.options}>
        {(mark) => (
          <g class="size-option" transform={`translate(${props.layout.x(mark.x)} ${props.layout.y(mark.y)})`}>
            <circle r={10} />
            <text y={5.5} text-anchor="middle">
              {mark.name}
            </text>
          </g>
        )}
      </For>
      <g
        class="size-chosen"
        transform={`translate(${props.layout.x(props.chosen.x)} ${props.layout.y(props.chosen.y ?? 0)})`}
      >
        <rect x={-13} y={-13} width={26} height={26} />
        <text x={0} y={-19} text-anchor="middle">
          {inHundred(props.chosen.holds)}
        </text>
      </g>
    </svg>
  );
}

function Axes(props: { layout: SizeLayout; xAxis: AxisWords; yAxis: AxisWords }) {
  const layout = () => props.layout;
  const titleOf = ({ title, briefly }: AxisWords) => (layout().widthPx < 400 ? (briefly ?? title) : title);
  return (
    <g>
      <rect
        class="size-frame"
        x={layout().left}
        y={layout().top}
        width={layout().right - layout().left}
        height={layout().bottom - layout().top}
      />
      <For each={layout().yTicks}>
        {(value) => (
          <text class="axis-value" x={layout().left - 8} y={layout().y(value) + 5} text-anchor="end">
            {props.yAxis.tick(value)}
          </text>
        )}
      </For>
      <For each={layout().xTicks}>
        {(value) => (
          <text class="axis-value" x={layout().x(value)} y={layout().bottom + 22} text-anchor="middle">
            {props.xAxis.tick(value)}
          </text>
        )}
      </For>
      <text class="title" x={0} y={14}>
        {titleOf(props.yAxis)}
      </text>
      <text class="title" x={layout().right} y={layout().bottom + 46} text-anchor="end">
        {titleOf(props.xAxis)}
      </text>
    </g>
  );
}
