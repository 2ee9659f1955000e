import { area, curveStepAfter, line, range } from "d3";
import type { TimeScale } from "../../drawing/timeScale.ts";
import type { RadioVolts, RunPicture } from "./runPicture.ts";
import type { Stratum } from "./strataLayout.ts";

/** When step `i` begins; `steps` is the end of the event. */
export function stepMs(picture: RunPicture, i: number): number {
  return picture.startMs + i * picture.stepMs;
}

/** Charge as a line through each step's start. */
export function chargePath(picture: RunPicture, { y }: Stratum, scale: TimeScale): string {
  const path = line<number>(
    (_, i) => scale.x(stepMs(picture, i)),
    (share) => y(share),
  );
  return path(picture.chargeShare) ?? "";
}

/** The ground between the reserve and a charge that lies under it. */
export function shortfallPath(picture: RunPicture, { y }: Stratum, scale: TimeScale, reserveShare: number): string {
  const path = area<number>()
    .defined((share) => share < reserveShare)
    .x((_, i) => scale.x(stepMs(picture, i)))
    .y0(y(reserveShare))
    .y1((share) => y(share));
  return path(picture.chargeShare) ?? "";
}

/** Power that stands for a whole step each, between two heights. */
export function powerArea(
  picture: RunPicture,
  { y }: Stratum,
  scale: TimeScale,
  lowW: (i: number) => number,
  highW: (i: number) => number,
): string {
  // The last value is held to the end of its step.
  const held = (of: (i: number) => number) => (i: number) => of(Math.min(i, picture.steps - 1));
  const path = area<number>()
    .defined((i) => held(highW)(i) - held(lowW)(i) > 0.05)
    .x((i) => scale.x(stepMs(picture, i)))
    .y0((i) => y(held(lowW)(i)))
    .y1((i) => y(held(highW)(i)))
    .curve(curveStepAfter);
  return path(range(picture.steps + 1)) ?? "";
}

/** The upper edge of a power, where there is any. */
export function powerEdge(picture: RunPicture, { y }: Stratum, scale: TimeScale, ofW: (i: number) => number): string {
  const held = (i: number) => ofW(Math.min(i, picture.steps - 1));
  const path = line<number>()
    .defined((i) => held(i) > 0.05)
    .x((i) => scale.x(stepMs(picture, i)))
    .y((i) => y(held(i)))
    .curve(curveStepAfter);
  return path(range(picture.steps + 1)) ?? "";
}

/** Volts at a radio while somebody is at it. */
export function voltsPath(picture: RunPicture, { y }: Stratum, scale: TimeScale, radio: RadioVolts): string {
  const path = line<number>()
    .defined((volts) => volts > 0)
    .x((_, i) => scale.x(stepMs(picture, i)))
    .y((volts) => y(volts))
    .curve(curveStepAfter);
  return path(radio.volts) ?? "";
}
