import { expect, test } from "vitest";
import { makeMemberRoom } from "../../../engine/ensemble/makeMemberRoom.ts";
import { prepareEnsemble } from "../../../engine/ensemble/prepareEnsemble.ts";
import { learn } from "../../../engine/learn/learn.ts";
import { LearnCancelled } from "../../../engine/learn/learnHooks.ts";
import { learnReport } from "../../../engine/learn/learnReport.ts";
import { intervalOf } from "../../../engine/learn/lessons.ts";
import { firstParticles } from "../../../engine/learn/particles.ts";
import { prepareOnward } from "../../../engine/learn/prepareOnward.ts";
import { restingCharge } from "../../../engine/learn/restingCharge.ts";
import { runParticles } from "../../../engine/learn/runParticles.ts";
import { stepParticle } from "../../../engine/learn/stepParticle.ts";
import { oddsReport, runMembers } from "../../../engine/odds/odds.ts";
import { CHARGE_BINS, POWER_BINS } from "../../../engine/odds/oddsPart.ts";
import { bitScenarios } from "../../bitScenarios.ts";
import { learnEnsemble, placed } from "./learnScenario.ts";

const MEMBERS = 400;

test("without readings the odds are those of the ensemble, to the last bit", async () => {
  const ensemble = learnEnsemble();
  const learned = await learn(ensemble, [], MEMBERS);
  const part = runMembers(ensemble, 0, MEMBERS);
  expect(learned.after).toEqual(part);
  const report = learnReport(learned);
  expect(report.after).toEqual(oddsReport(ensemble, part));
  expect(report.sentences).toEqual(report.after.sentences);
  expect(report.lessons.every(({ sentence }) => sentence === null)).toBe(true);
});

test("particles at the first step are the ensemble's members, to the last bit: sky, people, figures, known days", async () => {
  const known = [{ date: "2026-07-11", sky: "overcast" as const }];
  const ensemble = learnEnsemble({ knownDays: known });
  expect(await runParticles(ensemble, firstParticles(ensemble, 60), 60)).toEqual(runMembers(ensemble, 0, 60));
});

test("what is past counts for nothing: no sun, no load, a full bank", async () => {
  const ensemble = learnEnsemble();
  const { particles } = await learn(
    ensemble,
    placed(ensemble, [{ at: "2026-07-11T13:10", chargeShare: 0.5, errorShare: 0.02 }]),
    100,
  );
  const part = await runParticles(ensemble, particles, 100);
  const { steps } = ensemble.prepared.grid;
  expect(particles.step).toBeGreaterThan(10);
  for (let i = 0; i < particles.step; i++) {
    expect(part.chargeCounts[i * CHARGE_BINS + CHARGE_BINS - 1]).toBe(100);
    expect([part.solarCounts[i * POWER_BINS], part.loadCounts[i * POWER_BINS]]).toEqual([100, 100]);
  }
  // Of the rest of the event no more than its share of the whole is wanted: loads here go on day and night.
  const mean = (values: Float64Array) => values.reduce((sum, value) => sum + value, 0) / values.length;
  const whole = mean(runMembers(ensemble, 0, 100).outcomes.demandWh);
  const left = mean(part.outcomes.demandWh) / whole;
  expect(left).toBeGreaterThan(0);
  expect(left).toBeLessThan(1 - (0.5 * particles.step) / steps);
});

test("a low reading lowers the odds, teaches that more is drawn, and starts the band where the meter stands", async () => {
  const ensemble = learnEnsemble();
  const before = intervalOf(runMembers(ensemble, 0, MEMBERS).outcomes.endShare);
  const learned = await learn(
    ensemble,
    placed(ensemble, [{ at: "2026-07-11T08:00", chargeShare: 0.4, errorShare: 0.02 }]),
    MEMBERS,
  );
  const report = learnReport(learned);
  expect(report.now.words).toBe("Sat 11 Jul 08:00");
  expect(report.holdsAfter.share).toBeLessThan(report.holdsBefore.share);
  expect(Math.abs(report.chargeNow.p50 - 0.4)).toBeLessThan(0.02);
  expect(report.endAfter.p90 - report.endAfter.p10).toBeLessThan(0.7 * (before.p90 - before.p10));
  const load = report.lessons.find(({ name }) => name === "load")!;
  expect(load.after.p50).toBeGreaterThan(load.before.p50);
  expect(load.sentence).toMatch(/above plan/);
  expect(report.charge.p50).toHaveLength(ensemble.prepared.grid.steps - report.now.step + 1);
  expect(report.fewestEffective).toBeGreaterThan(20);
  expect(report.wrong).toEqual([]);
});

