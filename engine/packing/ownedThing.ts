import * as z from "zod";
import { CHEMISTRIES } from "../scenario/bank.ts";
import { WIRE_GAUGES } from "../scenario/cable.ts";
import { ClockTime } from "../scenario/clockTime.ts";
import { count, id, quantity, share, text, word } from "../scenario/quantity.ts";

/** Kinds of things that a club owns and a plan can do with more or fewer of. */
export const OWNED_KINDS = ["battery", "panel", "controller", "generator", "lead"] as const;
export type OwnedKind = (typeof OWNED_KINDS)[number];

/** Things on one list. */
export const MOST_OWNED = 100;
const LONGEST_NAME = 80;

const amount = (label: string, unit: string, low: number, high: number, what: string) =>
  quantity({ unit, low, high, what }).optional().meta({ label });

/** What each kind of thing has to say, and what it may say besides what all of them may. */
export const OWNED_FIELDS = {
  battery: {
    needs: ["chemistry", "blockAh"],
    may: ["blockV", "healthShare", "maxChargeA", "maxDischargeA", "internalResistanceOhm"],
  },
  panel: { needs: ["ratedW"], may: ["as", "vmpV"] },
  controller: { needs: ["maxChargeA"], may: ["controller", "maxPanelV"] },
  generator: { needs: ["chargerA", "fuelL"], may: ["as", "continuousW", "from", "to"] },
  lead: { needs: ["lengthM"], may: ["awg", "mm2"] },
} as const satisfies Record<OwnedKind, { needs: readonly string[]; may: readonly string[] }>;

const ofAll = {
  id: id("stays the same while the list does").meta({ label: "Short name" }),
  kind: word(OWNED_KINDS, "what it is").meta({ label: "What" }),
  name: text("what people call it", LONGEST_NAME).meta({ label: "Name" }),
  count: count({ low: 0, high: 60, what: "how many there are; 0 for none this time" }).meta({ label: "How many" }),
  get: word(["hand", "borrow", "buy"], "whether it is at hand, or has to be borrowed or bought; at hand when left out")
    .optional()
    .meta({ label: "At hand" }),
  cost: amount("Money each", "", 0, 1_000_000, "money for one, where it has to be bought or borrowed"),
  massKg: amount("kg each", "kg", 0, 5000, "mass of one, a generator with its fuel"),
  setupMinutes: amount("Minutes each", "min", 0, 1440, "work to set one up and take it down"),
  who: text("who has it and brings it", LONGEST_NAME).optional().meta({ label: "Who has it" }),
};

const ofSome = {
  as: id("panel group or source of the plan, or of another plan, that it stands for")
    .optional()
    .meta({ label: "In the plan as" }),
  chemistry: word(CHEMISTRIES, "chemistry of the battery").optional().meta({ label: "Chemistry" }),
  blockAh: amount("Ah", "Ah", 1, 3000, "rated capacity of one battery at the 20 h rate"),
  blockV: z
    .union(
      [2, 6, 12, 24, 48].map((volts) => z.literal(volts)),
      { error: "2, 6, 12, 24 or 48 (volts of one battery)" },
    )
    .optional()
    .meta({ label: "V", description: "volts of one battery; 12 when left out" }),
  healthShare: share("capacity that age has left", 0.2, 1).optional().meta({ label: "Left by age" }),
  maxChargeA: amount("Most charging A", "A", 0.1, 5000, "most current it takes, or that a controller gives"),
  maxDischargeA: amount("Most A out", "A", 0.1, 5000, "most current it gives"),
  internalResistanceOhm: amount("Ohm", "Ω", 0, 2, "resistance of one battery under load at half charge and 25 °C"),
  ratedW: amount("W", "W", 1, 800, "rated power of one panel"),
  vmpV: amount("V at the power point", "V", 1, 120, "voltage of one panel at its power point"),
  controller: word(["mppt", "pwm"], "kind of controller; mppt when left out").optional().meta({ label: "Controller" }),
  maxPanelV: amount("Most panel V", "V", 10, 1000, "most open-circuit volts that a controller stands"),
  chargerA: amount("Charger A", "A", 0.5, 400, "most current that the generator's charger gives the bank"),
  fuelL: amount("Fuel L", "L", 0, 2000, "fuel that comes along with one"),
  continuousW: amount("Continuous W", "W", 100, 20_000, "power it gives for hours; 1000 when left out"),
  from: ClockTime.optional().meta({ label: "Runs from", description: "earliest that it may run; 08:00 when left out" }),
  to: ClockTime.optional().meta({ label: "Runs to", description: "latest that it may run; 20:00 when left out" }),
  lengthM: amount("m", "m", 0, 200, "length of a lead, one way"),
  awg: word(WIRE_GAUGES, "American wire gauge of a lead").optional().meta({ label: "AWG" }),
  mm2: amount("mm2", "mm²", 0.25, 240, "cross-section of one conductor of a lead"),
};

/** Something that the club owns: how many, what bringing one takes, who has it, and what counts for the plan. Plain data. */
export const OwnedThing = z.strictObject({ ...ofAll, ...ofSome }).check(({ value, issues }) => {
  const refuse = (field: string, message: string, input: unknown = undefined) =>
    issues.push({ code: "custom", path: [field], input, message });
  const { needs, may } = OWNED_FIELDS[value.kind];
  const known: readonly string[] = [...needs, ...may];
  for (const field of needs) {
    if (value[field as keyof typeof value] === undefined) refuse(field, `a ${value.kind} has to say it; fill it in`);
  }
  for (const field of Object.keys(ofSome)) {
    const given = value[field as keyof typeof value];
    if (given !== undefined && !known.includes(field))
      refuse(field, `it says nothing about a ${value.kind}; leave it empty`, given);
  }
  if (value.kind === "lead" && (value.awg === undefined) === (value.mm2 === undefined))
    refuse("awg", "a lead says its conductor either in AWG or in mm², and not both", value.awg);
  if (value.from !== undefined && value.from === value.to)
    refuse("to", `it begins and ends at ${value.from}; give another end`, value.to);
});
export type OwnedThing = z.infer<typeof OwnedThing>;

/** What a club owns. */
export const OwnedList = z
  .array(OwnedThing)
  .max(MOST_OWNED, `must be at most ${MOST_OWNED} things`)
  .refine((things) => new Set(things.map((thing) => thing.id)).size === things.length, {
    error: "names two things alike; give each a short name of its own",
  });
