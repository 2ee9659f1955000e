import { readScenario } from "../../../engine/scenario/readScenario.ts";
import type { Scenario, ScenarioInput } from "../../../engine/scenario/scenario.ts";

/** A summer day at hourly steps: a panel that is carried, behind a wall and a tree, and a roof. */
export const SITE = {
  format: "duskline-scenario",
  version: 1,
  name: "A wall and a tree",
  place: { name: "Nowhere", latitudeDeg: 47, longitudeDeg: 15, elevationM: 300, zone: "Europe/Vienna" },
  time: { start: "2026-06-20T00:00", end: "2026-06-21T12:00", stepMinutes: 60 },
  weather: { kind: "clear", air: { maxC: 20, minC: 12 } },
  panels: [
    {
      id: "carried",
      name: "Carried panel",
      count: 1,
      module: { ratedW: 100 },
      mount: { kind: "fixed", tiltDeg: 30, azimuthDeg: 180 },
      at: { eastM: 0, northM: 6, heightM: 0.5 },
      controller: { cable: { awg: "12", oneWayM: 7 } },
    },
    {
      id: "roof",
      name: "Roof",
      count: 2,
      module: { ratedW: 100 },
      mount: { kind: "flat", headingDeg: 30 },
      at: { eastM: 9, northM: -1, heightM: 2.5 },
    },
  ],
  obstacles: [
    { kind: "box", id: "wall", eastM: 0, northM: 3, heightM: 6, lengthM: 14, widthM: 1, headingDeg: 90 },
    { kind: "tree", id: "oak", eastM: -6, northM: -2, heightM: 10, crownBaseM: 2, crownRadiusM: 4 },
  ],
  bank: { chemistry: "lfp", blockAh: 100, startShare: 0.5, reserveShare: 0.2 },
} as unknown as ScenarioInput;

export function read(document: unknown): Scenario {
  const found = readScenario(document);
  if (!found.ok) throw new Error(found.problems[0]!.message);
  return found.scenario;
}
