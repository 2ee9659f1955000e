import { fitCorrection } from "../../../engine/actual/fitCorrection.ts";
import { planAgainstActual } from "../../../engine/actual/planAgainstActual.ts";
import { cautionsFor } from "../../../engine/checks/cautions.ts";
import { limits } from "../../../engine/checks/limits.ts";
import { drivers } from "../../../engine/drivers/drivers.ts";
import { prepareEnsemble } from "../../../engine/ensemble/prepareEnsemble.ts";
import { learn } from "../../../engine/learn/learn.ts";
import { learnReport } from "../../../engine/learn/learnReport.ts";
import { readReadings } from "../../../engine/learn/readReadings.ts";
import { readMeterLog } from "../../../engine/meter/readMeterLog.ts";
import { oddsReport, replayMember, runMembers } from "../../../engine/odds/odds.ts";
import { loadClimateTables } from "../../../engine/place/loadClimateTables.ts";
import { explain } from "../../../engine/run/explain.ts";
import { ledger } from "../../../engine/run/ledger.ts";
import { type Trace, trace } from "../../../engine/run/trace.ts";
import { readScenario } from "../../../engine/scenario/readScenario.ts";
import type { Scenario } from "../../../engine/scenario/scenario.ts";
import { usualWishes } from "../../../engine/size/sizeAxis.ts";
import { prepareSizes } from "../../../engine/size/sizeMap.ts";
import { sizeMembers } from "../../../engine/size/sizeMembers.ts";
import { sizeReport } from "../../../engine/size/sizeReport.ts";
import { versus } from "../../../engine/versus/versus.ts";
import { syntheticLog } from "../../engine/actual/syntheticLog.ts";
import { mustBeNumbers, mustBeProblems, mustBeSentences, readsWell } from "./sayings.ts";

const climate = await loadClimateTables();
const MEMBERS = 4;

/** A run balances, charge stays between empty and full, and a bank gives back no more than it was given. */
function mustBalance(run: Trace): void {
  const { prepared, record, chargeShare, bankLossW } = run;
  const { steps, stepH } = prepared.grid;
  for (const part of [record, chargeShare, bankLossW, run.servedShare, run.days, run.verdict]) mustBeNumbers(part);
  let lost = 0;
  let through = 0;
  for (let i = 0; i < steps; i++) {
    const sources = prepared.sources.reduce((sum, _, s) => sum + record.sourceW[s * steps + i]!, 0);
    const inW = record.solarW[i]! - record.spilledW[i]! + sources + Math.max(0, -record.bankW[i]!);
    const outW = record.servedW[i]! + Math.max(0, record.bankW[i]!);
    if (Math.abs(inW - outW) > 1e-6 * Math.max(1, inW)) throw new Error(`step ${i}: ${inW} W in, ${outW} W out`);
    lost += bankLossW[i]! * stepH;
    through += Math.abs(record.bankW[i]!) * stepH;
  }
  const wrong = chargeShare.findIndex((share) => !(share >= 0 && share <= 1 + 1e-12));
  if (wrong >= 0) throw new Error(`charge before step ${wrong} is ${chargeShare[wrong]}`);
  if (lost < -0.02 * through - 0.1)
    throw new Error(`the bank gave ${-lost} Wh more than it had, of ${through} Wh through it`);
}

/** Asks what one run answers: trace, ledger, explain, limits, cautions. */
export function askOneRun(document: unknown): void {
  const read = readsWell(() => readScenario(document));
  if (read === null) return;
  const traced = readsWell(() => trace(read.scenario, { climate }));
  if (traced === null) return;
  const run = traced.trace;
  mustBalance(run);
  mustBeSentences(run.verdict.sentences);
  mustBeNumbers(ledger(run), "ledger");
  const { startMs, stepMs, steps } = run.prepared.grid;
  for (const share of [0, 0.5, 1]) mustBeNumbers(explain(run, startMs + share * (steps * stepMs - 1)), "explain");
  for (const options of [{}, { coldestC: -60 }, { lowestShare: 0.1 }]) {
    const { lines } = limits(run, options);
    mustBeNumbers(lines, "limits");
  }
  cautionsFor(read.scenario);
}

/** Asks what an ensemble answers: odds, a member replayed, versus, sizes. */
export function askTheOdds(document: unknown): void {
  const read = readScenario(document);
  if (!read.ok) return;
  const ready = readsWell(() => prepareEnsemble(read.scenario, { climate }, "fuzz"));
  if (ready === null) return;
  const { ensemble } = ready;
  const part = runMembers(ensemble, 0, MEMBERS);
  mustBeNumbers(oddsReport(ensemble, part), "odds");
  mustBalance(replayMember(ensemble, 1));
  const half: Scenario = {
    ...read.scenario,
    bank: { ...read.scenario.bank, blockAh: Math.max(1, read.scenario.bank.blockAh / 2) },
  };
  const other = prepareEnsemble(half, { climate }, "fuzz");
  if (other.ok) {
    const both = [
      { name: "first", ensemble, part },
      { name: "half", ensemble: other.ensemble, part: runMembers(other.ensemble, 0, MEMBERS) },
    ];
    mustBeNumbers(versus(both), "versus");
  }
  const { x, y } = usualWishes(read.scenario);
  const map = readsWell(() => prepareSizes(document, x, y, { climate }, "fuzz"));
  if (map === null) return;
  const report = sizeReport(map.map, sizeMembers(map.map, 0, MEMBERS), { targetShare: 0.95, autonomyDays: 2 });
  mustBeNumbers(report, "sizes");
  mustBeSentences(report.sentences);
}

/** Asks what takes many members: drivers, learn from readings, a log held against the plan. */
export async function askTheRest(document: unknown): Promise<void> {
  const read = readScenario(document);
  if (!read.ok) return;
  const ready = prepareEnsemble(read.scenario, { climate }, "fuzz");
  if (!ready.ok) return;
  const { ensemble } = ready;
  mustBeNumbers(drivers(ensemble, 20), "drivers");
  const at = new Date(ensemble.prepared.grid.startMs + 4 * 3_600_000).toISOString().slice(0, 16);
  const readings = [
    { at, chargeShare: 0.5, panelsW: 30 },
    { at, loadA: 2 },
  ];
  const placed = readsWell(() =>
    readReadings({ format: "duskline-readings", version: 1, readings }, ensemble.prepared.grid),
  );
  if (placed !== null) {
    const learned = await learn(ensemble, placed.readings, 100);
    mustBeNumbers(learnReport(learned), "learn");
  }
  const columns = ["charge", "bankV", "bankA", "pvW", "loadW"] as const;
  const { text } = syntheticLog(ensemble, 1, { rowMinutes: read.scenario.time.stepMinutes, columns, lostShare: 0.1 });
  const log = readsWell(() => readMeterLog(text, { zone: "UTC" }));
  if (log === null) return;
  const fit = fitCorrection(read.scenario, log.log, { climate }, { members: 100 });
  if (!fit.ok) return mustBeProblems(fit.problems);
  mustBeNumbers(fit.correction.figures, "correction");
  const laid = planAgainstActual(read.scenario, log.log, { climate }, fit.correction);
  if (!laid.ok) return mustBeProblems(laid.problems);
  mustBeNumbers([laid.against.miss, laid.against.widest, laid.against.days], "actual");
}
