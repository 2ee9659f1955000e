import { CHEMISTRIES } from "../../../engine/scenario/bank.ts";
import { WIRE_GAUGES } from "../../../engine/scenario/cable.ts";

/** How a field of a thing is filled in. */
export interface OwnedField {
  readonly name: string;
  readonly label: string;
  readonly isNumber: boolean;
  /** Values and their words, of a field that is one of a few. */
  readonly choices?: readonly (readonly [string, string])[];
  readonly isNeeded?: boolean;
  /** What counts where none of the choices is taken. */
  readonly leftOut?: string;
}

const number = (label: string) => ({ label, isNumber: true });
const text = (label: string) => ({ label, isNumber: false });
const same = (words: readonly string[]) => words.map((word) => [word, word] as const);

const FIELDS: Readonly<Record<string, Omit<OwnedField, "name">>> = {
  name: text("Name"),
  count: number("How many"),
  massKg: number("kg each"),
  setupMinutes: number("Minutes each"),
  get: {
    ...text("At hand"),
    leftOut: "yes",
    choices: [
      ["borrow", "to borrow"],
      ["buy", "to buy"],
    ],
  },
  cost: number("Money each"),
  who: text("Who has it"),
  as: text("In the plan as"),
  chemistry: {
    ...text("Chemistry"),
    isNeeded: true,
    choices: CHEMISTRIES.map((each) => [each, { lfp: "LFP", agm: "AGM", flooded: "flooded lead" }[each]] as const),
  },
  blockAh: number("Ah"),
  blockV: { ...number("V"), leftOut: "12", choices: same(["2", "6", "24", "48"]) },
  healthShare: number("Left by age, 0.2 to 1"),
  maxChargeA: number("Most charging A"),
  maxDischargeA: number("Most A out"),
  internalResistanceOhm: number("Ohm"),
  ratedW: number("W"),
  vmpV: number("V at the power point"),
  controller: { ...text("Kind"), leftOut: "MPPT", choices: [["pwm", "PWM"]] },
  maxPanelV: number("Most panel V"),
  chargerA: number("Charger A"),
  fuelL: number("Fuel, L"),
  continuousW: number("Continuous W"),
  from: text("Runs from"),
  to: text("Runs to"),
  lengthM: number("m, one way"),
  awg: { ...text("AWG"), leftOut: "by mm²", choices: same(WIRE_GAUGES) },
  mm2: number("mm²"),
};

/** The fields of things by their names. */
export const ownedFields: Readonly<Record<string, OwnedField>> = Object.fromEntries(
  Object.entries(FIELDS).map(([name, field]) => [name, { name, ...field }]),
);
