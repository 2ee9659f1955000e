import * as z from "zod";
import { plainExpectation } from "../scenario/plainExpectation.ts";
import { quantity } from "../scenario/quantity.ts";
import { gearDoubt } from "./gearDoubt.ts";
import { GENERIC_GEAR } from "./gearTable.ts";
import { OwnGear } from "./ownGear.ts";

const Measured = z.strictObject({
  gear: z.enum(
    GENERIC_GEAR.map(({ id }) => id) as [string, ...string[]],
    "must be a kind of gear on the shelf; `duskline gear all` lists them",
  ),
  idle: quantity({ unit: "", low: 0, high: 5000, what: "measured on receive or idle, in the shelf's unit" }).optional(),
  working: quantity({ unit: "", low: 0, high: 5000, what: "measured at work, in the shelf's unit" }).optional(),
  isConfirmed: z.boolean("must be true or false").optional(),
  on: z
    .string()
    .regex(/^\d{4}-\d{2}-\d{2}$/, "must be a date such as 2026-05-31")
    .optional(),
});

/** What somebody measured and which kinds are their own, one entry for each kind of gear; W or A at 13.8 V as the shelf has it. */
export const MeasuredGear = z.strictObject({
  format: z.literal("duskline-gear", { error: 'must be "duskline-gear"' }),
  version: z.literal(1, { error: "must be 1, which is all that this duskline reads" }),
  measured: z.array(Measured).max(200, "must be at most 200 entries"),
  own: z.array(OwnGear, "must be a list of own kinds").max(100, "must be at most 100 kinds").optional(),
});
export type MeasuredGear = z.infer<typeof MeasuredGear>;
export type Measurement = MeasuredGear["measured"][number];

const LONGEST = 100_000;

/** Reads a file of measured gear; nothing in it is trusted. */
export function readMeasuredGear(
  text: string,
):
  | { readonly ok: true; readonly measured: readonly Measurement[]; readonly own: readonly OwnGear[] }
  | { readonly ok: false; readonly sentences: readonly string[] } {
  const refused = (...sentences: string[]) => ({ ok: false, sentences }) as const;
  if (text.length > LONGEST)
    return refused(`The file has ${text.length} characters; measured gear has at most ${LONGEST}.`);
  let value: unknown;
  try {
    value = JSON.parse(text);
  } catch (error) {
    return refused(`The file is not JSON (${(error as Error).message}).`);
  }
  const parsed = MeasuredGear.safeParse(value, { error: plainExpectation });
  if (!parsed.success) {
    return refused(
      ...parsed.error.issues.slice(0, 8).map(({ path, message }) => {
        // A quantity says what it expects as the second half of a sentence.
        const said = /^(a|an|text)\b/.test(message) ? `must be ${message}` : message;
        return `${path.join(".") || "The file"}: ${said}.`.replace(/\.\.$/, ".");
      }),
    );
  }
  const { measured, own = [] } = parsed.data;
  const twice = measured.find(({ gear }, i) => measured.findIndex((each) => each.gear === gear) !== i);
  if (twice !== undefined) return refused(`${twice.gear} is measured twice in the file; keep one of them.`);
  const again = own.find(({ id }, i) => own.findIndex((each) => each.id === id) !== i);
  if (again !== undefined) return refused(`${again.id} is an own kind twice in the file; keep one of them.`);
  return { ok: true, measured, own };
}

/** What is asked about measured figures before they are taken; nothing about those that somebody confirmed. */
export function measuredDoubts(measured: readonly Measurement[]): string[] {
  return measured.flatMap((each) => {
    const gear = GENERIC_GEAR.find(({ id }) => id === each.gear);
    if (gear === undefined || each.isConfirmed === true) return [];
    return (["idle", "working"] as const).flatMap((which) => {
      const value = each[which];
      const doubt = value === undefined ? null : gearDoubt(gear, which, value);
      return doubt === null ? [] : [doubt];
    });
  });
}
