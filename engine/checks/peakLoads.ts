import type { Prepared } from "../run/prepare.ts";
import { drawnW } from "../scenario/draw.ts";
import type { Gear } from "../scenario/gear.ts";
import type { Station } from "../scenario/station.ts";

/** A moment at which much is drawn at once. */
export interface PeakMoment {
  /** W at the bank's terminals, converter and controllers included. */
  readonly watts: number;
  readonly step: number;
  /** Which stations send: their places in the scenario. */
  readonly sending: readonly number[];
}

/** The greatest draws of an event. */
export interface PeakLoads {
  /** Everything that may be on at once. */
  readonly site: PeakMoment;
  /** The same while each station sends; null for one that is never staffed. */
  readonly byStation: readonly (PeakMoment | null)[];
}

/**
 * The greatest draw that can come about, second by second: every piece of gear that may work in a step works, and of every
 * interlock group the staffed station that draws most sends. A thing that works part of the time, as a fridge, counts in full.
 * @param extraW what each station draws above receiving while it sends: its peak, or what of it lasts (`lastingExtraW`)
 */
export function peakLoads(
  prepared: Prepared,
  extraW: readonly number[] = prepared.loads.stations.map(({ peakExtraW }) => peakExtraW),
): PeakLoads {
  const { scenario, loads, grid, converterShare, controllersW } = prepared;
  const { stations } = scenario;
  const gearW = gearPeakW(prepared);
  let site: PeakMoment = { watts: 0, step: 0, sending: [] };
  const byStation: (PeakMoment | null)[] = stations.map(() => null);
  // Who is there changes a few times a day; what follows from it is worked out once for each company.
  const companies = new Map<string, Company>();
  for (let i = 0; i < grid.steps; i++) {
    const key = loads.stations.map((each) => (each.staffedShare[i]! > 0 ? "1" : "0")).join("");
    let company = companies.get(key);
    if (company === undefined) {
      company = companyOf(prepared, extraW, (s) => key[s] === "1");
      companies.set(key, company);
    }
    const watts = (stationsW: number) => (gearW[i]! + stationsW) / converterShare + controllersW;
    const all = watts(company.all.watts);
    if (all > site.watts) site = { watts: all, step: i, sending: company.all.sending };
    for (const [s, peak] of company.byStation.entries()) {
      if (peak === null) continue;
      const own = watts(peak.watts);
      if (own > (byStation[s]?.watts ?? 0)) byStation[s] = { watts: own, step: i, sending: peak.sending };
    }
  }
  return { site, byStation };
}

type StationsPeak = Pick<PeakMoment, "watts" | "sending">;

/** What the stations draw while some of them are staffed: with the loudest of each group sending, and with each one sending. */
interface Company {
  readonly all: StationsPeak;
  readonly byStation: readonly (StationsPeak | null)[];
}

function companyOf(prepared: Prepared, extraW: readonly number[], isStaffed: (s: number) => boolean): Company {
  const { stations } = prepared.scenario;
  const groups = interlocks(stations);
  const quietW = stations.reduce((sum, each, s) => sum + quietStationW(each, isStaffed(s)), 0);
  const loudestOf = groups.map((group) => loudest(group.filter(isStaffed), extraW));
  const withSender = (s: number | null): StationsPeak => {
    const sending = groups
      .map((group, g) => (s !== null && group.includes(s) ? s : loudestOf[g]!))
      .filter((each) => each >= 0);
    const sendingW = sending.reduce((sum, each) => sum + extraW[each]!, 0);
    return { watts: quietW + sendingW, sending };
  };
  return { all: withSender(null), byStation: stations.map((_, s) => (isStaffed(s) ? withSender(s) : null)) };
}

function interlocks(stations: readonly Station[]): number[][] {
  const groups = new Map<string, number[]>();
  stations.forEach((station, s) => {
    const name = station.interlock ?? `/${s}`;
    groups.set(name, [...(groups.get(name) ?? []), s]);
  });
  return [...groups.values()];
}

/** Of some stations the one that draws most; −1 of none. */
function loudest(among: readonly number[], extraW: readonly number[]): number {
  return among.reduce((best, s) => (best < 0 || extraW[s]! > extraW[best]! ? s : best), -1);
}

/** What the gear draws when all of it that may work in a step works, W per step; a thermostat that asks for anything asks for all. */
function gearPeakW({ scenario, loads, grid, bank }: Prepared): Float64Array {
  const padW = scenario.bank.box?.heater?.drawW ?? 0;
  const watts = new Float64Array(grid.steps).map((_, i) => ((bank.heaterW?.[i] ?? 0) > 0 ? padW : 0));
  for (const thing of scenario.gear) {
    const idleW = drawnW(thing.idle) * thing.count;
    const workingW = Math.max(idleW, drawnW(thing.working) * thing.count);
    const { usedW } = loads.devices.find(({ id }) => id === thing.id)!;
    const isAlways = thing.use.when === "always";
    for (let i = 0; i < grid.steps; i++) {
      const mayWork = thing.use.share > 0 && (isAlways || usedW[i] !== 0);
      watts[i]! += mayWork ? workingW : idleW;
    }
  }
  return watts;
}

/** The most that a piece of gear draws at any time of the event, W, all of its kind together. */
export function thingPeakW({ loads }: Prepared, thing: Gear): number {
  const idleW = drawnW(thing.idle) * thing.count;
  const { usedW } = loads.devices.find(({ id }) => id === thing.id)!;
  const everWorks = thing.use.share > 0 && (thing.use.when === "always" || usedW.some((watts) => watts !== 0));
  return everWorks ? Math.max(idleW, drawnW(thing.working) * thing.count) : idleW;
}

/** Between transmissions: receiving, with what works while it is staffed. */
function quietStationW(station: Station, isStaffed: boolean): number {
  const receiveW = isStaffed || station.whenUnstaffed === "receive" ? drawnW(station.radio.receive) : 0;
  return station.companions.reduce((sum, each) => {
    const works = isStaffed && each.works === "staffed";
    return sum + drawnW(works ? each.working : each.idle) * each.count;
  }, receiveW);
}
