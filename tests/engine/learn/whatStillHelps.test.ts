import { expect, test } from "vitest";
import { changesToTry } from "../../../engine/learn/changesToTry.ts";
import { learn } from "../../../engine/learn/learn.ts";
import { runParticles } from "../../../engine/learn/runParticles.ts";
import { whatStillHelps } from "../../../engine/learn/whatStillHelps.ts";
import { learnEnsemble, placed } from "./learnScenario.ts";

const GENERATOR = {
  kind: "generator" as const,
  id: "genny",
  name: "Generator",
  continuousW: 900,
  chargerA: 30,
  allowed: [{ from: "08:00", to: "22:00" }],
  startShare: 0.05,
  stopShare: 0.5,
  burnIdleLPerH: 0.25,
  burnFullLPerH: 0.7,
  fuelL: 5,
};

test("what is tried fits the scenario: nothing for gear, panels and sources that are not there", () => {
  const full = changesToTry(learnEnsemble({ sources: [GENERATOR] }).prepared.scenario).map(({ id }) => id);
  expect(full).toEqual([
    "hf-night-off",
    "half-power",
    "half-sending",
    "code-only",
    "receive-only",
    "field-turned",
    "genny-before-quiet",
    "genny-early",
    "without-lamps",
  ]);
  const bare = learnEnsemble({ stations: [], panels: [], gear: [] }).prepared.scenario;
  expect(changesToTry(bare)).toEqual([]);
});

test("a night is taken out of stretches of the clock, past midnight and by weekday too", () => {
  const staffed = [{ from: "18:00", to: "09:00", days: ["fri" as const] }];
  const stations = learnEnsemble().prepared.scenario.stations.map((station) => ({ ...station, staffed }));
  const scenario = { ...learnEnsemble().prepared.scenario, stations };
  const night = changesToTry(scenario).find(({ id }) => id === "hf-night-off")!;
  expect(night.changes[0]!.to).toEqual([
    { from: "18:00", to: "20:00", days: ["fri"] },
    { from: "07:00", to: "09:00", days: ["sat"] },
  ]);
});

test("changes are paired, ranked by their gain, and say what they take", async () => {
  const ensemble = learnEnsemble({ sources: [GENERATOR] });
  const learned = await learn(ensemble, placed(ensemble, [{ at: "2026-07-11T08:00", chargeShare: 0.5 }]), 300);
  const helps = await whatStillHelps(learned);
  expect(helps.length).toBeGreaterThan(2);
  const gains = helps.map(({ gain }) => Math.round(100 * gain.mean));
  expect(gains).toEqual([...gains].sort((a, b) => b - a));
  expect(helps[0]!.id).toMatch(/genny|receive/);
  for (const { holds, gain, takes, sentence } of helps) {
    expect(gain.mean).toBeGreaterThanOrEqual(0);
    expect(gain.high - gain.low).toBeLessThan(gain.unpairedHigh - gain.unpairedLow + 0.02);
    expect(holds.share).toBeGreaterThan(0);
    expect(takes).not.toBe("");
    expect(sentence).toMatch(/longer above the reserve/);
  }
  expect(helps.find(({ id }) => id === "genny-before-quiet")!.caution).toContain("Exhaust kills");
  // Half of the sending cannot gain more than all of it.
  const of = (id: string) => helps.find((each) => each.id === id);
  expect(of("half-sending")?.hoursGained ?? 0).toBeLessThan(of("receive-only")!.hoursGained);
});

test("a change that changes nothing meets the same skies and people, to the last bit, and is not offered", async () => {
  const ensemble = learnEnsemble();
  const learned = await learn(ensemble, placed(ensemble, [{ at: "2026-07-11T13:10", chargeShare: 0.5 }]), 200);
  const idle = {
    id: "idle",
    name: "nothing",
    takes: "nothing",
    caution: null,
    changes: [{ at: "name", to: "another name" }],
  };
  expect(await whatStillHelps(learned, {}, [idle])).toEqual([]);
  expect(await runParticles(learnEnsemble(), learned.particles, 200)).toEqual(learned.after);
});

test("nothing is listed that gains nothing: not where it holds anyway, and never as 100 of 100, not 100", async () => {
  // A full bank ten times as large as the others': every sky holds, and every change still lifts the lowest charge.
  const ensemble = learnEnsemble({ bank: { chemistry: "lfp", blockAh: 1000, startShare: 1, reserveShare: 0.2 } });
  const learned = await learn(ensemble, placed(ensemble, [{ at: "2026-07-11T08:00", chargeShare: 0.9 }]), 100);
  expect(learned.after.outcomes.belowFromStep.every((step) => step < 0)).toBe(true);
  expect(await whatStillHelps(learned)).toEqual([]);
});

test("where the odds stay as they are, the sentence says so and what is gained instead", async () => {
  const ensemble = learnEnsemble();
  const learned = await learn(ensemble, placed(ensemble, [{ at: "2026-07-11T08:00", chargeShare: 0.22 }]), 100);
  for (const { sentence, gain } of await whatStillHelps(learned)) {
    const [, now, before] = /in (\d+) of 100 skies(?:, not (\d+))?/.exec(sentence)!;
    if (before === undefined) expect(sentence).toMatch(/ either way \(/);
    else expect(now, sentence).not.toBe(before);
    expect(gain.mean).toBeGreaterThanOrEqual(0);
  }
});
