import * as z from "zod";

const expectation = 'a local time between "00:00" and "24:00", such as "09:30"';

/** A time of day on the local clock, "00:00" to "24:00". */
export const ClockTime = z
  .string({ error: expectation })
  .regex(/^(?:[01]\d|2[0-3]):[0-5]\d$|^24:00$/, { error: expectation })
  .meta({ description: 'Local clock time "HH:MM"' });

/** Minutes after local midnight, 0…1440. */
export function clockMinute(clockTime: string): number {
  return Number(clockTime.slice(0, 2)) * 60 + Number(clockTime.slice(3, 5));
}
