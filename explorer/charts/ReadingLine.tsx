import { For, Show } from "solid-js";
import type { Reading } from "../../engine/answers/run/readingAt.ts";
import type { RunPicture } from "../../engine/answers/run/runPicture.ts";
import type { StrataLayout } from "../../engine/answers/run/strataLayout.ts";
import type { TimeScale } from "../../engine/drawing/timeScale.ts";
import { ampHours, percent, volts, watts } from "../../engine/words/numbers.ts";

/** One ink line down all strata, a ring on each line, and the value beside it. */
export function ReadingLine(props: {
  picture: RunPicture;
  reading: Reading;
  layout: StrataLayout;
  scale: TimeScale;
  /** Whether the values stand to the left of the line. */
  flips: boolean;
  /** Whether the values stand there at all. */
  spelledOut: boolean;
}) {
  const x = () => props.scale.x(props.reading.ms);
  const values = () => {
    const { reading, layout, picture } = props;
    const load = watts(reading.servedW) + (reading.unservedW >= 0.5 ? `, ${watts(reading.unservedW)} unserved` : "");
    const parts = picture.incoming.filter((part) => part.powerW[reading.step]! >= 0.5);
    const split =
      parts.length > 1
        ? `: ${parts.map((part) => `${part.id} ${Math.round(part.powerW[reading.step]!)}`).join(", ")}`
        : "";
    return [
      {
        y: layout.charge.y(reading.chargeShare),
        text: `${percent(reading.chargeShare)}, ${ampHours(reading.chargeAh)}`,
      },
      { y: layout.incoming.y(reading.incomingW), text: `${watts(reading.incomingW)}${split}` },
      { y: layout.load.y(reading.servedW), text: load },
      ...picture.radios.flatMap((radio) => {
        const value = radio.volts[reading.step]!;
        return layout.volts !== null && value > 0 ? [{ y: layout.volts.y(value), text: volts(value) }] : [];
      }),
    ];
  };
  return (
    <g class="reading">
      <line x1={x()} x2={x()} y1={0} y2={props.layout.heightPx} />
      <For each={values()}>
        {(value) => (
          <>
            <circle class="ring" cx={x()} cy={value.y} r={5} />
            <Show when={props.spelledOut}>
              <text x={x() + (props.flips ? -11 : 11)} y={value.y - 8} text-anchor={props.flips ? "end" : "start"}>
                {value.text}
              </text>
            </Show>
          </>
        )}
      </For>
    </g>
  );
}
