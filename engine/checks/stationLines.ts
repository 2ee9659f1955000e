import type { CopperSize } from "../array/copperOhmPerM.ts";
import { coldestOhm } from "../bank/bankOhm.ts";
import { openCircuitV } from "../bank/bankVoltage.ts";
import type { Cable } from "../scenario/cable.ts";
import type { Station } from "../scenario/station.ts";
import { ampacityA, largestFuseA } from "./ampacityA.ts";
import { runOhm, sizeInWords, smallestBehind, smallestSize } from "./cableDropV.ts";
import { designA, fuseFor, isPeakBound } from "./fuseFor.ts";
import { CONTINUOUS_H, type LimitContext, momentA } from "./limitContext.ts";
import { type LimitLine, limitLine } from "./limitLine.ts";
import { LIMIT_RULES } from "./limitRules.ts";
import { greatestMean } from "./peakLoads.ts";
import { type RadioVolts, radioVolts } from "./radioVolts.ts";

/** Volts above the least at which a radio counts as comfortable (our choice, no source): what a worn plug takes. */
const ROOM_V = 0.25;

/** Greatest current in a radio's own lead over three hours, A. */
export function leadContinuousA(context: LimitContext, s: number): number {
  const { prepared } = context.run;
  const station = prepared.scenario.stations[s]!;
  const { receiving, sending } = prepared.loads.stations[s]!;
  const watts = receiving.usedW.map((used, i) => used + receiving.alwaysW[i]! + sending.usedW[i]!);
  return greatestMean(watts, prepared.grid.stepH, CONTINUOUS_H) / leadV(station);
}

const leadV = (station: Station) => station.radio.fullPower.atV ?? 13.8;

/** Volts at a radio in its worst moment; null for a station that is never staffed. */
export function radioVoltsAt(context: LimitContext, s: number, lead?: CopperSize): RadioVolts | null {
  const moment = context.peaks.byStation[s];
  if (moment === null || moment === undefined) return null;
  const { prepared } = context.run;
  const { feed } = prepared.scenario.stations[s]!;
  const hasConverter = prepared.converterV > 0;
  return radioVolts({
    openV: hasConverter ? prepared.converterV : context.openV,
    siteA: hasConverter ? 0 : momentA(context, moment),
    packOhm: context.packOhm,
    mainCableOhm: context.mainCableOhm,
    mainContactsOhm: context.mainContactsOhm,
    radioA: prepared.loads.stations[s]!.peakA,
    leadOhm: runOhm(feed.cable, lead),
    leadContactsOhm: feed.contactsOhm,
  });
}

/** Lead, fuse and volts of one station. */
export function stationLines(context: LimitContext, s: number): LimitLine[] {
  const { prepared } = context.run;
  const station = prepared.scenario.stations[s]!;
  const { feed } = station;
  const { warmestC } = context;
  const about = `lead of ${station.name}`;
  const field = `stations.${station.id}.feed`;
  const peakA = prepared.loads.stations[s]!.peakA;
  const continuousA = leadContinuousA(context, s);
  const needA = designA(peakA, continuousA);
  const mostFuseA = largestFuseA(feed.cable, warmestC);
  const fuse = fuseFor(peakA, continuousA, mostFuseA);
  const fits =
    fuse === null ? thickerLead(feed.cable, fuseFor(peakA, continuousA, null), warmestC) : `Fit a ${fuse} A fuse.`;
  const fire = ["fire"];
  const lines = [
    limitLine({
      id: `lead-fuse-carries/${station.id}`,
      about,
      quantity: "current through the fuse",
      value: needA,
      unit: "A",
      limit: feed.fuseA ?? null,
      closeWithin: 0,
      isAbove: isPeakBound(peakA, continuousA),
      isOverWhereMissing: `No fuse is stated, and without one a short burns the lead. ${fits} Then state ${field}.fuseA.`,
      rule: LIMIT_RULES.fuseCarries,
      change: fits,
      fill: `${field}.fuseA`,
      cautions: fire,
    }),
    limitLine({
      id: `lead-fuse-wire/${station.id}`,
      about,
      quantity: "fuse for its wire",
      value: feed.fuseA ?? null,
      unit: "A",
      limit: mostFuseA,
      closeWithin: 0,
      rule: LIMIT_RULES.fuseForWire,
      change: fuse === null ? fits : `Fit a smaller fuse (${fuse} A carries the peak) or a thicker lead.`,
      fill: `${field}.fuseA`,
      cautions: fire,
    }),
    limitLine({
      id: `lead-wire-carries/${station.id}`,
      about,
      quantity: "current in the wire",
      value: needA,
      unit: "A",
      limit: ampacityA(feed.cable, warmestC),
      rule: LIMIT_RULES.wireCarries,
      change: "Fit a thicker lead.",
      cautions: fire,
    }),
  ];
  const volts = radioVoltsAt(context, s);
  if (volts !== null) {
    lines.push(
      limitLine({
        id: `radio-volts/${station.id}`,
        about,
        quantity: `volts on the worst peak (${volts.weakLink.link} takes most)`,
        value: volts.radioV,
        unit: "V",
        limit: station.radio.minimumV,
        bound: "least",
        closeWithin: ROOM_V,
        rule: LIMIT_RULES.radioVolts,
        change: changeForVolts(context, s, volts),
      }),
    );
  }
  return lines;
}

