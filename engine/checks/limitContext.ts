import { coldestOhm } from "../bank/bankOhm.ts";
import { drawA, openCircuitV } from "../bank/bankVoltage.ts";
import { requireRange } from "../require.ts";
import type { Trace } from "../run/trace.ts";
import { runOhm } from "./cableDropV.ts";
import { greatestMean, type PeakLoads, type PeakMoment, peakLoads } from "./peakLoads.ts";
import { USUAL_DROP_SHARE } from "./usualDrop.ts";

/** What may be chosen about the limits. */
export interface LimitOptions {
  /** Most of its volts that a run may lose at its peak, share; 0.03 when left out (ABYC E-11 for critical feeds). */
  readonly targetDropShare?: number;
  /** Charge at which the peaks are met, share of full, such as one in twenty of an ensemble's; the reserve, or the run's own lowest where that is less, when left out. */
  readonly lowestShare?: number;
  /** Coldest air that the panels may meet, °C; the event's own coldest hour when left out. A record low is colder. */
  readonly coldestC?: number;
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
  readonly coldestFrom: "event" | "given";
  /** Warmest air of the event, °C. */
  readonly warmestC: number;
  readonly peaks: PeakLoads;
  readonly mainCableOhm: number;
  readonly mainContactsOhm: number;
  /** Current at the bank in the worst moment, and the greatest mean over three hours, A. */
  readonly siteA: number;
  readonly siteContinuousA: number;
}

/** What the NEC calls continuous (article 100: three hours or more), h. */
export const CONTINUOUS_H = 3;

/** Gathers what the checks look at. @throws RangeError if an option lies outside its range */
export function limitContext(run: Trace, options: LimitOptions): LimitContext {
  const { prepared } = run;
  const { bank, scenario, grid } = prepared;
  const usual = worstPlanned(run);
  const { targetDropShare = USUAL_DROP_SHARE, lowestShare = usual.share } = options;
  requireRange({ targetDropShare }, 0.001, 0.5);
  requireRange({ lowestShare }, 0, 1);
  // Nothing added turns a minus zero into a zero, which is what JSON gives back.
  const eventColdestC = prepared.airTempC.reduce((least, each) => Math.min(least, each), Number.POSITIVE_INFINITY) + 0;
  const { coldestC = eventColdestC } = options;
  // The event's own air is taken as it comes: files of measured weather reach down to −90 °C.
  if (options.coldestC !== undefined) requireRange({ coldestC }, -90, 60);
  const openV = openCircuitV(bank, lowestShare * bank.fullAh);
  const feed = scenario.mainFeed;
  const mainCableOhm = feed?.cable === undefined ? 0 : runOhm(feed.cable);
  const mainContactsOhm = feed?.contactsOhm ?? 0;
  const peaks = peakLoads(prepared);
  const packOhm = coldestOhm(bank, lowestShare * bank.fullAh);
  const ohm = packOhm + mainCableOhm + mainContactsOhm;
  const meanW = greatestMean(run.record.demandW, grid.stepH, CONTINUOUS_H);
  return {
    run,
    targetDropShare,
    lowestShare,
    lowestFrom: options.lowestShare === undefined ? usual.from : "given",
    openV,
    fullOpenV: openCircuitV(bank, bank.fullAh),
    packOhm,
    coldestC,
    coldestFrom: options.coldestC === undefined ? "event" : "given",
    warmestC: prepared.airTempC.reduce((most, each) => Math.max(most, each), Number.NEGATIVE_INFINITY) + 0,
    peaks,
    mainCableOhm,
    mainContactsOhm,
    siteA: drawA(openV, ohm, peaks.site.watts),
    siteContinuousA: drawA(openV, ohm, meanW),
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
