import { describe, expect, test } from "vitest";
import { acceptCorrection } from "../../../engine/actual/acceptCorrection.ts";
import { clockOfLog } from "../../../engine/actual/clockOfLog.ts";
import { type Correction, type CorrectionName, fitCorrection } from "../../../engine/actual/fitCorrection.ts";
import { linearRule, solved, weightedQuantile } from "../../../engine/actual/linearRule.ts";
import { loggedSteps } from "../../../engine/actual/loggedSteps.ts";
import { planAgainstActual } from "../../../engine/actual/planAgainstActual.ts";
import { makeReplay } from "../../../engine/actual/replayActual.ts";
import type { MeterLog } from "../../../engine/meter/meterLog.ts";
import type { MeterMapping } from "../../../engine/meter/meterMapping.ts";
import { readMeterLog } from "../../../engine/meter/readMeterLog.ts";
import { tracePrepared } from "../../../engine/run/trace.ts";
import { applyChanges } from "../../../engine/scenario/applyChanges.ts";
import type { Change } from "../../../engine/scenario/change.ts";
import { readScenario } from "../../../engine/scenario/readScenario.ts";
import { SKY_WORDS } from "../../../engine/sky/skyWords.ts";
import { exampleDocument, exampleEnsemble, variantChanges } from "../ensemble/exampleEnsemble.ts";
import { type LogStyle, syntheticLog } from "./syntheticLog.ts";

const FULL: LogStyle = { rowMinutes: 10, columns: ["charge", "bankV", "bankA", "pvW", "loadW"], lostShare: 0.05 };
const grove = exampleEnsemble("walnut-grove");
const scenario = grove.prepared.scenario;
const { surroundings } = grove;
const truth = exampleEnsemble("walnut-grove", [], "what really happened");

function logOf(text: string, mapping: MeterMapping = { stamp: "start" }): MeterLog {
  const read = readMeterLog(text, mapping);
  if (!read.ok) throw new Error(JSON.stringify(read.problems));
  return read.log;
}
function fitted(log: MeterLog, of = scenario, members = 300): Correction {
  const fit = fitCorrection(of, log, surroundings, { members });
  if (!fit.ok) throw new Error(JSON.stringify(fit.problems));
  return fit.correction;
}
const figure = (correction: Correction, name: CorrectionName) => correction.figures.find((each) => each.name === name)!;
function against(log: MeterLog, correction: Correction | null = null, of = scenario) {
  const found = planAgainstActual(of, log, surroundings, correction);
  if (!found.ok) throw new Error(JSON.stringify(found.problems));
  return found.against;
}

describe("a log on a plan's steps", () => {
  const grid = grove.prepared.grid;
  const rows = (stepMs: number, count: number, stamp: MeterLog["stamp"], value: (k: number) => number): MeterLog => ({
    timeMs: Float64Array.from({ length: count }, (_, k) => grid.startMs + k * stepMs),
    usualMs: stepMs,
    stamp,
    chargeShare: Float64Array.from({ length: count }, (_, k) => 1 - k / 1000),
    bankV: null,
    bankA: null,
    bankW: null,
    pvW: Float64Array.from({ length: count }, (_, k) => value(k)),
    loadW: null,
    loadA: null,
    usedAh: null,
    zone: "UTC",
  });

  test("rows by the minute are averaged, rows by the hour are spread, and their energy stays", () => {
    const minutes = loggedSteps(
      rows(60_000, 60, "start", (k) => k),
      grid,
    );
    expect(Array.from(minutes.pvW!.slice(0, 6), (watts) => +watts.toFixed(9))).toEqual([
      4.5, 14.5, 24.5, 34.5, 44.5, 54.5,
    ]);
    const hours = loggedSteps(
      rows(3_600_000, 3, "start", (k) => 10 * (k + 1)),
      grid,
    );
    expect(Array.from(hours.pvW!.slice(0, 18))).toEqual([10, 20, 30].flatMap((watts) => Array(6).fill(watts)));
    expect(hours.pvW![18]).toBeNaN();
    const ending = loggedSteps(
      rows(3_600_000, 3, "end", (k) => 10 * (k + 1)),
      grid,
    );
    expect(Array.from(ending.pvW!.slice(0, 12))).toEqual([20, 30].flatMap((watts) => Array(6).fill(watts)));
  });

  test("charge is read at the edges of the steps, and not across a gap", () => {
    const log = rows(600_000, 12, "start", () => 1);
    const cut = { ...log, timeMs: log.timeMs.map((ms, k) => (k < 6 ? ms : ms + 7_200_000)) };
    const { chargeShare, coverageShare } = loggedSteps(cut, grid);
    expect(chargeShare![3]).toBeCloseTo(0.997, 12);
    expect(chargeShare![10]).toBeNaN();
    expect(chargeShare![18]).toBeCloseTo(0.994, 12);
    expect(coverageShare[3]).toBe(1);
    expect(coverageShare[10]).toBe(0);
  });
});

