import type { CopperSize } from "../array/copperOhmPerM.ts";
import { coldestOhm } from "../bank/bankOhm.ts";
import { openCircuitV } from "../bank/bankVoltage.ts";
import { type VoltsLost, voltsCause, voltsLostWords } from "../run/voltsLost.ts";
import { radioLeadOf } from "../scenario/cable.ts";
import type { Station } from "../scenario/station.ts";
import { type LimitContext, momentA } from "./limitContext.ts";
import { type LimitLine, limitLine } from "./limitLine.ts";
import { LIMIT_RULES } from "./limitRules.ts";
import { type RadioVolts, radioVolts } from "./radioVolts.ts";
import { runOhm, sizeInWords, smallestSize } from "./wireSizes.ts";

/** Volts above the least at which a radio counts as comfortable (our choice, no source): what a worn plug takes. */
const ROOM_V = 0.25;

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
    leadOhm: runOhm(radioLeadOf(feed), lead),
    leadContactsOhm: feed.contactsOhm,
  });
}

/** The volts of one station's radio on its worst peak; nothing of one that is never staffed. */
export function radioLines(context: LimitContext, s: number): LimitLine[] {
  const station = context.run.prepared.scenario.stations[s]!;
  const volts = radioVoltsAt(context, s);
  if (volts === null) return [];
  return [
    limitLine({
      id: `radio-volts/${station.id}`,
      run: `lead/${station.id}`,
      about: `lead of ${station.name}`,
      quantity: `volts on the worst peak (mostly the ${voltsCause(lostOf(context, volts))})`,
      value: volts.radioV,
      unit: "V",
      limit: station.radio.minimumV,
      bound: "least",
      closeWithin: ROOM_V,
      rule: LIMIT_RULES.radioVolts,
      change: changeForVolts(context, s, volts),
      ...(station.feed.cable === undefined ? { assumed: assumedLead(station) } : {}),
    }),
  ];
}

function assumedLead({ id, feed }: Station): string {
  const { oneWayM } = radioLeadOf(feed);
  return `State stations.${id}.feed.cable: this counts with ${sizeInWords(radioLeadOf(feed))} over ${oneWayM} m one way.`;
}

/** Where the volts of a worst moment went, as a run tells it of its own. */
function lostOf({ openV, run }: LimitContext, { links }: RadioVolts): VoltsLost {
  const { bank, converterV } = run.prepared;
  const packV = links.reduce((sum, { link, lostV }) => sum + (link === "pack" ? lostV : 0), 0);
  const leadV = links.reduce((sum, { link, lostV }) => sum + (link === "pack" ? 0 : lostV), 0);
  return { chargeV: converterV > 0 ? 0 : openCircuitV(bank, bank.fullAh) - openV, packV, leadV };
}

/** What would bring a radio over its least volts with room to spare. */
function changeForVolts(context: LimitContext, s: number, volts: RadioVolts): string {
  const { prepared } = context.run;
  const station = prepared.scenario.stations[s]!;
  const weak = voltsLostWords(lostOf(context, volts));
  const spareV = station.radio.minimumV + ROOM_V - volts.radioV;
  const lead = volts.links.find(({ link }) => link === "lead")!;
  const { peakA } = prepared.loads.stations[s]!;
  const cable = radioLeadOf(station.feed);
  const asked = { dropA: peakA, mostDropV: lead.lostV - spareV, carriesA: peakA, airC: context.warmestC };
  const thicker = smallestSize(cable, { ...asked, fuseA: station.feed.fuseA ?? 0 });
  if (thicker !== null && runOhm(cable, thicker) >= runOhm(cable, THICKEST_LEAD))
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
  return `No lead alone cures it (${context.openV.toFixed(2)} V at rest, ${weak}): ${fuller}, or ${less}.`;
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
