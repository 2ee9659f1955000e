import { panelCableOf } from "../scenario/cable.ts";
import { PanelGroup } from "../scenario/panelGroup.ts";
import type { Scenario } from "../scenario/scenario.ts";
import type { Written } from "./knownParts.ts";
import type { OwnedThing } from "./ownedThing.ts";

/** One way to set panels up, or none of them. */
export interface PanelOption {
  /** Panels set up, with which lead and controller of the list; null for those that the plan states. */
  readonly count: number;
  readonly lead: OwnedThing | null;
  readonly controller: OwnedThing | null;
  readonly written: Written | null;
  readonly group: PanelGroup | null;
}

/** A string's open-circuit volts grow by so much in the cold: NEC table 690.7(A) down to −40 °C. */
const COLD_FACTOR = 1.25;

/** What a controller of another kind does not say of itself. */
const OF_CONTROLLER = ["efficiencyShare", "ownDrawW", "stepDownOnly", "maxPanelA"] as const;

/**
 * Every way to set up panels of one kind: how many, on which lead that is long enough, on which controller that stands their volts.
 * @param pattern the group that they stand for, as it is written, its number aside
 */
export function panelOptions(
  thing: OwnedThing,
  pattern: Written,
  leads: readonly OwnedThing[],
  controllers: readonly OwnedThing[],
): PanelOption[] {
  const none: PanelOption = { count: 0, lead: null, controller: null, written: null, group: null };
  const base = PanelGroup.safeParse(pattern);
  if (!base.success) return [none];
  const needM = panelCableOf(base.data.controller).oneWayM;
  const long = leads.filter(({ lengthM }) => lengthM! >= needM);
  const options: PanelOption[] = [none];
  for (let count = 1; count <= thing.count; count++) {
    const inSeries = stringOf(count, base.data.inSeries);
    for (const lead of leads.length === 0 ? [null] : long) {
      for (const controller of controllers.length === 0 ? [null] : controllers) {
        const volts = inSeries * (thing.vmpV === undefined ? base.data.module.vocV : 1.22 * thing.vmpV) * COLD_FACTOR;
        if (controller?.maxPanelV !== undefined && volts > controller.maxPanelV) continue;
        const written = groupWith(thing, pattern, base.data, { count, inSeries, lead, controller });
        const read = PanelGroup.safeParse(written);
        if (read.success) options.push({ count, lead, controller, written, group: read.data });
      }
    }
  }
  return options;
}

/** Panels in a string: as many as the group has, or as come out even. */
function stringOf(count: number, inSeries: number): number {
  for (let n = Math.min(count, inSeries); n > 1; n--) if (count % n === 0) return n;
  return 1;
}

function groupWith(
  thing: OwnedThing,
  pattern: Written,
  base: PanelGroup,
  chosen: {
    readonly count: number;
    readonly inSeries: number;
    readonly lead: OwnedThing | null;
    readonly controller: OwnedThing | null;
  },
): Written {
  const { count, inSeries, lead, controller } = chosen;
  const written: Record<string, unknown> & { id: string } = { ...pattern, count };
  if (inSeries !== base.inSeries) written.inSeries = inSeries;
  if (thing.ratedW !== base.module.ratedW || (thing.vmpV !== undefined && thing.vmpV !== base.module.vmpV))
    written.module = { ratedW: thing.ratedW, ...(thing.vmpV === undefined ? {} : { vmpV: thing.vmpV }) };
  if (lead === null && controller === null) return written;
  const of = { ...((pattern.controller ?? {}) as Record<string, unknown>) };
  if (controller !== null) {
    const kind = controller.controller ?? "mppt";
    if (kind !== base.controller.kind) for (const field of OF_CONTROLLER) delete of[field];
    Object.assign(of, { kind, maxChargeA: controller.maxChargeA });
    if (controller.maxPanelV !== undefined) of.maxPanelV = controller.maxPanelV;
  }
  if (lead !== null) {
    const { tempC } = (of.cable ?? {}) as { readonly tempC?: number };
    const wire = lead.awg === undefined ? { mm2: lead.mm2 } : { awg: lead.awg };
    of.cable = { ...wire, oneWayM: lead.lengthM, ...(tempC === undefined ? {} : { tempC }) };
  }
  return { ...written, controller: of };
}

/**
 * The group that panels stand for: the one that they name, else one that is carried out and has panels of their power and that no other thing
 * stands for.
 * @param known groups as written, of the plan first
 */
export function patternOf(
  thing: OwnedThing,
  known: readonly Written[],
  isFree: (id: string) => boolean,
): Written | null {
  if (thing.as !== undefined) return known.find(({ id }) => id === thing.as && isFree(id)) ?? null;
  return known.find((group) => isFree(group.id) && isCarried(group) && ratedOf(group) === thing.ratedW) ?? null;
}

const ratedOf = ({ module }: Written) => (module as { ratedW?: number } | undefined)?.ratedW;

/** Whether a group as it is written is carried to where the sun is, rather than fixed to a roof. */
export function isCarried({ mount, out }: Written): boolean {
  return (mount as { kind?: string } | undefined)?.kind !== "flat" || out !== undefined;
}

/** A group in the sun, for panels that stand for none that anybody has planned. */
export function newGroup(
  thing: OwnedThing,
  id: string,
  { bank }: Scenario,
  mount: object,
  spot: { readonly eastM: number; readonly northM: number },
  cableM: number,
): Written {
  return {
    id,
    name: thing.name,
    count: 1,
    inSeries: IN_SERIES[bank.nominalV],
    module: { ratedW: thing.ratedW, ...(thing.vmpV === undefined ? {} : { vmpV: thing.vmpV }) },
    mount,
    at: { eastM: spot.eastM, northM: spot.northM, heightM: 0.5 },
    controller: { kind: "mppt", cable: { awg: "10", oneWayM: cableM } },
  };
}

/** A string of panels has to stand above the bank: about 18 V each at the power point. */
const IN_SERIES: Readonly<Record<12 | 24 | 48, number>> = { 12: 1, 24: 2, 48: 4 };
