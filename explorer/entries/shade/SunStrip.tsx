import { createEffect } from "solid-js";
import type { RulerDrawing } from "../../../engine/drawing/rulerDrawing.ts";
import { DrawnAxis, DrawnNames, DrawnPlot } from "../../charts/DrawnPieces.tsx";

/** The strip on the ruler: when each group sees the sun. A press puts the plan and the sky to that hour. */
export function SunStrip(props: {
  drawing: RulerDrawing;
  isPhone: boolean;
  /** The hour that plan and sky are drawn for. */
  chosenMs: number;
  onChoose: (ms: number) => void;
}) {
  const chosenX = () => props.drawing.scale.x(props.chosenMs);
  const choose = (event: PointerEvent & { currentTarget: Element }) => {
    props.onChoose(props.drawing.scale.ms(event.clientX - event.currentTarget.getBoundingClientRect().left));
  };
  let isHeld = false;
  const letGo = () => {
    isHeld = false;
  };
  let scroller!: HTMLElement;
  // On a phone the strip is longer than the screen: it follows the hour.
  createEffect(() => {
    const x = chosenX();
    if (!props.isPhone) return;
    const { scrollLeft, clientWidth } = scroller;
    if (x < scrollLeft + 24 || x > scrollLeft + clientWidth - 24) scroller.scrollLeft = x - clientWidth / 2;
  });
  return (
    <div class="section">
      <DrawnAxis drawing={props.drawing} />
      <section
        ref={scroller}
        class="section-scroll"
        tabIndex={props.isPhone ? 0 : undefined}
        aria-label="Strip of sunlit hours"
      >
        <div class="section-plot" style={{ width: `${props.drawing.scale.widthPx}px` }}>
          <DrawnPlot drawing={props.drawing} class="sun-strip-drawing">
            <g class="strip-hour">
              <line x1={chosenX()} x2={chosenX()} y2={props.drawing.plotPx} />
              <path d={`M${chosenX() - 6} 0h12l-6 8Z`} />
            </g>
          </DrawnPlot>
          <div
            class="strip-press"
            onPointerDown={(event) => {
              if (!props.isPhone) event.currentTarget.setPointerCapture(event.pointerId);
              isHeld = !props.isPhone;
              choose(event);
            }}
            onPointerMove={(event) => isHeld && choose(event)}
            onPointerUp={letGo}
            onPointerCancel={letGo}
          />
        </div>
        <DrawnNames drawing={props.drawing} />
      </section>
    </div>
  );
}
