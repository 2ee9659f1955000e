/** One local day of the ruler; 23 or 25 hours long when the clocks change on it. */
export interface RulerDay {
  /** "2026-10-08" */
  readonly date: string;
  readonly startMs: number;
  readonly endMs: number;
  /** The hours that carry a number: 06, 12 and 18 on the local clock. */
  readonly marks: readonly { readonly hour: number; readonly ms: number }[];
  /** Every full hour inside the day. */
  readonly hoursMs: readonly number[];
}

/** Whole local days from the first to the last that the event touches, over universal time. */
export interface Ruler {
  readonly zone: string;
  readonly startMs: number;
  readonly endMs: number;
  readonly days: readonly RulerDay[];
  /** The zone's offset from universal time: one, and one more for each change of clocks. */
  readonly offsets: readonly { readonly fromMs: number; readonly offsetMs: number }[];
}

/** Hours on the ruler, whatever the clocks say. */
export function rulerHours(ruler: Ruler): number {
  return (ruler.endMs - ruler.startMs) / 3_600_000;
}