describe("the miss", () => {
  test("told the plan's own sun and load, the bank is the plan's", () => {
    const plan = tracePrepared(grove.prepared);
    const { inputs, grid } = grove.prepared;
    const planned = {
      startShare: scenario.bank.startShare,
      capacityShare: 1,
      wantedW: inputs.wantedW,
      sunW: plan.record.solarW,
    };
    const replay = makeReplay(grove.prepared);
    for (const step of [0, 100, grid.steps]) expect(replay(planned, step)).toBeCloseTo(plan.chargeShare[step]!, 9);
  });

  test("is the sum of its parts, and start, load, sun and capacity explain it except for the meter's errors", () => {
    for (const member of [0, 1, 2, 3, 4]) {
      const log = logOf(syntheticLog(truth, member, { ...FULL, lostShare: 0 }).text);
      const { miss, coveredShare } = against(log, fitted(log));
      expect(coveredShare).toBe(1);
      expect(miss!.parts.reduce((sum, part) => sum + part.share, 0)).toBeCloseTo(miss!.share, 9);
      const rest = miss!.parts.find(({ name }) => name === "rest")!;
      // Where the real bank was full, what its panels could have given was not metered: that stays in the rest.
      expect(Math.abs(rest.share)).toBeLessThan(3 * rest.spread + 0.01);
      expect(miss!.parts.every(({ lacking }) => lacking === null)).toBe(true);
    }
  });

  test("goes to the one thing that was otherwise", () => {
    // A bank that neither fills nor empties: where it does, less is taken or served, and that is sun and load too.
    const roomy: Change[] = [
      ...variantChanges("walnut-grove", "two-blocks"),
      { at: "bank.blockAh", to: 300 },
      { at: "bank.startShare", to: 0.8 },
    ];
    const plan = exampleEnsemble("walnut-grove", roomy).prepared.scenario;
    const only = (changes: readonly Change[]) => {
      const other = exampleEnsemble("walnut-grove", [...roomy, ...changes]);
      const run = tracePrepared(other.prepared);
      const { grid, controllersW } = other.prepared;
      const rows = Array.from({ length: grid.steps }, (_, i) =>
        [
          `${new Date(grid.startMs + i * grid.stepMs).toISOString().slice(0, 16)}Z`,
          (100 * run.chargeShare[i]!).toFixed(4),
          (run.record.solarW[i]! - run.record.spilledW[i]!).toFixed(3),
          (run.record.servedW[i]! - controllersW).toFixed(3),
        ].join(","),
      );
      const { miss } = against(logOf(["time,charge %,PV W,load W", ...rows].join("\n")), null, plan);
      return Object.fromEntries(miss!.parts.map(({ name, share }) => [name, share]));
    };
    const start = only([{ at: "bank.startShare", to: 0.7 }]);
    expect(start.start).toBeCloseTo(-0.1, 2);
    expect(Math.abs(start.load!) + Math.abs(start.sun!) + Math.abs(start.rest!)).toBeLessThan(0.005);
    const load = only([{ at: "gear.phantom.working", to: { drawW: 9 } }]);
    expect(load.load).toBeLessThan(-0.04);
    expect(Math.abs(load.start!) + Math.abs(load.sun!) + Math.abs(load.rest!)).toBeLessThan(0.005);
    const sun = only([{ at: "panels.roof.count", to: 1 }]);
    expect(sun.sun).toBeLessThan(-0.01);
    expect(Math.abs(sun.start!) + Math.abs(sun.load!) + Math.abs(sun.rest!)).toBeLessThan(0.005);
  });

  test("without what it takes, says which part nothing can be said of", () => {
    const log = logOf(syntheticLog(truth, 0, { ...FULL, columns: ["charge"] }).text);
    const { miss } = against(log);
    expect(miss!.parts.filter(({ lacking }) => lacking !== null).map(({ name }) => name)).toEqual([
      "load",
      "sun",
      "capacity",
    ]);
    expect(miss!.sentences.join("\n")).toContain("the log has no PV W");
    const silent = against(logOf(syntheticLog(truth, 0, { ...FULL, columns: ["pvW"] }).text));
    expect(silent.miss).toBeNull();
    expect(silent.findings.map(({ code }) => code)).toContain("no-charge");
  });

  test("a log of another week is refused with both times", () => {
    const log = logOf(syntheticLog(truth, 0, FULL).text, { stamp: "start", shiftMinutes: 20_000 });
    const found = planAgainstActual(scenario, log, surroundings);
    expect(!found.ok && found.problems[0]!.message).toMatch(/no step in common/);
    expect(fitCorrection(scenario, log, surroundings).ok).toBe(false);
  });
});

