import * as z from "zod";
import { plainExpectation } from "../scenario/plainExpectation.ts";
import type { Problem } from "../scenario/problem.ts";

/** What a meter's log may hold, and what each is called here. */
export const METER_QUANTITIES = ["charge", "bankV", "bankA", "bankW", "pvW", "loadW", "loadA", "usedAh"] as const;
export type MeterQuantity = (typeof METER_QUANTITIES)[number];

/** Forms of date and time: year first; day first; month first; seconds or milliseconds since 1970 UTC. */
export const TIME_FORMS = ["yearFirst", "dayFirst", "monthFirst", "epochS", "epochMs"] as const;
export type TimeForm = (typeof TIME_FORMS)[number];

/** A column's title; null leaves the quantity out, also where a title suggests it. */
const title = z.string().min(1).max(300).nullable();
const columns = z.strictObject({
  /** Date and time, or the time of day where a column of its own holds the date. */
  time: title.optional(),
  date: title.optional(),
  charge: title.optional(),
  bankV: title.optional(),
  bankA: title.optional(),
  bankW: title.optional(),
  pvW: title.optional(),
  loadW: title.optional(),
  loadA: title.optional(),
  usedAh: title.optional(),
});

/**
 * How a log is to be read; whatever is left out is found in the log itself. Columns are named by their titles, so that the same
 * mapping fits the next log of the same meter.
 */
export const MeterMapping = z.strictObject({
  delimiter: z.enum([",", ";", "\t"]).optional(),
  decimal: z.enum([".", ","]).optional(),
  timeForm: z.enum(TIME_FORMS).optional(),
  /** What clock the log keeps: an IANA zone, "UTC", or an offset such as "+01:00". Times that state their own offset keep it. */
  zone: z.string().min(1).max(60).optional(),
  /** Minutes added to every time, for a clock that was set wrong. */
  shiftMinutes: z.number().min(-100_000).max(100_000).optional(),
  /** Whether a row tells of its instant, or is a mean from its time on, or up to its time. */
  stamp: z.enum(["instant", "start", "end"]).optional(),
  /** Which sign bank current and bank power have while the bank charges. */
  currentSign: z.enum(["chargingPositive", "chargingNegative"]).optional(),
  chargeUnit: z.enum(["percent", "share"]).optional(),
  /** Units of columns, such as mA, where they are not those of their names here; what a title or a row of units says is found. */
  units: z.partialRecord(z.enum(METER_QUANTITIES), z.string().min(1).max(6)).optional(),
  columns: columns.optional(),
});
export type MeterMapping = z.infer<typeof MeterMapping>;

/** Reads a remembered mapping, such as one that was stored as JSON. */
export function readMeterMapping(
  value: unknown,
): { ok: true; mapping: MeterMapping } | { ok: false; problems: Problem[] } {
  const parsed = MeterMapping.safeParse(value, { error: plainExpectation });
  if (parsed.success) return { ok: true, mapping: parsed.data };
  const problems = parsed.error.issues.map((issue): Problem => {
    const path = issue.path.map((key) => (typeof key === "number" ? key : String(key)));
    const at = path.length > 0 ? path.join(".") : "The mapping";
    const message = `${at} of the meter's mapping does not fit (${issue.message}); leave it out to have it found in the log.`;
    return { code: "bad-mapping", path, message };
  });
  return { ok: false, problems };
}
