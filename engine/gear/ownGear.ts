import * as z from "zod";
import { quantity } from "../scenario/quantity.ts";
import { GENERIC_GEAR, type GenericGear } from "./gearTable.ts";

/** W or A at 13.8 V. */
const MOST = 5000;
export const OWN_USES = [
  "always",
  "afterDark",
  "whenStaffed",
  "evenings",
  "nights",
] as const satisfies readonly GenericGear["use"][];

/** A kind of gear that the shelf does not have, as somebody wrote it down. */
export const OwnGear = z.strictObject({
  id: z
    .string()
    .regex(/^[a-z][a-z0-9-]{0,59}$/, "must be small letters, figures and dashes, such as winch-2")
    .refine(
      (id) => GENERIC_GEAR.every((gear) => gear.id !== id),
      "is a kind on the shelf already; take another short name",
    ),
  name: z.string().trim().min(1, "must be a name").max(80, "must be a name of at most 80 letters"),
  unit: z.enum(["W", "A"], "must be W, or A at 13.8 V"),
  idle: quantity({ unit: "", low: 0, high: MOST, what: "what it takes idle, in its unit" }).optional(),
  working: quantity({ unit: "", low: 0, high: MOST, what: "what it takes at work, in its unit" }),
  use: z.enum(OWN_USES, `must be one of ${OWN_USES.join(", ")}`),
  share: quantity({ unit: "", low: 0, high: 1, what: "part of that time in which it works" }).optional(),
});
export type OwnGear = z.infer<typeof OwnGear>;

/** An own kind as it stands on the shelf: its figures are what they are, and nobody else's. */
export function onShelf({ id, name, unit, idle, working, use, share = 1 }: OwnGear): GenericGear {
  const just = (value: number) => ({ low: value, usual: value, high: value });
  return {
    id,
    name,
    words: "own",
    unit,
    idle: idle === undefined ? null : just(idle),
    working: just(working),
    radio: null,
    use,
    share,
    source: "written down by you",
  };
}

/** A short name for an own kind that nothing on the shelf has. @param taken ids of other own kinds */
export function ownGearId(name: string, taken: readonly string[]): string {
  const plain = name.normalize("NFKD").replace(/\p{M}/gu, "").toLowerCase();
  const begun =
    plain
      .replace(/[^a-z0-9]+/g, "-")
      .replace(/^[-\d]+|-+$/g, "")
      .slice(0, 50) || "own";
  const isTaken = (id: string) => taken.includes(id) || GENERIC_GEAR.some((gear) => gear.id === id);
  let id = begun;
  for (let n = 2; isTaken(id); n++) id = `${begun}-${n}`;
  return id;
}
