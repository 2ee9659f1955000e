import type { TimePicture } from "./timePicture.ts";

type Steps = Pick<TimePicture, "startMs" | "stepMs" | "steps">;

/** When an event ends. */
export function endMs({ startMs, stepMs, steps }: Steps): number {
  return startMs + steps * stepMs;
}

/** Time between two readings: a quarter of an hour, or one step where that is longer. */
export function readingStepMs({ stepMs }: Steps): number {
  return Math.max(900_000, stepMs);
}

/** The nearest instant that can be read, inside the event. */
export function snapReading(time: Steps, ms: number): number {
  const everyMs = readingStepMs(time);
  const snapped = time.startMs + Math.round((ms - time.startMs) / everyMs) * everyMs;
  return Math.min(endMs(time), Math.max(time.startMs, snapped));
}

/** The start of the first night after an instant, as something that can be read; the instant itself when there is none. */
export function nextNight(time: Steps & Pick<TimePicture, "nights">, ms: number): number {
  const next = time.nights.map((night) => snapReading(time, night.startMs)).find((startMs) => startMs > ms);
  return next === undefined ? ms : next;
}
