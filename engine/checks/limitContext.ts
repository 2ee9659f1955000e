import { wrapLongitudeDeg } from "../angle.ts";
import { coldestOhm } from "../bank/bankOhm.ts";
import { drawA, openCircuitV } from "../bank/bankVoltage.ts";
import type { ClimateTables } from "../place/climateTables.ts";
import { recordColdC } from "../place/recordColdC.ts";
import { requireRange } from "../require.ts";
import type { Trace } from "../run/trace.ts";
import type { Scenario } from "../scenario/scenario.ts";
import { type LastingDraw, lastingDraw } from "./lastingDraw.ts";
import { type PeakLoads, type PeakMoment, peakLoads } from "./peakLoads.ts";
import { USUAL_DROP_SHARE } from "./usualDrop.ts";
import { runOhm } from "./wireSizes.ts";

/** What may be chosen about the limits. */
export interface LimitOptions {
  /** Most of its volts that a run may lose at its peak, share; 0.03 when left out (ABYC E-11 for critical feeds). */
  readonly targetDropShare?: number;
  /** Charge at which the peaks are met, share of full, such as one in twenty of an ensemble's; the reserve, or the run's own lowest where that is less, when left out. */
  readonly lowestShare?: number;
  /** Coldest air that the panels may meet, °C; when left out the record of the place, or the event's own coldest hour where that is colder or no record is known. */
  readonly coldestC?: number;
}

/** What is known of the place besides its run. */
export interface LimitPlace {
  /** Coldest morning that the place is likely to have seen, °C (`recordColdC`); left out where no climate is at hand. */
  readonly recordC?: number;
}

/** What the climate tables tell of a scenario's place; nothing where they do not reach or there are none. */
export function limitPlace({ place }: Scenario, climate: ClimateTables | undefined): LimitPlace {
  if (climate === undefined) return {};
  const recordC = recordColdC(climate, place.latitudeDeg, wrapLongitudeDeg(place.longitudeDeg), place.elevationM);
  return recordC === null ? {} : { recordC };
}

/** What every check looks at: the run and its worst moments, worked out once. */
export interface LimitContext {
  readonly run: Trace;
  readonly targetDropShare: number;
  readonly lowestShare: number;
  readonly lowestFrom: "run" | "reserve" | "given";
  /** Open-circuit volts of the bank at that charge, and with a full bank. */
  readonly openV: number;
  readonly fullOpenV: number;
  /** Resistance of the bank at the lowest charge and in its coldest step, Ω. */
  readonly packOhm: number;
  readonly coldestC: number;
  readonly coldestFrom: "event" | "record" | "given";
  /** Warmest air of the event, °C. */
  readonly warmestC: number;
  readonly peaks: PeakLoads;
  readonly mainCableOhm: number;
  readonly mainContactsOhm: number;
  /** Current at the bank in the worst moment, and the greatest that lasts (`LASTING_MIN`), A. */
  readonly siteA: number;
  readonly siteLastingA: number;
  /** The same without controllers, which are wired ahead of the main feed's switch, W at the converter's output or at the distribution. */
  readonly loadW: number;
  readonly loadLastingW: number;
  /** Volts that gear meets in the worst moment: the converter's, or the bank's at the end of the main feed. */
  readonly loadV: number;
  /** What of each station's sending lasts. */
  readonly lasting: readonly LastingDraw[];
}

