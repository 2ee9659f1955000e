/**
 * ruler: an event's local days laid end to end over universal time, with nights and quiet hours; and the clock on the wall at any instant.
 */
export { quietSpans, type Span } from "./quietSpans.ts";
export type { Ruler } from "./ruler.ts";
export { clockAt, dateSpan, dayName, moment } from "./rulerClock.ts";
export { rulerOf } from "./rulerOf.ts";
export { stamp } from "./stamp.ts";
export { type TimePicture, timePicture } from "./timePicture.ts";
