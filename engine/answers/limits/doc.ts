import * as z from "zod";
import { USUAL_DROP_SHARE } from "../../checks/usualDrop.ts";
import { docNumber } from "../docField.ts";
import { Id } from "../docShapes.ts";

/** What limits are met at; what is left out is the run's own, and 3 % of its volts for a run of cable. */
export const LimitsDoc = z.strictObject({
  scenario: Id.meta({ label: "Scenario", description: "scenario whose wiring is checked" }),
  dropIn100: docNumber({
    label: "Most that a run may lose",
    what: "share of its volts that a run of cable may lose at its peak",
    unit: "% of its volts",
    low: 0.1,
    high: 50,
    leftOut: String(100 * USUAL_DROP_SHARE),
  }).optional(),
  chargeIn100: docNumber({
    label: "Charge at which peaks are met",
    what: "charge of the bank at which the worst transmit peak is met",
    unit: "%",
    low: 0,
    high: 100,
    leftOut: "the lowest that is planned: the run's, or the reserve",
  }).optional(),
  coldestC: docNumber({
    label: "Coldest air that panels meet",
    what: "air temperature at which the strings' open-circuit volts are taken",
    unit: "°C",
    low: -90,
    high: 60,
    leftOut: "the record of the place, by estimate",
  }).optional(),
});
export type LimitsDoc = z.infer<typeof LimitsDoc>;