describe("the sky", () => {
  test("of each day is read off the panels: that of its word", () => {
    const days = ["clear", "cloudy", "fair", "overcast"] as const;
    const words: Change[] = [
      ...variantChanges("walnut-grove", "meadow"),
      { at: "weather", to: { kind: "words", days: [...days] } },
      { at: "bank.blockAh", to: 2000 },
      { at: "bank.startShare", to: 0.5 },
    ];
    const run = tracePrepared(exampleEnsemble("walnut-grove", words).prepared);
    const { grid } = run.prepared;
    const rows = Array.from(
      run.record.solarW,
      (watts, i) => `${new Date(grid.startMs + i * grid.stepMs).toISOString().slice(0, 16)}Z,50,${watts.toFixed(2)}`,
    );
    // The plan thinks every day clear; only the log knows better.
    const plan = exampleEnsemble("walnut-grove", [...words, { at: "weather", to: { kind: "typical" } }]).prepared
      .scenario;
    const laid = against(logOf(["time,charge %,PV W", ...rows].join("\n")), null, plan);
    const index = (word: string) => SKY_WORDS.find((known) => known.word === word)!.clearIndexShare;
    expect(laid.days.map(({ date }) => date)).toEqual(grid.dates);
    // Air warms the cells a little otherwise under typical weather.
    for (const [day, { clearIndexShare }] of laid.days.entries()) {
      expect(Math.abs(clearIndexShare! - index(days[day]!)), days[day]).toBeLessThan(0.01);
    }
  });
});

describe("a rule", () => {
  const rows = Array.from({ length: 200 }, (_, m) => Float64Array.of(Math.sin(m), Math.cos(1.7 * m), Math.sin(m)));
  const even = new Float64Array(200).fill(1);

  test("through a straight line finds it, also where two features say the same", () => {
    const targets = Float64Array.from(rows, (row) => 3 + 2 * row[0]! - row[1]!);
    const rule = linearRule(rows, targets, even, Float64Array.of(0.5, 0.25, 0.5));
    expect(rule.value).toBeCloseTo(3.75, 3);
    expect(Math.max(...rule.misses.map(Math.abs))).toBeLessThan(0.001);
  });

  test("without anything to go by keeps to the mean, and its misses are the targets' spread", () => {
    const targets = Float64Array.from(rows, (_, m) => (m % 2 ? 1 : -1));
    const rule = linearRule(rows, targets, even, Float64Array.of(0, 0, 0));
    expect(Math.abs(rule.value)).toBeLessThan(0.05);
    expect(weightedQuantile(rule.misses, even, 0.95)).toBeGreaterThan(0.9);
  });

  test("equations are solved, and a direction without any say gets nothing", () => {
    const matrix = [Float64Array.of(4, 2, 0), Float64Array.of(2, 3, 0), Float64Array.of(0, 0, 0)];
    const [x, y, z] = solved(matrix, Float64Array.of(10, 9, 5));
    expect([x, y, z]).toEqual([expect.closeTo(1.5, 12), expect.closeTo(2, 12), 0]);
  });
});

