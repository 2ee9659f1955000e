import { createEffect, createMemo, For, Show } from "solid-js";
import { nameLines, rowWords } from "../../../engine/answers/shade/shadeWords.ts";
import { stripShapes } from "../../../engine/answers/shade/stripShapes.ts";
import { sunDays, usualDay } from "../../../engine/answers/shade/sunHours.ts";
import type { Sunlight } from "../../../engine/answers/shade/sunlight.ts";
import type { TimeScale } from "../../../engine/drawing/timeScale.ts";
import { clockAt } from "../../../engine/ruler/rulerClock.ts";

const BAR_PX = 22;

interface SunStripProps {
  readonly light: Sunlight;
  readonly scale: TimeScale;
  readonly isPhone: boolean;
  readonly axisPx: number;
  readonly labelsPx: number;
  /** The hour that plan and sky are drawn for. */
  readonly chosenMs: number;
  readonly onChoose: (ms: number) => void;
}

/** The strip on the ruler: when each group sees the sun. A press puts the plan and the sky to that hour. */
export function SunStrip(props: SunStripProps) {
  const letters = () => Math.floor((props.labelsPx - 36) / 7.8);
  const isTwoLined = () => props.light.groups.some((group) => group.name.length > letters());
  const rowPx = () => (props.isPhone ? 52 : isTwoLined() ? 64 : 44);
  const foot = (row: number) => 4 + (row + 1) * rowPx() - (props.isPhone ? 4 : isTwoLined() ? 22 : 12);
  const heightPx = () => props.light.groups.length * rowPx() + 8;
  const rows = createMemo(() =>
    props.light.groups.map((group) => ({
      name: group.name,
      words: rowWords(usualDay(sunDays(props.light, group))),
      shapes: stripShapes(props.light, group, props.scale, BAR_PX),
    })),
  );
  const says = () =>
    `Hours of sun on the ruler. ${rows()
      .map((row) => `${row.name}: ${row.words} on an average day`)
      .join("; ")}.`;
  const chosenX = () => props.scale.x(props.chosenMs);
  const choose = (event: PointerEvent & { currentTarget: SVGSVGElement }) => {
    props.onChoose(props.scale.ms(event.clientX - event.currentTarget.getBoundingClientRect().left));
  };
  let isHeld = false;
  let scroller!: HTMLElement;
  // On a phone the strip is longer than the screen: it follows the hour.
  createEffect(() => {
    const x = chosenX();
    if (!props.isPhone) return;
    const { scrollLeft, clientWidth } = scroller;
    if (x < scrollLeft + 24 || x > scrollLeft + clientWidth - 24) scroller.scrollLeft = x - clientWidth / 2;
  });
  return (
    <div class="sun-strip">
      <div class="sun-strip-axis" style={{ width: `${props.axisPx}px` }} />
      <section
        ref={scroller}
        class="sun-strip-scroll"
        tabIndex={props.isPhone ? 0 : undefined}
        aria-label="Strip of sunlit hours"
      >
        <svg
          class="sun-strip-drawing"
          width={props.scale.widthPx}
          height={heightPx()}
          role="img"
          aria-label={says()}
          onPointerDown={(event) => {
            if (!props.isPhone) event.currentTarget.setPointerCapture(event.pointerId);
            isHeld = !props.isPhone;
            choose(event);
          }}
          onPointerMove={(event) => isHeld && choose(event)}
          onPointerUp={() => {
            isHeld = false;
          }}
          onPointerCancel={() => {
            isHeld = false;
          }}
        >
          <For each={props.light.nights}>
            {(night) => (
              <rect
                class="night"
                x={props.scale.x(night.startMs)}
                width={props.scale.x(night.endMs) - props.scale.x(night.startMs)}
                height={heightPx()}
              />
            )}
          </For>
          <For each={props.light.ruler.days.slice(1)}>
            {(day) => (
              <line
                class="midnight"
                x1={props.scale.x(day.startMs) + 0.5}
                x2={props.scale.x(day.startMs) + 0.5}
                y2={heightPx()}
              />
            )}
          </For>
          <For each={rows()}>
            {(row, index) => (
              <g transform={`translate(0 ${foot(index())})`}>
                <path class="strip-open" d={row.shapes.open} />
                <path class="strip-part" d={row.shapes.part} />
                <path class="strip-dark" d={row.shapes.dark} />
                <path class="strip-away" d={row.shapes.away} />
              </g>
            )}
          </For>
          <g class="strip-hour">
            <line x1={chosenX()} x2={chosenX()} y2={heightPx()} />
            <path d={`M${chosenX() - 6} 0h12l-6 8Z`} />
          </g>
        </svg>
      </section>
      <svg
        class="sun-strip-labels"
        classList={{ "sun-strip-over": props.isPhone }}
        width={props.isPhone ? 320 : props.labelsPx}
        height={heightPx()}
        aria-hidden="true"
      >
        <For each={rows()}>
          {(row, index) => (
            <Show
              when={props.isPhone}
              fallback={
                <text x="12" y={foot(index()) - (isTwoLined() ? 24 : 14)}>
                  <For each={[...nameLines(row.name, letters()), row.words]}>
                    {(line, l) => (
                      <tspan
                        class={line === row.words ? "end-words" : "end-figure strip-group"}
                        x="12"
                        dy={l() === 0 ? 0 : 20}
                      >
                        {line}
                      </tspan>
                    )}
                  </For>
                </text>
              }
            >
              <text class="strip-name" x="8" y={foot(index()) - BAR_PX - 8}>
                {nameLines(row.name, 28)[0]}: {row.words}
              </text>
            </Show>
          )}
        </For>
      </svg>
    </div>
  );
}

/** "Sat 10 13:15" */
export function hourName(light: Sunlight, ms: number): string {
  const { day, clock } = clockAt(light.ruler, ms);
  return `${day} ${clock}`;
}