test("a reading that the plan expects leaves the plan's figures alone", async () => {
  const ensemble = learnEnsemble();
  const room = runMembers(ensemble, 0, MEMBERS);
  const step = 44;
  let sum = 0;
  for (let bin = 0; bin < CHARGE_BINS; bin++)
    sum += ((bin + 0.5) / CHARGE_BINS) * room.chargeCounts[step * CHARGE_BINS + bin]!;
  const usual = Math.round((1000 * sum) / MEMBERS) / 1000;
  const learned = await learn(ensemble, placed(ensemble, [{ at: "2026-07-11T08:00", chargeShare: usual }]), MEMBERS);
  expect(learnReport(learned).lessons.flatMap(({ sentence }) => sentence ?? [])).toEqual([]);
});

test("a reading that nobody explains is called so, with its direction, and the bands grow wider and not narrower", async () => {
  const ensemble = learnEnsemble();
  const low = learnReport(
    await learn(ensemble, placed(ensemble, [{ at: "2026-07-10T16:00", chargeShare: 0.3 }]), MEMBERS),
  );
  expect(low.wrong).toHaveLength(1);
  expect(low.wrong[0]).toMatchObject({ direction: "lower", isContradiction: false, kind: "charge" });
  expect(low.sentences[0]).toContain("more is drawn, or less comes in");
  expect(low.widened).toBeGreaterThan(1);
  expect(Math.abs(low.chargeNow.p50 - 0.3)).toBeLessThan(0.06);
  const idle = low.lessons.find(({ name }) => name === "idleDraw")!;
  expect(idle.after.p90 - idle.after.p10).toBeGreaterThan(idle.before.p90 - idle.before.p10);
  const high = learnReport(
    await learn(ensemble, placed(ensemble, [{ at: "2026-07-11T08:00", chargeShare: 1 }]), MEMBERS),
  );
  expect(high.wrong[0]).toMatchObject({ direction: "higher" });
  expect(high.sentences[0]).toContain("less is drawn, or more comes in");
});

test("two readings that contradict each other are called so, and the forecast goes on from the later one", async () => {
  const ensemble = learnEnsemble();
  const report = learnReport(
    await learn(
      ensemble,
      placed(ensemble, [
        { at: "2026-07-11T07:00", chargeShare: 0.62, errorShare: 0.01 },
        { at: "2026-07-11T08:30", chargeShare: 0.46, errorShare: 0.01 },
      ]),
      MEMBERS,
    ),
  );
  expect(report.wrong[0]).toMatchObject({ isContradiction: true, direction: "lower", number: 1 });
  expect(report.sentences[0]).toContain("contradicts those before it");
  expect(Math.abs(report.chargeNow.p50 - 0.46)).toBeLessThan(0.03);
});

test("ampere-hours out and resting volts tell the same as the charge that they stand for, volts less surely", async () => {
  const ensemble = learnEnsemble();
  const { bank } = ensemble.prepared;
  const after = async (reading: object) =>
    learnReport(await learn(ensemble, placed(ensemble, [{ at: "2026-07-11T06:00", ...reading }]), MEMBERS));
  const ah = await after({ outAh: 0.45 * bank.fullAh });
  expect(Math.abs(ah.chargeNow.p50 - 0.55)).toBeLessThan(0.03);
  const said = restingCharge(ensemble.prepared, 13.2);
  expect(said.lowShare).toBeLessThan(said.middleShare);
  expect(said.highShare - said.lowShare).toBeGreaterThan(0.15); // the flat middle of the lithium curve
  expect(said.sentence).toContain("poor measure");
  const volts = await after({ restV: 13.2 });
  const width = ({ p10, p90 }: { p10: number; p90: number }) => p90 - p10;
  expect(width(volts.chargeNow)).toBeGreaterThan(1.2 * width(ah.chargeNow));
});

test("a cloudy yesterday and what panels and load show move what is believed of them", async () => {
  const ensemble = learnEnsemble();
  const lesson = async (reading: object, name: string) => {
    const readings = placed(ensemble, [{ at: "2026-07-11T12:00", ...reading }]);
    return learnReport(await learn(ensemble, readings, MEMBERS)).lessons.find((each) => each.name === name)!;
  };
  const heavy = await lesson({ loadA: 4.5 }, "idleDraw");
  expect(heavy.after.p50).toBeGreaterThan(heavy.before.p50 + 0.2);
  const chargeAfter = async (word: "clear" | "overcast") => {
    const readings = placed(ensemble, [{ at: "2026-07-11T06:00", sky: { date: "2026-07-10", word } }]);
    return learnReport(await learn(ensemble, readings, MEMBERS)).chargeNow.p50;
  };
  expect(await chargeAfter("overcast")).toBeLessThan((await chargeAfter("clear")) - 0.02);
  const noon = async (panelsW: number) => {
    const readings = placed(ensemble, [{ at: "2026-07-11T13:00", panelsW }]);
    return learnReport(await learn(ensemble, readings, MEMBERS)).chargeNow.p50;
  };
  expect(await noon(5)).toBeLessThan(await noon(75));
});