describe("a correction", () => {
  test("narrows what the log speaks of, and leaves alone what it does not", () => {
    const correction = fitted(logOf(syntheticLog(truth, 3, FULL).text));
    for (const name of ["idle", "sending", "capacity"] as const) {
      const { status, spread, priorSpread } = figure(correction, name);
      expect(status, name).toBe("found");
      expect(spread, name).toBeLessThan(0.5 * priorSpread);
    }
    const dumb = fitted(logOf(syntheticLog(truth, 3, { ...FULL, columns: ["bankV"] }).text));
    for (const { name, status, value, sentence } of dumb.figures) {
      expect(status).toBe("missing");
      expect(value).toBe(name === "start" ? scenario.bank.startShare : 1);
      expect(sentence).toMatch(/stays as planned: it takes .*, which the log does not have\.$/);
    }
  });

  test("follows far from the plan: half as much again drawn, a third more sent", () => {
    const far = exampleEnsemble(
      "walnut-grove",
      [
        { at: "operators", to: { betweenEventsShare: 0, betweenDaysShare: 0, byHourShare: 0 } },
        { at: "stations.hf-run.sendingShare", to: 0.2 },
        { at: "stations.hf-data.sendingShare", to: 0.2667 },
        { at: "stations.hf-data.modes.0.sendingShare", to: 0.3333 },
        { at: "stations.vhf.sendingShare", to: 0.04 },
      ],
      "far",
    );
    const correction = fitted(logOf(syntheticLog(far, 0, FULL).text));
    const sending = figure(correction, "sending");
    expect(sending.value).toBeGreaterThan(1.2);
    expect(sending.low).toBeLessThan(4 / 3);
    expect(sending.high).toBeGreaterThan(4 / 3);
  });

  test("tells what was sent from the habit of sending a third more", () => {
    const third = (share: number) => +((4 / 3) * share).toFixed(4);
    const eager = exampleEnsemble(
      "walnut-grove",
      [
        { at: "stations.hf-run.sendingShare", to: third(0.15) },
        { at: "stations.hf-data.sendingShare", to: third(0.2) },
        { at: "stations.hf-data.modes.0.sendingShare", to: third(0.25) },
        { at: "stations.vhf.sendingShare", to: third(0.03) },
      ],
      "eager",
    );
    let inside = 0;
    for (let member = 0; member < 8; member++) {
      const { low, high } = fitted(logOf(syntheticLog(eager, member, FULL).text), scenario, 150).sendingHabit!;
      if (low < 4 / 3 && high > 4 / 3) inside++;
    }
    expect(inside).toBeGreaterThanOrEqual(6);
  });

  test("is the same for the same seed", () => {
    const log = logOf(syntheticLog(truth, 5, FULL).text);
    expect(fitted(log, scenario, 100)).toEqual(fitted(log, scenario, 100));
    expect(() => fitCorrection(scenario, log, surroundings, { members: 3 })).toThrow("100…5000");
  });
});

describe("accepting a correction", () => {
  const log = logOf(syntheticLog(truth, 3, FULL).text);
  const correction = fitted(log);
  const accepted = acceptCorrection(scenario, correction, ["idle", "sending", "capacity"]);
  const document = exampleDocument("walnut-grove");

  test("gives a scenario that draws, sends and holds as the log has it", () => {
    const changed = applyChanges(document, accepted.changes);
    if (!changed.ok) throw new Error(JSON.stringify(changed.problems));
    const read = readScenario(changed.document);
    if (!read.ok) throw new Error(JSON.stringify(read.problems));
    const factor = (name: CorrectionName) => figure(correction, name).value;
    const calibrated = exampleEnsemble("walnut-grove", accepted.changes).prepared;
    const sum = (values: Float64Array) => values.reduce((total, value) => total + value, 0);
    const [before, after] = [grove.prepared.loads, calibrated.loads];
    expect(sum(after.quietW) / sum(before.quietW)).toBeCloseTo(factor("idle"), 3);
    const sent = (loads: typeof before) => sum(loads.wantedW) - sum(loads.quietW);
    // A receiver that draws more leaves sending a little less to add: 2 % of it for a tenth more.
    expect(sent(after) / sent(before) / factor("sending")).toBeGreaterThan(0.97);
    expect(sent(after) / sent(before) / factor("sending")).toBeLessThan(1.03);
    expect(calibrated.bank.fullAh / grove.prepared.bank.fullAh).toBeCloseTo(factor("capacity"), 3);
    expect(read.scenario.sureness).toMatchObject({ idleDraw: "measured", bankHealth: "measured", canopy: "guess" });
    expect(read.scenario.note).toContain("Calibrated from the meter's log of 2026-10-08 to 2026-10-11.");
  });

  test("stands among a scenario's variants", () => {
    const withVariant = {
      ...document,
      variants: [...document.variants, { id: accepted.id, name: accepted.name, changes: accepted.changes }],
    };
    expect(readScenario(withVariant).ok).toBe(true);
    expect(accepted.name).toContain("calibrated from");
  });

  test("takes only what the log found unless told, and never what it lacks", () => {
    const few = fitted(logOf(syntheticLog(truth, 3, { ...FULL, columns: ["pvW"] }).text));
    expect(() => acceptCorrection(scenario, few, ["capacity"])).toThrow("capacity cannot be taken");
    const places = acceptCorrection(scenario, few).changes.map(({ at }) => at.split(".")[0]);
    expect(places).not.toContain("bank");
    expect(places).not.toContain("gear");
  });

  test.each([0.9, 1.04, 1.4])("writes a yield of %f into the losses", (value) => {
    const figures = correction.figures.map((each) =>
      each.name === "yield" ? { ...each, value, status: "found" as const } : each,
    );
    const changes = acceptCorrection(scenario, { ...correction, figures }, ["yield"]).changes;
    const kept = (of: typeof grove) => of.prepared.groups[0]!.keptShare;
    const ratio = kept(exampleEnsemble("walnut-grove", changes)) / kept(grove);
    expect(ratio).toBeCloseTo(Math.min(value, 1 / kept(grove)), 3);
  });

  test("plans with more things than a variant has room for get whole lists", () => {
    const gear = Array.from({ length: 150 }, (_, k) => ({
      id: `thing-${k}`,
      name: "thing",
      working: { drawW: 1 },
      use: { when: "always" },
    }));
    const read = readScenario({ ...document, gear, variants: [] });
    if (!read.ok) throw new Error(JSON.stringify(read.problems));
    const many = acceptCorrection(read.scenario, correction, ["idle"]);
    expect(many.changes.length).toBeLessThan(10);
    const changed = applyChanges({ ...document, gear, variants: [] }, many.changes);
    const after = changed.ok ? readScenario(changed.document) : changed;
    expect(after.ok && after.scenario.gear[149]!.working.drawW).toBeCloseTo(figure(correction, "idle").value, 3);
  });
});