/** All that must change where no fuse carries the peak and protects the lead. */
function thickerLead(cable: Cable, needed: number | null, warmestC: number): string {
  const size = needed === null ? null : smallestBehind(needed, cable, warmestC);
  if (size === null) return "No fuse carries this peak and protects this wire: send with less power.";
  return `No fuse carries this peak and protects this wire: fit a lead of ${sizeInWords(size)} or thicker and a ${needed} A fuse.`;
}

/** What would bring a radio over its least volts with room to spare. */
function changeForVolts(context: LimitContext, s: number, volts: RadioVolts): string {
  const { prepared } = context.run;
  const station = prepared.scenario.stations[s]!;
  const weak = `the ${volts.weakLink.link} takes ${volts.weakLink.lostV.toFixed(2)} V`;
  const spareV = station.radio.minimumV + ROOM_V - volts.radioV;
  const lead = volts.links.find(({ link }) => link === "lead")!;
  const { peakA } = prepared.loads.stations[s]!;
  const thicker = smallestSize(station.feed.cable, peakA, lead.lostV - spareV, peakA, context.warmestC);
  if (thicker !== null && runOhm(station.feed.cable, thicker) >= runOhm(station.feed.cable, THICKEST_LEAD))
    return `Fit a lead of ${sizeInWords(thicker)} or thicker (${weak}).`;
  const less = "send with less power, let fewer stations send at once, or ease the weak link";
  if (prepared.converterV > 0) return `No lead alone cures it (${weak}): set the converter higher, or ${less}.`;
  const share = chargeFor(context, s);
  const fuller =
    share === null
      ? "no charge of this bank is enough"
      : share >= 0.995
        ? "only a full bank is enough"
        : `keep the bank above ${percent(share)}`;
  return `No lead alone cures it (${context.openV.toFixed(2)} V at rest, and ${weak}): ${fuller}, or ${less}.`;
}

const percent = (share: number) => `${Math.round(100 * share)} %`;

/** Thickest lead that anybody ties to a radio's plug (our choice, no source). */
const THICKEST_LEAD: CopperSize = { awg: "4" };

/** The lowest charge, in whole percent, at which the radio has its volts with room on its worst peak; null if none is enough. */
function chargeFor(context: LimitContext, s: number): number | null {
  const { bank, scenario } = context.run.prepared;
  const { minimumV } = scenario.stations[s]!.radio;
  for (let each = 0; each <= 100; each++) {
    const storedAh = (each / 100) * bank.fullAh;
    const openV = openCircuitV(bank, storedAh);
    if (radioVoltsAt({ ...context, openV, packOhm: coldestOhm(bank, storedAh) }, s)!.radioV >= minimumV + ROOM_V)
      return each / 100;
  }
  return null;
}