test("a thousand readings are taken in without collapse, at the ends of the event too", async () => {
  const ensemble = learnEnsemble();
  const { grid } = ensemble.prepared;
  const local = (minutes: number) => new Date(Date.UTC(2026, 6, 10, 10, minutes)).toISOString().slice(0, 16);
  const readings = Array.from({ length: 1000 }, (_, k) => {
    const minutes = Math.round((k * 2880) / 999);
    return { at: local(minutes), chargeShare: 0.9 - (0.6 * minutes) / 2880, errorShare: 0.05 };
  });
  const learned = await learn(ensemble, placed(ensemble, readings), 200);
  const report = learnReport(learned);
  expect(report.now.step).toBe(grid.steps);
  expect(Math.abs(report.endAfter.p50 - 0.3)).toBeLessThan(0.05);
  expect(report.founders).toBeGreaterThan(1);
  expect(report.endAfter.p90 - report.endAfter.p10).toBeGreaterThan(0.01);
}, 60_000);

test("the same seed gives the same answer, another number of members is refused, and the work can be stopped", async () => {
  const ensemble = learnEnsemble();
  const readings = placed(ensemble, [{ at: "2026-07-11T08:00", chargeShare: 0.55 }]);
  const [once, again] = [await learn(ensemble, readings, 200), await learn(learnEnsemble(), readings, 200)];
  expect(again.after).toEqual(once.after);
  await expect(learn(ensemble, readings, 10)).rejects.toThrow("from 100 to 20000, got 10");
  await expect(learn(ensemble, readings, 200, { isCancelled: () => true })).rejects.toThrow(LearnCancelled);
});

test("hours left are what a pocket calculator says of a steady load", async () => {
  const ensemble = learnEnsemble({
    stations: [],
    panels: [],
    gear: [{ id: "steady", name: "Steady load", working: { drawW: 26 }, use: { when: "always" } }],
    bank: { chemistry: "lfp", blockAh: 100, startShare: 0.9, reserveShare: 0.2, temperature: 25 },
    sureness: { idleDraw: "measured", bankHealth: "measured" },
  });
  // 26 W at some 13.2 V (four cells at 3.3 V, middle of the lithium curve) are 1.97 A: 10 h take 20 Ah of 90.
  const report = learnReport(
    await learn(ensemble, placed(ensemble, [{ at: "2026-07-10T20:00", chargeShare: 0.7 }]), 200),
  );
  // From 70 to 20 of 100 Ah: 50 Ah / 1.97 A = 25.4 h; volts fall by 1 % on the way.
  expect(Math.abs(report.hoursLeft.p50! / 25.4 - 1)).toBeLessThan(0.04);
  expect(report.hoursLeft.p10!).toBeLessThan(report.hoursLeft.p50!);
  expect(report.holdsAfter.share).toBe(0);
});

test("ampere-hours that nobody explains start the forecast where they stand", async () => {
  const ensemble = learnEnsemble();
  const { bank } = ensemble.prepared;
  const readings = placed(ensemble, [{ at: "2026-07-10T12:00", outAh: 0.8 * bank.fullAh }]);
  const report = learnReport(await learn(ensemble, readings, MEMBERS));
  expect(report.wrong[0]).toMatchObject({ kind: "outAh", direction: "higher" });
  expect(Math.abs(report.chargeNow.p50 - 0.2)).toBeLessThan(0.06);
});

test("skies drawn from a weather file go on from the day that is behind", async () => {
  const found = bitScenarios(undefined).find(({ scenario }) => scenario.weather.kind === "file")!;
  const ready = prepareEnsemble(found.scenario, found.surroundings, "file");
  if (!ready.ok) throw new Error(ready.problems[0]!.message);
  const { ensemble } = ready;
  const { grid } = ensemble.prepared;
  expect((await learn(ensemble, [], 100)).after).toEqual(runMembers(ensemble, 0, 100));
  const place = Math.round(grid.steps / 2);
  const readings = [{ reading: { at: "2026-01-01T00:00", chargeShare: 0.6, errorShare: 0.3 }, number: 0, place }];
  const learned = await learn(ensemble, readings, 100);
  expect(learned.particles.settled.days).toBeGreaterThan(0);
  expect(learned.after.outcomes.endShare.every((share) => share >= 0 && share <= 1)).toBe(true);
  const { particles } = learned;
  const room = makeMemberRoom(ensemble);
  const onward = prepareOnward(ensemble, particles);
  const days = ensemble.skies.whole.days;
  const ahead = new Set<number>();
  for (let p = 0; p < 20; p++) {
    stepParticle(onward, p, room);
    const chosen = Array.from(ensemble.skies.blocks!.chosen);
    const behind = Array.from(particles.fileDay.slice(p * days, p * days + particles.settled.days));
    expect(chosen.slice(0, particles.settled.days)).toEqual(behind);
    ahead.add(chosen[particles.settled.days]!);
  }
  expect(ahead.size).toBeGreaterThan(3);
});
