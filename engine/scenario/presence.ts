import * as z from "zod";
import { clockMoments, clockMsOf } from "../zoneTime.ts";
import type { TimeGrid } from "./timeGrid.ts";

const localTime = z
  .string({ error: 'a local time such as "2026-10-10T18:00"' })
  .regex(/^\d{4}-\d{2}-\d{2}T\d{2}:\d{2}$/, { error: 'a local time such as "2026-10-10T18:00"' });

/**
 * From when and until when a thing is there, for plans that change on the way: what is changed from a time on is there until then as it was, and
 * beside it, from then on, as it is afterwards.
 */
export const PRESENCE = {
  from: localTime.optional().meta({
    label: "From this time on",
    leftOut: "the beginning",
    change: {
      changed: "{item}: from {now} on, was {was}",
      added: "{item}: from {now} on",
      removed: "{item}: from the beginning",
    },
    description: "local time from which it is there and counts; from the beginning when left out",
  }),
  until: localTime.optional().meta({
    label: "Until this time",
    leftOut: "the end",
    change: { changed: "{item}: until {now}, was {was}", added: "{item}: until {now}", removed: "{item}: to the end" },
    description: "local time until which it is there and counts; to the end when left out",
  }),
};

/** From when and until when a thing is there. */
export interface Presence {
  readonly from?: string | undefined;
  readonly until?: string | undefined;
}

/** The instant of a local time, the first of two where it comes twice; one that clocks skip is the change of clocks. */
function instantMs(local: string, zone: string): number {
  const { firstMs, lastMs, isSkipped } = clockMoments(zone, clockMsOf(local)!);
  return isSkipped ? lastMs : firstMs;
}

/** How much of each step a thing is there for, 0…1; null where it always is. */
export function presentShare(
  { zone, startMs, stepMs, steps }: TimeGrid,
  { from, until }: Presence,
): Float64Array | null {
  if (from === undefined && until === undefined) return null;
  const fromMs = from === undefined ? Number.NEGATIVE_INFINITY : instantMs(from, zone);
  const untilMs = until === undefined ? Number.POSITIVE_INFINITY : instantMs(until, zone);
  return Float64Array.from({ length: steps }, (_, i) => {
    const begins = startMs + i * stepMs;
    return Math.max(0, Math.min(begins + stepMs, untilMs) - Math.max(begins, fromMs)) / stepMs;
  });
}
