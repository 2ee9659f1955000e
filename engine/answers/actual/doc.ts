import * as z from "zod";
import { Id } from "../docShapes.ts";
import { MOST_LOG_ROWS } from "../notebookLimits.ts";

const LogColumn = z.array(z.number().nullable()).max(MOST_LOG_ROWS);

/** A meter's log as it is kept: in our units and signs, thinned out to the plan's steps, with what it was read with. */
const KeptLog = z.strictObject({
  name: z.string().min(1).max(200),
  takenAt: z.string().min(1).max(40).optional(),
  zone: z.string().min(1).max(60),
  stamp: z.enum(["instant", "start", "end"]),
  startMs: z.number(),
  usualMs: z.number().min(1),
  /** Minutes after `startMs`, rising; the columns have one value for each. */
  atMinutes: z.array(z.number()).min(2).max(MOST_LOG_ROWS),
  chargeShare: LogColumn.optional(),
  bankV: LogColumn.optional(),
  bankA: LogColumn.optional(),
  bankW: LogColumn.optional(),
  pvW: LogColumn.optional(),
  loadW: LogColumn.optional(),
  /** The file's titles and how they were read, so that the next log of this meter is read alike. */
  titles: z.array(z.string().max(300)).max(60),
  mapping: z.record(z.string().max(40), z.json()),
  findings: z.array(z.string().max(2000)).max(60),
});
export type KeptLog = z.infer<typeof KeptLog>;

export const ActualDoc = z.strictObject({
  scenario: Id.meta({ label: "Scenario", description: "scenario that the log is held against" }),
  log: KeptLog.optional().meta({
    label: "Log",
    description: "what a meter wrote, thinned to the plan's steps",
    leftOut: "none yet",
  }),
});
export type ActualDoc = z.infer<typeof ActualDoc>;
