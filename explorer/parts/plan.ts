import type { Change } from "../../engine/scenario/change.ts";
import type { ScenarioInput } from "../../engine/scenario/scenario.ts";

/** The sky that a plan assumes: the month's typical day, or one word for every day. */
export const SKIES = ["typical", "clear", "fair", "mixed", "cloudy", "overcast"] as const;
export type Sky = (typeof SKIES)[number];

/**
 * What the page lets one change about a scenario. A number that cannot be read stays as it was typed, so that the engine
 * can say what is wrong with it.
 */
export interface Plan {
  readonly blockAh: number | string;
  readonly inParallel: number | string;
  readonly reservePercent: number | string;
  /** Panels of each group, by the group's id. */
  readonly panels: Readonly<Record<string, number | string>>;
  /** null: the weather as the document has it, when that is neither typical nor words. */
  readonly sky: Sky | null;
}

/** A panel group that a plan can bring more or fewer of. */
export interface PlanGroup {
  readonly id: string;
  readonly name: string;
  /** What cannot be read stays text. */
  readonly ratedW: number | string;
  readonly inSeries: number;
}

/** All panel groups. */
export function planGroups(document: ScenarioInput): PlanGroup[] {
  return (document.panels ?? []).map((panel) => ({
    id: panel.id,
    name: panel.name,
    ratedW: panel.module.ratedW,
    inSeries: panel.inSeries ?? 1,
  }));
}

/** The plan that a document describes. */
export function planOf(document: ScenarioInput): Plan {
  const { weather } = document;
  const words = weather.kind === "words" ? new Set(weather.days) : null;
  const sky = weather.kind === "words" ? (words!.size === 1 ? [...words!][0]! : null) : null;
  return {
    blockAh: document.bank.blockAh,
    inParallel: document.bank.inParallel ?? 1,
    reservePercent: inPercent(document.bank.reserveShare),
    panels: Object.fromEntries((document.panels ?? []).map((panel) => [panel.id, panel.count])),
    sky: weather.kind === "typical" ? "typical" : sky,
  };
}

/** A share as it is typed; what cannot be read stays text. */
function inPercent(share: unknown): number | string {
  return typeof share === "number" ? Math.round(share * 1000) / 10 : String(share);
}

/** Resistances and current limits of the bank that belong to the whole of it, with the most and least that is allowed. */
const GROWS = [
  { field: "internalResistanceOhm", power: -1, low: 0, high: 2 },
  { field: "chargingResistanceOhm", power: -1, low: 0, high: 5 },
  { field: "maxChargeA", power: 1, low: 0.1, high: 5000 },
  { field: "maxDischargeA", power: 1, low: 0.1, high: 5000 },
] as const;

/**
 * The changes that turn the document into the plan. A bank with more ampere-hours is taken to be more of the same blocks:
 * its stated resistances fall and its stated current limits rise in proportion.
 */
export function changesOf(document: ScenarioInput, plan: Plan): Change[] {
  const base = planOf(document);
  const changes: Change[] = [];
  for (const field of ["blockAh", "inParallel"] as const) {
    if (plan[field] !== base[field]) changes.push({ at: `bank.${field}`, to: plan[field] });
  }
  changes.push(...grownBank(document, plan));
  if (plan.reservePercent !== base.reservePercent) {
    const { reservePercent } = plan;
    changes.push({
      at: "bank.reserveShare",
      to: typeof reservePercent === "number" ? reservePercent / 100 : reservePercent,
    });
  }
  for (const group of planGroups(document)) {
    const count = plan.panels[group.id]!;
    if (count !== base.panels[group.id]) changes.push({ at: `panels.${group.id}.count`, to: count });
  }
  if (plan.sky !== null && plan.sky !== base.sky) changes.push({ at: "weather", to: weatherOf(document, plan.sky) });
  return changes;
}

function grownBank(document: ScenarioInput, plan: Plan): Change[] {
  const { bank } = document;
  const ah = (blockAh: number | string, inParallel: number | string) => Number(blockAh) * Number(inParallel);
  const growth = ah(plan.blockAh, plan.inParallel) / ah(bank.blockAh, bank.inParallel ?? 1);
  if (!(growth > 0) || !Number.isFinite(growth) || growth === 1) return [];
  return GROWS.flatMap(({ field, power, low, high }): Change[] => {
    const stated = bank[field];
    if (stated === undefined) return [];
    const grown = stated * growth ** power;
    return [{ at: `bank.${field}`, to: Number(Math.min(high, Math.max(low, grown)).toPrecision(6)) }];
  });
}

/** The same sky every day; what the document says of air, haze and wind stays. */
function weatherOf(document: ScenarioInput, sky: Sky): NonNullable<Change["to"]> {
  const { air, linkeTurbidity, windMs } = document.weather;
  const kept = Object.fromEntries(Object.entries({ air, linkeTurbidity, windMs }).filter(([, value]) => value != null));
  if (sky === "typical") return { ...kept, kind: "typical" };
  // One word for each local day that the event touches; the engine takes more words than days, but not fewer.
  const dayOf = (local: string) => Date.parse(`${local.slice(0, 10)}T00:00Z`) / 86_400_000;
  const days = dayOf(document.time.end) - dayOf(document.time.start) + 1;
  return { ...kept, kind: "words", days: Array.from({ length: Math.min(61, Math.max(1, days)) }, () => sky) };
}
