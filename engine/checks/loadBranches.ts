import { USUAL_RADIO_LEAD } from "../scenario/cable.ts";
import { drawnW } from "../scenario/draw.ts";
import type { Lead } from "../scenario/lead.ts";
import type { Station } from "../scenario/station.ts";
import { TO_GEAR_M } from "./assumedCable.ts";
import type { Branch } from "./branch.ts";
import type { LimitContext } from "./limitContext.ts";
import { holderOf, loadFuse, makeBranch, ratedPart } from "./makeBranch.ts";
import { thingPeakW } from "./peakLoads.ts";

/** Volts that a 12 V load is made for, by which marine practice takes the share of a drop (ABYC E-11). */
const LOAD_V = 12;

/** Each radio's lead, each lead of gear that has its own, and the one branch that all other gear hangs on. */
export function loadBranches(context: LimitContext): Branch[] {
  const { scenario } = context.run.prepared;
  const { own, others } = gearOf(context);
  return [
    ...scenario.stations.map((station, s) => stationBranch(context, station, s)),
    ...own.map((thing) =>
      gearBranch(context, thing.lead!, {
        id: `gear/${thing.id}`,
        about: `lead of ${thing.name}`,
        short: thing.name,
        field: `${thing.field}.lead`,
        watts: thing.watts,
        lastingW: thing.lastingW,
      }),
    ),
    ...(others.length === 0
      ? []
      : [
          gearBranch(context, scenario.mainFeed?.otherGear, {
            id: "gear",
            about: "branch of all other gear",
            short: otherWords(others.map(({ name }) => name)),
            field: "mainFeed.otherGear",
            watts: others.reduce((sum, { watts }) => sum + watts, 0),
            lastingW: others.reduce((sum, { lastingW }) => sum + lastingW, 0),
          }),
        ]),
  ];
}

function stationBranch(context: LimitContext, station: Station, s: number): Branch {
  const { feed } = station;
  const field = `stations.${station.id}.feed`;
  const { peakA } = context.run.prepared.loads.stations[s]!;
  const lastingA = leadLastingA(context, s);
  return makeBranch(context, {
    id: `lead/${station.id}`,
    kind: "station",
    about: `lead of ${station.name}`,
    short: station.name,
    peakA,
    lastingA,
    sending: [station.name],
    atV: LOAD_V,
    stated: feed.cable,
    usual: USUAL_RADIO_LEAD,
    cableField: `${field}.cable`,
    fuse: loadFuse(peakA, lastingA, feed.fuseA, `${field}.fuseA`),
    behind: [ratedPart("holder", feed.holderA)],
  });
}

/** Greatest current in a radio's own lead that lasts ten minutes and more, A. */
function leadLastingA(context: LimitContext, s: number): number {
  const { radio } = context.run.prepared.scenario.stations[s]!;
  return (drawnW(radio.receive) + context.lasting[s]!.radioW) / (radio.fullPower.atV ?? 13.8);
}

/** A load that is no radio: what it draws at most, and for long. */
interface Thing {
  readonly id: string;
  readonly name: string;
  readonly field: string;
  readonly lead: Lead | undefined;
  readonly watts: number;
  readonly lastingW: number;
}

/** Gear and what goes with radios: with a lead of its own, and without. A thing that works, works for long, as a fridge does. */
function gearOf(context: LimitContext): { readonly own: readonly Thing[]; readonly others: readonly Thing[] } {
  const { prepared } = context.run;
  const { scenario } = prepared;
  const padW = scenario.bank.box?.heater?.drawW ?? 0;
  const pad = { id: "pad", name: "heating pad", field: "", lead: undefined, watts: padW, lastingW: padW };
  const things: Thing[] = [
    ...scenario.gear.map((gear) => {
      const watts = thingPeakW(prepared, gear);
      return { id: gear.id, name: gear.name, field: `gear.${gear.id}`, lead: gear.lead, watts, lastingW: watts };
    }),
    ...scenario.stations.flatMap((station, s) =>
      station.companions.map((each) => {
        const idleW = drawnW(each.idle) * each.count;
        const watts = Math.max(idleW, drawnW(each.working) * each.count);
        const lasts = each.works === "sending" ? context.lasting[s]!.besideShare : 1;
        return {
          id: `${station.id}/${each.id}`,
          name: `${each.name} of ${station.name}`,
          field: `stations.${station.id}.companions.${each.id}`,
          lead: each.lead,
          watts,
          lastingW: idleW + lasts * (watts - idleW),
        };
      }),
    ),
    ...(padW > 0 ? [pad] : []),
  ].filter(({ watts, lead }) => watts > 0 || lead !== undefined);
  return {
    own: things.filter(({ lead }) => lead !== undefined),
    others: things.filter(({ lead }) => lead === undefined),
  };
}

interface GearFacts {
  readonly id: string;
  readonly about: string;
  readonly short: string;
  readonly field: string;
  readonly watts: number;
  readonly lastingW: number;
}

function gearBranch(context: LimitContext, lead: Lead | undefined, facts: GearFacts): Branch {
  const { loadV } = context;
  const { prepared } = context.run;
  const [peakA, lastingA] = [facts.watts / loadV, facts.lastingW / loadV];
  return makeBranch(context, {
    id: facts.id,
    kind: "gear",
    about: facts.about,
    short: facts.short,
    peakA,
    lastingA,
    atV: prepared.converterV > 0 ? LOAD_V : prepared.scenario.bank.nominalV,
    stated: lead?.cable,
    usual: TO_GEAR_M,
    cableField: `${facts.field}.cable`,
    fuse: loadFuse(peakA, lastingA, lead?.fuseA, `${facts.field}.fuseA`),
    behind: [holderOf(lead)],
  });
}

/** "Router", "Router and lamps", "Router, lamps and 3 more". */
function otherWords(names: readonly string[]): string {
  if (names.length <= 2) return names.join(" and ");
  return `${names.slice(0, 2).join(", ")} and ${names.length - 2} more`;
}
