import { CHEMISTRY_DATA } from "../bank/chemistryData.ts";
import { drawnW } from "../scenario/draw.ts";
import type { Scenario } from "../scenario/scenario.ts";
import { clockMoments, clockMsOf } from "../zoneTime.ts";
import type { Reading } from "./reading.ts";

/** Volts that a 12 V bank at rest may show: an empty one hardly less (common practice, no source), a full one what its charger holds. */
const LEAST_V_PER_12V = 9.6;
const ROOM_V_PER_12V = 0.2;
/** A meter that was never set right counts a bank as a third larger than it is; more is a slip (our choice, no source). */
const MOST_AH_SHARE = 1.3;
/** At the edge of a cloud panels give more than their rating: measured up to about a quarter (common practice, no source). */
const MOST_PANELS_SHARE = 1.25;
/** Everything on at once at low volts, and a tenth more for what nobody listed (our choice, no source). */
const MOST_LOAD_SHARE = 1.1;
const LOW_V_SHARE = 0.9;
/** A clock that is a little off puts a reading into the future by minutes. */
const CLOCK_OFF_MS = 10 * 60_000;

/**
 * What of a reading can hardly be, each as a sentence that asks: a slip of the finger, another unit, another bank. Nothing of a reading that
 * somebody has confirmed.
 * @param all the readings of the event, this one among them: a second one of the same minute is asked about
 */
export function doubtsAbout(reading: Reading, all: readonly Reading[], scenario: Scenario): string[] {
  if (reading.isConfirmed === true) return [];
  return [...figureDoubts(reading, scenario), ...timeDoubt(reading, all, scenario)];
}

/** What of a reading's figures can hardly be, confirmed or not; when it was read is another matter. */
export function figureDoubts(reading: Reading, scenario: Scenario): string[] {
  return [
    ...voltsDoubt(reading, scenario),
    ...ampHoursDoubt(reading, scenario),
    ...panelsDoubt(reading, scenario),
    ...loadDoubt(reading, scenario),
  ];
}

function voltsDoubt({ restV }: Reading, { bank }: Scenario): string[] {
  if (restV === undefined) return [];
  const in12V = bank.nominalV / 12;
  const { absorptionVPer12V } = CHEMISTRY_DATA[bank.chemistry];
  const [low, high] = [
    LEAST_V_PER_12V * in12V,
    (bank.absorptionV ?? absorptionVPer12V * in12V) + ROOM_V_PER_12V * in12V,
  ];
  if (restV >= low && restV <= high) return [];
  return [
    `${restV.toFixed(2)} V on a ${bank.nominalV} V bank: at rest it shows ${low.toFixed(1)} to ${high.toFixed(1)} V. Really?`,
  ];
}

function ampHoursDoubt({ outAh }: Reading, { bank }: Scenario): string[] {
  const sizeAh = bank.blockAh * bank.inParallel;
  if (outAh === undefined || outAh <= MOST_AH_SHARE * sizeAh) return [];
  return [`${round(outAh)} Ah out of a bank of ${round(sizeAh)} Ah: more than it holds. Really?`];
}

function panelsDoubt({ panelsW }: Reading, { panels }: Scenario): string[] {
  const ratedW = panels.reduce((sum, group) => sum + group.count * group.module.ratedW, 0);
  if (panelsW === undefined || panelsW <= MOST_PANELS_SHARE * ratedW) return [];
  return [`${round(panelsW)} W from panels of ${round(ratedW)} W in all. Really?`];
}

function loadDoubt({ loadA }: Reading, scenario: Scenario): string[] {
  if (loadA === undefined) return [];
  const mostA = (MOST_LOAD_SHARE * everythingW(scenario)) / (LOW_V_SHARE * scenario.bank.nominalV);
  if (loadA <= mostA) return [];
  return [`${loadA.toFixed(1)} A of load, where everything in the plan at once draws ${mostA.toFixed(1)} A. Really?`];
}

/** All gear working and all radios sending, W at the bank. */
function everythingW({ gear, stations, converter }: Scenario): number {
  const gearW = (things: readonly Pick<Scenario["gear"][number], "count" | "idle" | "working">[]) =>
    things.reduce((sum, { count, idle, working }) => sum + count * (drawnW(idle) + drawnW(working)), 0);
  const stationW = stations.map(({ radio, companions }) => drawnW(radio.fullPower) + gearW(companions));
  const watts = gearW(gear) + stationW.reduce((sum, each) => sum + each, 0);
  return converter === undefined ? watts : watts / converter.efficiencyShare;
}

function timeDoubt(reading: Reading, all: readonly Reading[], { place }: Scenario): string[] {
  const doubts: string[] = [];
  if (all.slice(0, all.indexOf(reading)).some(({ at }) => at === reading.at))
    doubts.push(`There is another reading of ${reading.at.replace("T", " ")}, the same minute. Really?`);
  const [clockMs, typedMs] = [clockMsOf(reading.at), typedMsOf(reading.enteredAt)];
  if (clockMs === null || typedMs === null || place.zone === undefined) return doubts;
  if (clockMoments(place.zone, clockMs).firstMs > typedMs + CLOCK_OFF_MS)
    doubts.push(`It says ${reading.at.replace("T", " ")}, which was still to come when it was typed in. Really?`);
  return doubts;
}

/** "2026-10-09T16:31", as UTC; null where it says something else. */
function typedMsOf(text: string | undefined): number | null {
  if (text === undefined || !/^\d{4}-\d{2}-\d{2}T\d{2}:\d{2}$/.test(text)) return null;
  const ms = Date.parse(`${text}Z`);
  return Number.isNaN(ms) ? null : ms;
}

const round = (value: number) => Math.round(value).toString();
