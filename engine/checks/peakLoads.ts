import type { Prepared } from "../run/prepare.ts";
import { drawnW } from "../scenario/draw.ts";
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
 */
export function peakLoads(prepared: Prepared): PeakLoads {
  const { scenario, loads, grid, converterShare, controllersW } = prepared;
  const { stations } = scenario;
  const groups = interlocks(stations);
  let site: PeakMoment = { watts: 0, step: 0, sending: [] };
  const byStation: (PeakMoment | null)[] = stations.map(() => null);
  for (let i = 0; i < grid.steps; i++) {
    const isStaffed = (s: number) => loads.stations[s]!.staffedShare[i]! > 0;
    const quietW = gearW(prepared, i) + stations.reduce((sum, each, s) => sum + quietStationW(each, isStaffed(s)), 0);
    const senders = groups.map((group) => loudest(group.filter(isStaffed), prepared));
    const momentWith = (s: number | null): PeakMoment => {
      const sending = groups.flatMap((group, g) => {
        const one = s !== null && group.includes(s) ? s : senders[g]!;
        return one < 0 ? [] : [one];
      });
      const sendingW = sending.reduce((sum, each) => sum + loads.stations[each]!.peakExtraW, 0);
      return { watts: (quietW + sendingW) / converterShare + controllersW, step: i, sending };
    };
    const all = momentWith(null);
    if (all.watts > site.watts) site = all;
    stations.forEach((_, s) => {
      if (!isStaffed(s)) return;
      const moment = momentWith(s);
      if (moment.watts > (byStation[s]?.watts ?? 0)) byStation[s] = moment;
    });
  }
  return { site, byStation };
}

function interlocks(stations: readonly Station[]): number[][] {
  const groups = new Map<string, number[]>();
  stations.forEach((station, s) => {
    const name = station.interlock ?? `/${s}`;
    groups.set(name, [...(groups.get(name) ?? []), s]);
  });
  return [...groups.values()];
}

/** Of some stations the one whose peak is largest; −1 of none. */
function loudest(among: readonly number[], { loads }: Prepared): number {
  const peakW = (s: number) => loads.stations[s]!.peakExtraW;
  return among.reduce((best, s) => (best < 0 || peakW(s) > peakW(best) ? s : best), -1);
}

function gearW({ scenario, loads }: Prepared, i: number): number {
  return scenario.gear.reduce((sum, thing, g) => {
    const idleW = drawnW(thing.idle) * thing.count;
    const workingW = Math.max(idleW, drawnW(thing.working) * thing.count);
    const mayWork = thing.use.share > 0 && (thing.use.when === "always" || loads.devices[g]!.usedW[i] !== 0);
    return sum + (mayWork ? workingW : idleW);
  }, 0);
}

/** Between transmissions: receiving, with what works while it is staffed. */
function quietStationW(station: Station, isStaffed: boolean): number {
  const receiveW = isStaffed || station.whenUnstaffed === "receive" ? drawnW(station.radio.receive) : 0;
  return station.companions.reduce((sum, each) => {
    const works = isStaffed && each.works === "staffed";
    return sum + drawnW(works ? each.working : each.idle) * each.count;
  }, receiveW);
}

/** The greatest mean over a stretch of hours, or of the whole where it is shorter. One value per step. */
export function greatestMean(values: ArrayLike<number>, stepH: number, hours: number): number {
  const width = Math.max(1, Math.min(values.length, Math.round(hours / stepH)));
  let sum = 0;
  let greatest = 0;
  for (let i = 0; i < values.length; i++) {
    sum += values[i]!;
    if (i >= width) sum -= values[i - width]!;
    if (i >= width - 1) greatest = Math.max(greatest, sum / width);
  }
  return greatest;
}
