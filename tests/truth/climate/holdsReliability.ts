import { type PreparedEnsemble, prepareEnsemble } from "../../../engine/ensemble/prepareEnsemble.ts";
import { runMembers } from "../../../engine/odds/odds.ts";
import { loadClimateTables } from "../../../engine/place/loadClimateTables.ts";
import { turbidityOf } from "../../../engine/run/prepareSky.ts";
import { readScenario } from "../../../engine/scenario/readScenario.ts";
import { prepareClimateError } from "../../../engine/sky/climateError.ts";
import { type MonthlyClearness, prepareDailyClearness } from "../../../engine/sky/dailyClearness.ts";
import { dailyExtraterrestrialWhM2 } from "../../../engine/sky/dailyExtraterrestrialWhM2.ts";
import { dayLight } from "../../../engine/sky/dayClearIndex.ts";
import { type KnownDay, prepareKnownDays } from "../../../engine/sky/knownDays.ts";
import type { LongRecord } from "./longRecords.ts";
import { WINDOW_DAYS } from "./windowReliability.ts";

/** One plan: what its odds said, and in how many of the record's years it held. */
export interface HeldPlan {
  readonly odds: number;
  readonly years: number;
  readonly held: number;
}

/** Middle of January, April, July and October. */
const STARTS = ["01-14", "04-14", "07-14", "10-14"];
/** How many times what the sun brings on an average day the load takes. */
const LOADS = [0.8, 1, 1.2];
const MEMBERS = 200;
/** Cloud within the day is drawn, so each year's days are met so often, a share of which holds. */
const PER_YEAR = 8;
const PANEL_W = 100;
const BANK_AH = 50;
/** What the bank has to give over four days, W. */
const BANK_W = 2.5;
/** What of a panel's rated power level light brings to the bank. */
const YIELD = 0.8;
const RESERVE = 0.2;

/**
 * Four-day plans at a record's place, from full to a reserve of a fifth, with loads round what the sun brings; their odds from a climate, and
 * what becomes of them on the same dates of every year of the record, run through the same engine under the days that came.
 */
export async function holdsReliability(
  record: LongRecord,
  climate: MonthlyClearness,
  ktErrorRms: number,
): Promise<HeldPlan[]> {
  const tables = await loadClimateTables();
  const plans: HeldPlan[] = [];
  for (const start of STARTS) {
    const sun = sunW(record, climate, start);
    if (sun < 1) continue;
    for (const load of LOADS) {
      const scenario = scenarioOf(record, start, load * sun + BANK_W);
      const found = prepareEnsemble(scenario, { climate: tables }, "holds");
      if (!found.ok) throw new Error(found.problems[0]!.message);
      const ready = found.ensemble;
      const drawn = withClimate(ready, climate, ktErrorRms);
      const odds = heldShare(drawn, 0, MEMBERS);
      if (odds < 0.05 || odds > 0.95) continue;
      let held = 0;
      let years = 0;
      for (const days of realDays(record, start)) {
        const known = days.map((kt) => ({ kt, sureness: 1 }));
        held += heldShare(withKnown(drawn, known), years * PER_YEAR, PER_YEAR);
        years++;
      }
      plans.push({ odds, years, held });
    }
  }
  return plans;
}

function scenarioOf(record: LongRecord, start: string, loadW: number) {
  const first = Date.parse(`2025-${start}T00:00:00Z`);
  const last = new Date(first + WINDOW_DAYS * 86_400_000).toISOString().slice(0, 16);
  const read = readScenario({
    format: "duskline-scenario",
    version: 1,
    name: "A plan",
    place: {
      name: record.name,
      latitudeDeg: record.latitudeDeg,
      longitudeDeg: record.longitudeDeg,
      elevationM: record.elevationM ?? 0,
      zone: "UTC",
    },
    time: { start: `2025-${start}T00:00`, end: last, stepMinutes: 60 },
    weather: { kind: "typical", air: { maxC: 20, minC: 10 } },
    gear: [{ id: "load", name: "Load", working: { drawW: Math.max(0.1, loadW) }, use: { when: "always" } }],
    panels: [
      {
        id: "level",
        name: "Level",
        count: 1,
        module: { ratedW: PANEL_W },
        mount: { kind: "flat" },
        at: { eastM: 0, northM: 0, heightM: 1 },
        controller: { kind: "mppt", cable: { awg: "8", oneWayM: 3 } },
      },
    ],
    bank: { chemistry: "lfp", blockAh: BANK_AH, startShare: 0.6, reserveShare: RESERVE, temperature: 20 },
    sureness: { idleDraw: "measured", startCharge: "measured", bankHealth: "measured", panelYield: "measured" },
  });
  if (!read.ok) throw new Error(read.problems[0]!.message);
  return read.scenario;
}

/** What the panel brings on an average day at that time of the year. */
function sunW({ latitudeDeg }: LongRecord, { kt }: MonthlyClearness, start: string): number {
  const noonMs = Date.parse(`2025-${start}T12:00:00Z`);
  const levelWhM2 = kt[Number(start.slice(0, 2)) - 1]! * dailyExtraterrestrialWhM2(latitudeDeg, noonMs);
  return (levelWhM2 / 1000) * PANEL_W * (YIELD / 24);
}

/** The same plan under skies drawn from another climate. */
function withClimate(ensemble: PreparedEnsemble, climate: MonthlyClearness, ktErrorRms: number): PreparedEnsemble {
  const { prepared, skies } = ensemble;
  const { grid, scenario } = prepared;
  const { latitudeDeg, longitudeDeg, elevationM } = scenario.place;
  const site = { latitudeDeg, longitudeDeg, elevationM, linkeTurbidity: turbidityOf(scenario, grid) };
  const { brightestKt } = dayLight(site, grid.middleMs, grid.localDay);
  const clearness = prepareDailyClearness(climate, grid.dates, brightestKt);
  const errorMoves = prepareClimateError(clearness, ktErrorRms);
  return { ...ensemble, skies: { ...skies, climate: { ...skies.climate!, clearness, errorMoves, known: null } } };
}

/** The same plan under days whose light is known. */
function withKnown(ensemble: PreparedEnsemble, days: readonly KnownDay[]): PreparedEnsemble {
  const { skies } = ensemble;
  const known = prepareKnownDays(skies.climate!.clearness, days, skies.whole.clearIndexPerKt);
  return { ...ensemble, skies: { ...skies, climate: { ...skies.climate!, errorMoves: null, known } } };
}

/** Of so many members on from one: every year meets others, for their figures are a little off too. */
function heldShare(ensemble: PreparedEnsemble, from: number, members: number): number {
  const { lowestShare, unservedWh } = runMembers(ensemble, from, from + members).outcomes;
  let held = 0;
  for (let m = 0; m < members; m++) if (lowestShare[m]! >= RESERVE && unservedWh[m] === 0) held++;
  return held / members;
}

/** The Kt of the plan's days in each year that has them all. */
function realDays({ years }: LongRecord, start: string): number[][] {
  const month = Number(start.slice(0, 2)) - 1;
  return years.flatMap(({ kt, month: months }) => {
    const first = months.indexOf(month);
    if (first < 0) return [];
    const days = [...kt.subarray(first + Number(start.slice(3)) - 1)].slice(0, WINDOW_DAYS);
    return days.length === WINDOW_DAYS && !days.some(Number.isNaN) ? [days] : [];
  });
}
