import { CHEMISTRY_DATA } from "../bank/chemistryData.ts";
import { Bank } from "../scenario/bank.ts";
import type { OwnedThing } from "./ownedThing.ts";

/** A bank as it may be written. */
type WrittenBank = Record<string, unknown>;

/** So many strings of one battery side by side. */
export interface Strings {
  readonly thing: OwnedThing;
  readonly strings: number;
}

export const USUAL_BLOCK_V = 12;

/** What is stated of the whole bank and goes with what stands side by side. */
const OF_SIZE = [
  "name",
  "bring",
  "blockAh",
  "inSeries",
  "inParallel",
  "healthShare",
  "maxChargeA",
  "maxDischargeA",
  "peakDischargeA",
  "shortCircuitA",
  "internalResistanceOhm",
  "chargingResistanceOhm",
] as const;

/** What is stated of the cells and says nothing of another chemistry. */
const OF_CHEMISTRY = [
  "coulombicEfficiencyShare",
  "peukertExponent",
  "absorptionV",
  "acceptancePerH",
  "disconnectV",
  "reconnectV",
  "coldChargeLockC",
  "coldDischargeLockC",
  "openCircuitCurve",
] as const;

const six = (value: number) => Number(value.toPrecision(6));

/**
 * A plan's bank made up of batteries of one chemistry, side by side in strings: what the plan says of reserve, start, warmth and volts stays. Of a
 * battery like the plan's own it says the currents and resistances too; of another the battery, or its chemistry.
 *
 * Side by side, strings share the current by their conductances, which go with their ampere-hours: the bank's limit is met when the first of
 * them is at its own, and conductances add (Kirchhoff; common practice for mixed banks, no source).
 * @param plan the bank as it was read; @param written as it is written
 */
export function packedBank(plan: Bank, written: WrittenBank, strings: readonly Strings[]): WrittenBank {
  const [first] = strings;
  const { chemistry } = first!.thing;
  const own = strings.every(({ thing }) => isLike(plan, thing) && ownFigures(thing).length === 0);
  const many = strings.reduce((sum, each) => sum + each.strings, 0);
  if (own && many === plan.inParallel) return written;
  const isOne = strings.length === 1;
  const ratedAh = strings.reduce((sum, each) => sum + each.strings * each.thing.blockAh!, 0);
  const kept = Object.fromEntries(
    Object.entries(written).filter(
      ([field]) =>
        !OF_SIZE.includes(field as (typeof OF_SIZE)[number]) &&
        (chemistry === plan.chemistry || !OF_CHEMISTRY.includes(field as (typeof OF_CHEMISTRY)[number])),
    ),
  );
  const healthyAh = strings.reduce(
    (sum, { thing, strings: n }) => sum + n * thing.blockAh! * (thing.healthShare ?? healthOf(plan, thing)),
    0,
  );
  const figures = {
    ...limit("maxChargeA", plan, strings, ratedAh, CHEMISTRY_DATA[chemistry!].maxChargePerAh),
    ...limit("maxDischargeA", plan, strings, ratedAh, CHEMISTRY_DATA[chemistry!].maxDischargePerAh),
    ...resistance("internalResistanceOhm", plan, strings),
    ...resistance("chargingResistanceOhm", plan, strings),
  };
  return {
    ...kept,
    ...boxFor(written, plan, ratedAh),
    chemistry,
    nominalV: plan.nominalV,
    blockAh: isOne ? first!.thing.blockAh : six(ratedAh),
    inSeries: plan.nominalV / (first!.thing.blockV ?? USUAL_BLOCK_V),
    inParallel: isOne ? first!.strings : 1,
    healthShare: six(healthyAh / ratedAh),
    ...figures,
  };
}

/** Whether a battery is one of those that the plan's bank is made of. */
export function isLike(plan: Bank, { chemistry, blockAh, blockV = USUAL_BLOCK_V, healthShare }: OwnedThing): boolean {
  return (
    chemistry === plan.chemistry &&
    blockAh === plan.blockAh &&
    blockV === plan.nominalV / plan.inSeries &&
    (healthShare === undefined || healthShare === plan.healthShare)
  );
}

const healthOf = (plan: Bank, thing: OwnedThing) => (isLike(plan, thing) ? plan.healthShare : 1);

const ownFigures = (thing: OwnedThing) =>
  [thing.maxChargeA, thing.maxDischargeA, thing.internalResistanceOhm].filter((value) => value !== undefined);

type Limited = "maxChargeA" | "maxDischargeA";

/** What one string may take or give: as the battery says, as the plan says of its like, else null. */
function limitOf(field: Limited, plan: Bank, thing: OwnedThing): number | null {
  const stated = plan[field];
  return thing[field] ?? (isLike(plan, thing) && stated !== undefined ? stated / plan.inParallel : null);
}

function limit(field: Limited, plan: Bank, strings: readonly Strings[], ratedAh: number, perAh: number) {
  if (strings.every(({ thing }) => limitOf(field, plan, thing) === null)) return {};
  const least = Math.min(
    ...strings.map(({ thing }) => (limitOf(field, plan, thing) ?? perAh * thing.blockAh!) / thing.blockAh!),
  );
  return { [field]: six(least * ratedAh) };
}

type Resisting = "internalResistanceOhm" | "chargingResistanceOhm";

/** Resistance of one string: as the battery says (of one of them), as the plan says of its like, else null. */
function resistanceOf(field: Resisting, plan: Bank, thing: OwnedThing): number | null {
  const inSeries = plan.nominalV / (thing.blockV ?? USUAL_BLOCK_V);
  if (field === "internalResistanceOhm" && thing.internalResistanceOhm !== undefined)
    return thing.internalResistanceOhm * inSeries;
  const stated = plan[field];
  return isLike(plan, thing) && stated !== undefined ? stated * plan.inParallel : null;
}

/** Under load, by its chemistry, as `prepareBank` fills it in. */
const usualOhm = (plan: Bank, { chemistry, blockAh }: OwnedThing) =>
  (CHEMISTRY_DATA[chemistry!].internalOhmPer100Ah * 100 * plan.nominalV) / (12 * blockAh!);

function resistance(field: Resisting, plan: Bank, strings: readonly Strings[]) {
  const unstated = strings.filter(({ thing }) => resistanceOf(field, plan, thing) === null).length;
  // A stated charging resistance has the polarisation in it, and the chemistry's has not: the two are not mixed.
  if (unstated === strings.length || (unstated > 0 && field === "chargingResistanceOhm")) return {};
  let siemens = 0;
  for (const { thing, strings: n } of strings) {
    const ohm = resistanceOf(field, plan, thing) ?? usualOhm(plan, thing);
    if (ohm === 0) return { [field]: 0 };
    siemens += n / ohm;
  }
  return { [field]: six(1 / siemens) };
}

/** The heat that a bank in a box holds goes with its size, where it is stated. */
function boxFor({ box }: WrittenBank, plan: Bank, ratedAh: number) {
  const heat = plan.box?.heatCapacityWhPerK;
  if (box === undefined || heat === undefined) return {};
  const planAh = plan.blockAh * plan.inParallel;
  return { box: { ...(box as object), heatCapacityWhPerK: six((heat * ratedAh) / planAh) } };
}

/** Whether a bank may be so; a bank beyond the schema's range is none. */
export function readBank(written: WrittenBank): Bank | null {
  const read = Bank.safeParse(written);
  return read.success ? read.data : null;
}
