import type { Sunlight } from "../../../engine/answers/shade/sunlight.ts";
import { hourName } from "./hourName.ts";

const STEP_MIN = 15;
const LEAP_MIN = 360;
const MINUTE_MS = 60_000;

/** The hour for which shadows are drawn: arrow keys move it by 15 minutes, with Shift by six hours. */
export function HourControl(props: {
  light: Sunlight;
  ms: number;
  onChoose: (ms: number) => void;
  /** Where the sun stands then. */
  sunWords: string;
}) {
  const most = () => Math.floor((props.light.steps * props.light.stepMs) / MINUTE_MS);
  const minute = () => Math.round((props.ms - props.light.startMs) / MINUTE_MS);
  const choose = (value: number) =>
    props.onChoose(props.light.startMs + Math.min(most(), Math.max(0, value)) * MINUTE_MS);
  const leap = (event: KeyboardEvent) => {
    const way = { ArrowLeft: -1, ArrowDown: -1, ArrowRight: 1, ArrowUp: 1 }[event.key];
    if (way === undefined || !event.shiftKey) return;
    event.preventDefault();
    choose(minute() + way * LEAP_MIN);
  };
  return (
    <label class="hour-control">
      <span class="hour-words">
        <strong>Shadows at {hourName(props.light, props.ms)}</strong> <span class="hour-sun">{props.sunWords}</span>
      </span>
      <input
        type="range"
        aria-label="Hour of the shadows"
        aria-valuetext={`${hourName(props.light, props.ms)}, ${props.sunWords}`}
        min={0}
        max={most()}
        step={STEP_MIN}
        value={minute()}
        onInput={(event) => choose(event.currentTarget.valueAsNumber)}
        onKeyDown={leap}
      />
    </label>
  );
}
