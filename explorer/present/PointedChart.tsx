import { For, Show } from "solid-js";
import type { SlideChart } from "../../engine/answers/slide.ts";
import { clockAt } from "../../engine/ruler/rulerClock.ts";

/** A chart of a slide and the lit line over it: where the pointer is, or where the keys have put it. */
export function PointedChart(props: { chart: SlideChart; ms: number | null; onPoint: (ms: number | null) => void }) {
  let over!: SVGSVGElement;
  const { drawing } = props.chart;
  const viewBox = () => `0 0 ${props.chart.drawing.widthPx} ${props.chart.drawing.heightPx}`;
  const x = (ms: number) => props.chart.leftPx + props.chart.scale.x(ms);
  const point = (event: PointerEvent) => {
    const matrix = over.getScreenCTM();
    if (matrix === null) return;
    const at = new DOMPoint(event.clientX, event.clientY).matrixTransform(matrix.inverse());
    const { startMs, stepMs, steps } = props.chart.time;
    const ms = props.chart.scale.ms(at.x - props.chart.leftPx);
    props.onPoint(ms < startMs || ms > startMs + steps * stepMs ? null : Math.round(ms / 900_000) * 900_000);
  };
  const when = (ms: number) => {
    const { weekday, clock } = clockAt(props.chart.time.ruler, ms);
    return `${weekday} ${clock}`;
  };
  const tagX = (ms: number) => Math.min(props.chart.drawing.widthPx - 56, Math.max(56, x(ms)));
  return (
    <section
      class="slide-chart"
      // biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls must be reachable by keyboard
      tabIndex={0}
      aria-label="Chart"
      style={{ "--drawing-px": `${props.chart.drawing.widthPx}px` }}
    >
      <svg
        class="slide-drawing"
        viewBox={viewBox()}
        role="img"
        aria-label={drawing.label}
        innerHTML={props.chart.drawing.body.text}
      />
      <svg
        ref={over}
        class="slide-pointer"
        viewBox={viewBox()}
        aria-hidden="true"
        onPointerMove={(event) => event.pointerType === "mouse" && point(event)}
        onPointerDown={point}
        onPointerLeave={(event) => event.pointerType === "mouse" && props.onPoint(null)}
      >
        <rect class="pointer-ground" width={props.chart.drawing.widthPx} height={props.chart.drawing.heightPx} />
        <Show when={props.ms}>
          {(ms) => (
            <>
              <line class="pointer-glow" x1={x(ms())} x2={x(ms())} y1={56} y2={props.chart.drawing.heightPx} />
              <line class="pointer-line" x1={x(ms())} x2={x(ms())} y1={56} y2={props.chart.drawing.heightPx} />
              <For each={props.chart.marks(ms())}>
                {(mark, k) => (
                  <g class={`pointer-mark pointer-${mark.look}`}>
                    <circle cx={x(ms())} cy={mark.y} r={5} />
                    <text
                      x={x(ms()) + (k() === 0 ? 10 : -10)}
                      y={mark.y + 20}
                      text-anchor={k() === 0 ? "start" : "end"}
                    >
                      {mark.text}
                    </text>
                  </g>
                )}
              </For>
              <rect class="pointer-tag" x={tagX(ms()) - 48} y={64} width={96} height={24} />
              <text class="pointer-when" x={tagX(ms())} y={81} text-anchor="middle">
                {when(ms())}
              </text>
            </>
          )}
        </Show>
      </svg>
    </section>
  );
}
