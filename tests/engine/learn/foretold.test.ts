import { expect, test } from "vitest";
import { makeMemberRoom } from "../../../engine/ensemble/makeMemberRoom.ts";
import { stepMember } from "../../../engine/ensemble/stepMember.ts";
import { foretold } from "../../../engine/learn/foretold.ts";
import type { Observation, ObservationKind } from "../../../engine/learn/observations.ts";
import { observationsOf } from "../../../engine/learn/observations.ts";
import { FIGURE_CAPACITY_SHARE } from "../../../engine/run/memberFigures.ts";
import { ROW_SLOTS, ROW_SOLAR_W, ROW_SPILLED_W, ROW_STORED_AH } from "../../../engine/run/runRows.ts";
import { learnEnsemble, placed } from "./learnScenario.ts";

const at = (kind: ObservationKind, place: number): Observation => ({
  kind,
  number: 0,
  place,
  value: 0,
  sigma: 1,
  weight: 1,
  day: 0,
});

test("meters show what the run had: charge between steps, ampere-hours in the member's own capacity", () => {
  const ensemble = learnEnsemble();
  const room = makeMemberRoom(ensemble);
  stepMember(ensemble, 3, room);
  const { rows } = room.run;
  const { bank } = ensemble.prepared;
  const stored = (step: number) => rows[step * ROW_SLOTS + ROW_STORED_AH]!;
  expect(foretold(at("charge", 20.5), ensemble, room, 0)).toBeCloseTo((stored(20) + stored(21)) / 2 / bank.fullAh, 12);
  const capacity = room.inputs.figures[FIGURE_CAPACITY_SHARE]!;
  expect(Math.abs(capacity - 1)).toBeGreaterThan(0.005);
  expect(foretold(at("outAh", 30), ensemble, room, 0)).toBeCloseTo(capacity * (bank.fullAh - stored(30)), 9);
});

test("a panel meter shows what flows, not what could: a full bank turns the panels down", () => {
  const input = learnEnsemble({
    stations: [],
    gear: [],
    bank: { chemistry: "lfp", blockAh: 130, startShare: 1, reserveShare: 0.2 },
  });
  const room = makeMemberRoom(input);
  stepMember(input, 0, room);
  const { rows } = room.run;
  const noon = 4;
  expect(rows[noon * ROW_SLOTS + ROW_SOLAR_W]!).toBeGreaterThan(10);
  expect(rows[noon * ROW_SLOTS + ROW_SPILLED_W]!).toBeGreaterThan(9);
  expect(foretold(at("panelsW", noon + 0.5), input, room, 0)).toBeLessThan(3);
});

test("the sky of a day without light so far says nothing; of one that is over, the whole day's", () => {
  const ensemble = learnEnsemble();
  const room = makeMemberRoom(ensemble);
  stepMember(ensemble, 0, room);
  expect(foretold({ ...at("sky", 30), day: 1 }, ensemble, room, 0)).toBeNull(); // 01:00
  expect(foretold({ ...at("sky", 40), day: 0 }, ensemble, room, 0)).toBe(ensemble.skies.indexOfDay[0]);
  expect(foretold({ ...at("sky", 6), day: 0 }, ensemble, room, 0)).toBeGreaterThan(0);
});

test("readings within an hour share one say, later ones have one of their own", () => {
  const ensemble = learnEnsemble();
  const readings = ["10:00", "10:20", "11:00", "11:30"].map((clock) => ({
    at: `2026-07-11T${clock}`,
    chargeShare: 0.5,
  }));
  const weights = observationsOf(placed(ensemble, readings), ensemble.prepared).map(({ weight }) => weight);
  expect(weights).toEqual([1 / 3, 1 / 3, 1 / 3, 1]);
});