describe("the sun tells the log's clock", () => {
  const meadow = exampleEnsemble("walnut-grove", variantChanges("walnut-grove", "meadow"));
  const text = (member: number) => syntheticLog(meadow, member, { ...FULL, columns: ["pvW"] }).text;
  const local = (member: number, hours: number) =>
    text(member).replace(
      /^(\S+?)Z,/gm,
      (_, at) => `${new Date(Date.parse(`${at}Z`) + hours * 3_600_000).toISOString().slice(0, 16)},`,
    );
  const clock = (logText: string, zone: string) =>
    clockOfLog(meadow.prepared.scenario, logOf(logText, { stamp: "start", zone }));

  test.each([0, 1, 2, 3])("right where it is right (log %i)", (member) => {
    expect(clock(text(member), "UTC")).toBeNull();
    expect(clock(local(member, 2), "Europe/Vienna")).toBeNull();
  });

  test.each([0, 1, 2, 3])("UTC read as local time (log %i)", (member) => {
    const found = clock(local(member, 0), "Europe/Vienna")!;
    expect(found.message).toContain("about 2 h behind");
    expect(found.message).toContain("probably keeps UTC");
    expect(found.proposal).toEqual({ zone: "UTC" });
  });

  test("local time read as UTC, a clock left on winter time, and one set to nothing", () => {
    expect(clock(local(0, 2), "UTC")!.proposal).toEqual({ zone: "Europe/Vienna" });
    expect(clock(local(0, 1), "Europe/Vienna")!.proposal).toEqual({ zone: "+01:00" });
    const odd = clock(local(0, -5), "UTC")!;
    expect(odd.proposal!.shiftMinutes).toBeGreaterThan(270);
    expect(odd.proposal!.shiftMinutes).toBeLessThan(330);
  });

  test("nothing where the panels say nothing", () => {
    expect(clock(text(0).replace(/,[\d.]+$/gm, ",0"), "UTC")).toBeNull();
  });
});

describe("a log that cannot be this plan's", () => {
  const log = logOf(syntheticLog(truth, 5, FULL).text);
  const times = (cells: Float64Array | null, factor: number) => cells?.map((value) => value * factor) ?? null;

  test("its own is held against it", () => {
    expect(planAgainstActual(scenario, log, surroundings).ok).toBe(true);
  });

  test.each([
    [
      "sun in milliwatts",
      { ...log, pvW: times(log.pvW, 1000) },
      /panels give up to \d+ W, and the plan's have 400 W in all.*pvW=TITLE:mW/,
    ],
    [
      "volts of a 24 V bank",
      { ...log, bankV: times(log.bankV, 2) },
      /bank is at 2\d\.\d V, and the plan's is a 12 V bank/,
    ],
    ["volts in millivolts of another scale", { ...log, bankV: times(log.bankV, 0.1) }, /bank is at 1\.\d V/],
  ])("%s is refused with the likely reason", (_, odd, reason) => {
    const found = planAgainstActual(scenario, odd, surroundings);
    expect(found.ok).toBe(false);
    if (!found.ok) expect(found.problems[0]!.message).toMatch(reason);
  });
});
