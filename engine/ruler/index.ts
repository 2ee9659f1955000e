/**
 * ruler: an event's local days laid end to end over universal time, with nights and quiet hours; and the clock on the wall at any instant.
 */
export { quietSpans, type Span } from "./quietSpans.ts";
export { endMs, nextNight, readingStepMs, snapReading } from "./readingTime.ts";
export { type Ruler, rulerHours } from "./ruler.ts";
export { clockAt, dateParts, dateSpan, dayName, moment, offsetAt } from "./rulerClock.ts";
export { rulerOf } from "./rulerOf.ts";
export { nightWords, quietWords, rulerWords, zoneWords } from "./rulerWords.ts";
export { stamp } from "./stamp.ts";
export { type TimePicture, timePicture } from "./timePicture.ts";
