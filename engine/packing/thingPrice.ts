import { batteryMassKg, controllerMassKg, generatorMassKg, leadMassKg, panelMassKg } from "../gear/typicalMassKg.ts";
import type { OwnedThing } from "./ownedThing.ts";
import { USUAL_BLOCK_V } from "./packedBank.ts";

/** What counts most to whoever packs, and what limits are on. */
export const PACK_ORDERS = ["mass", "minutes", "money"] as const;
export type PackOrder = (typeof PACK_ORDERS)[number];

/** What one of a thing takes; null where nobody says. */
export interface ThingPrice {
  readonly mass: number | null;
  /** Whether that mass is what such things usually weigh, for want of a stated one. */
  readonly isTypical: boolean;
  readonly minutes: number | null;
  /** 0 for what is at hand, unless it says otherwise. */
  readonly money: number | null;
}

/** @see typicalMassKg where a thing does not say its mass */
export function thingPrice(thing: OwnedThing): ThingPrice {
  const isAtHand = thing.get === undefined || thing.get === "hand";
  return {
    mass: thing.massKg ?? typicalMassKg(thing),
    isTypical: thing.massKg === undefined,
    minutes: thing.setupMinutes ?? null,
    money: thing.cost ?? (isAtHand ? 0 : null),
  };
}

const USUAL_GENERATOR_W = 1000;

function typicalMassKg(thing: OwnedThing): number {
  const { kind } = thing;
  const kg = {
    battery: () => batteryMassKg(thing.chemistry!, thing.blockAh!, thing.blockV ?? USUAL_BLOCK_V),
    panel: () => panelMassKg(thing.ratedW!),
    controller: () => controllerMassKg(thing.maxChargeA!),
    generator: () => generatorMassKg(thing.continuousW ?? USUAL_GENERATOR_W, thing.fuelL!),
    lead: () => leadMassKg(thing.lengthM!, thing.mm2 ?? awgMm2(thing.awg!)),
  }[kind]();
  return Number(kg.toPrecision(2));
}

/** Cross-section of an American wire gauge, mm² (ASTM B258: 0.005 in × 92^((36 − n) / 39) across). */
export function awgMm2(awg: string): number {
  const n = awg.includes("/") ? 1 - Number(awg.split("/")[0]) : Number(awg);
  const diameterMm = 0.127 * 92 ** ((36 - n) / 39);
  return (Math.PI / 4) * diameterMm ** 2;
}

/** What a set takes in one respect: what is stated (or typical) summed, and of how many pieces it is not. */
export interface PackTotal {
  readonly sum: number;
  readonly notStated: number;
  readonly typical: number;
}

/** What a set takes. */
export type PackTotals = Readonly<Record<PackOrder, PackTotal>>;

/** @param take pieces of each thing; @param prices of one piece of each */
export function totalsOf(take: ArrayLike<number>, prices: readonly ThingPrice[]): PackTotals {
  const total = (order: PackOrder): PackTotal => {
    let sum = 0;
    let notStated = 0;
    let typical = 0;
    for (let t = 0; t < prices.length; t++) {
      const value = prices[t]![order];
      if (value === null) notStated += take[t]!;
      else sum += take[t]! * value;
      if (order === "mass" && prices[t]!.isTypical) typical += take[t]!;
    }
    return { sum: Number(sum.toFixed(6)), notStated, typical };
  };
  return { mass: total("mass"), minutes: total("minutes"), money: total("money") };
}

/** A set with what it takes. */
export interface Priced {
  readonly take: readonly number[];
  readonly totals: PackTotals;
}

/**
 * Makes what says whether one set takes no more than another in any respect, and less in some: then it is never worse to pack, whatever was left
 * unsaid of things that both take.
 */
export function makeBeats(prices: readonly ThingPrice[]): (one: Priced, other: Priced) => boolean {
  const unsaid = prices.flatMap((price, t) => (PACK_ORDERS.some((order) => price[order] === null) ? [t] : []));
  return (one, other) => {
    let isLess = false;
    for (const order of PACK_ORDERS) {
      const [a, b] = [one.totals[order].sum, other.totals[order].sum];
      if (a > b) return false;
      if (a < b) isLess = true;
    }
    for (const t of unsaid) {
      if (one.take[t]! > other.take[t]!) return false;
      if (one.take[t]! < other.take[t]!) isLess = true;
    }
    return isLess;
  };
}
