import { Show } from "solid-js";
import { numberPart, type SchemaNode } from "../../../engine/fields/formSchema.ts";
import { plainFigure, shownUnit, toShown } from "../../../engine/fields/shownValue.ts";
import { scalePlace } from "./scalePlace.ts";

const WIDTH = 192;
const MARK_Y = 14;

/** Everything that is allowed as a line, the usual as a box on it, a filled mark for now and a hollow one for the base. */
export function Scale(props: { node: SchemaNode; now: unknown; was: unknown }) {
  const facts = () => numberPart(props.node).quantity!;
  const usual = () => facts().typical;
  const place = () => scalePlace(facts().low, facts().high, usual()?.[1]);
  const x = (value: number) => 1 + place().at(value) * (WIDTH - 2);
  const number = (value: unknown) => (typeof value === "number" ? value : null);
  const ends = () => {
    const unit = shownUnit(props.node);
    const shown = (value: number) => plainFigure(toShown(value, props.node));
    return [shown(facts().low), `${shown(facts().high)}${unit === "" || unit === "°" ? unit : ` ${unit}`}`] as const;
  };
  return (
    <svg class="scale" width={WIDTH} height="44" viewBox={`0 0 ${WIDTH} 44`} aria-hidden="true">
      <line class="scale-line" x1="1" x2={WIDTH - 1} y1={MARK_Y} y2={MARK_Y} />
      <path class="scale-line" d={`M1 ${MARK_Y - 5}v10M${WIDTH - 1} ${MARK_Y - 5}v10`} />
      <Show when={usual()}>
        {(range) => (
          <rect
            class="scale-usual"
            x={x(range()[0])}
            width={Math.max(3, x(range()[1]) - x(range()[0]))}
            y={MARK_Y - 4}
            height="8"
          />
        )}
      </Show>
      <Show when={number(props.was) !== null && number(props.was) !== number(props.now)}>
        <path class="scale-was" d={`M${x(number(props.was)!)} ${MARK_Y + 4}l5 9h-10Z`} />
      </Show>
      <Show when={number(props.now) !== null}>
        <path class="scale-now" d={`M${x(number(props.now)!)} ${MARK_Y - 2}l-5-9h10Z`} />
        <line
          class="scale-stem"
          x1={x(number(props.now)!)}
          x2={x(number(props.now)!)}
          y1={MARK_Y - 2}
          y2={MARK_Y + 5}
        />
      </Show>
      <text class="scale-end" x="0" y="40">
        {ends()[0]}
      </text>
      <text class="scale-end" x={WIDTH} y="40" text-anchor="end">
        {ends()[1]}
      </text>
    </svg>
  );
}
