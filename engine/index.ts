/** duskline's engine: a scenario goes in, traces and odds come out. No DOM, no Node, no clock, no chance of its own. */
export { wrapBearingDeg, wrapLongitudeDeg } from "./angle.ts";
