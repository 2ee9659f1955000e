import type { GearRange, GenericGear } from "./gearTable.ts";

/** So many times beyond what such things take, a figure is asked about: a slip of the point or of the unit is ten, common makes differ by less. */
const FAR = 3;

/**
 * What is asked about a figure before it is taken: one far beyond what such things take, or far below.
 * @param value in the unit of the kind
 * @returns null where there is nothing to ask
 */
export function gearDoubt(gear: GenericGear, which: "idle" | "working", value: number): string | null {
  const usual = gear[which];
  if (usual === null || value === 0 || (value <= FAR * usual.high && value >= usual.low / FAR)) return null;
  return `${gear.name}, ${whenWords(gear, which)}: ${value} ${gear.unit} is ${timesWords(value, usual)} of such things (${usual.low} to ${usual.high} ${gear.unit}): really?`;
}

const whenWords = ({ radio }: GenericGear, which: "idle" | "working") =>
  which === "idle" ? (radio === null ? "idle" : "receiving") : radio === null ? "at work" : "sending";

function timesWords(value: number, { usual }: GearRange): string {
  const times = value / usual;
  const rounded = Number(times.toPrecision(2));
  return times >= 1 ? `${rounded} times the usual` : `${rounded} of the usual`;
}