/** Gathers what the checks look at. @throws RangeError if an option lies outside its range */
export function limitContext(run: Trace, options: LimitOptions, { recordC }: LimitPlace = {}): LimitContext {
  const { prepared } = run;
  const { bank, scenario } = prepared;
  const usual = worstPlanned(run);
  const { targetDropShare = USUAL_DROP_SHARE, lowestShare = usual.share } = options;
  requireRange({ targetDropShare }, 0.001, 0.5);
  requireRange({ lowestShare }, 0, 1);
  // Nothing added turns a minus zero into a zero, which is what JSON gives back.
  const eventColdestC = prepared.airTempC.reduce((least, each) => Math.min(least, each), Number.POSITIVE_INFINITY) + 0;
  const isRecord = recordC !== undefined && recordC < eventColdestC;
  const { coldestC = isRecord ? recordC : eventColdestC } = options;
  // The event's own air is taken as it comes: files of measured weather reach down to −90 °C.
  if (options.coldestC !== undefined) requireRange({ coldestC }, -90, 60);
  const openV = openCircuitV(bank, lowestShare * bank.fullAh);
  const feed = scenario.mainFeed;
  const mainCableOhm = feed?.cable === undefined ? 0 : runOhm(feed.cable);
  const mainContactsOhm = feed?.contactsOhm ?? 0;
  const peaks = peakLoads(prepared);
  const packOhm = coldestOhm(bank, lowestShare * bank.fullAh);
  const ohm = packOhm + mainCableOhm + mainContactsOhm;
  const lasting = scenario.stations.map(lastingDraw);
  const lastingLoads = peakLoads(
    prepared,
    lasting.map(({ radioW, besideW }) => radioW + besideW),
  );
  const { converterShare, converterV, controllersW } = prepared;
  const siteA = drawA(openV, ohm, peaks.site.watts);
  const behind = (watts: number) => Math.max(0, watts - controllersW) * converterShare;
  return {
    run,
    targetDropShare,
    lowestShare,
    lowestFrom: options.lowestShare === undefined ? usual.from : "given",
    openV,
    fullOpenV: openCircuitV(bank, bank.fullAh),
    packOhm,
    coldestC,
    coldestFrom: options.coldestC !== undefined ? "given" : isRecord ? "record" : "event",
    warmestC: prepared.airTempC.reduce((most, each) => Math.max(most, each), Number.NEGATIVE_INFINITY) + 0,
    peaks,
    mainCableOhm,
    mainContactsOhm,
    siteA,
    siteLastingA: drawA(openV, ohm, lastingLoads.site.watts),
    loadW: behind(peaks.site.watts),
    loadLastingW: behind(lastingLoads.site.watts),
    loadV: converterV > 0 ? converterV : Math.max(1, openV - ohm * siteA),
    lasting,
  };
}

/** Current at the bank in some moment, A, by the bank's volts at the lowest charge. */
export function momentA(context: LimitContext, moment: PeakMoment): number {
  const { openV, packOhm, mainCableOhm, mainContactsOhm } = context;
  return drawA(openV, packOhm + mainCableOhm + mainContactsOhm, moment.watts);
}

/**
 * Charge that the peaks are planned for: a day worse than this run's takes the bank down to its reserve. A run whose disconnect opens has shown
 * how far it can come down with anybody sending; else nobody sends below the charge at whose volts at rest it would open.
 */
function worstPlanned(run: Trace): { readonly share: number; readonly from: "run" | "reserve" } {
  const { bank } = run.prepared;
  const runShare = lowestWhileConnected(run);
  if (run.record.connected.some((connected) => connected === 0)) return { share: runShare, from: "run" };
  const isReached = (share: number) => openCircuitV(bank, share * bank.fullAh) >= bank.disconnectV;
  let share = bank.reserveAh / bank.fullAh;
  while (share < runShare && !isReached(share)) share = Math.min(runShare, share + 0.01);
  return share < runShare ? { share, from: "reserve" } : { share: runShare, from: "run" };
}

/** The lowest charge of a run at which anybody may still send: once the disconnect is open, nobody does. */
function lowestWhileConnected({ chargeShare, record }: Trace): number {
  let lowest = chargeShare[0]!;
  for (let i = 0; i < record.connected.length; i++) {
    if (record.connected[i]! > 0) lowest = Math.min(lowest, chargeShare[i]!, chargeShare[i + 1]!);
  }
  return Math.max(0, Math.min(1, lowest));
}
