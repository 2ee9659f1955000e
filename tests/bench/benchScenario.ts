import type { ScenarioInput } from "../../engine/scenario/scenario.ts";

const tree = (id: string, eastM: number, northM: number) => ({
  kind: "tree" as const,
  id,
  eastM,
  northM,
  heightM: 11,
  crownBaseM: 3,
  crownRadiusM: 4,
});

const group = (id: string, eastM: number, northM: number, tiltDeg: number) => ({
  id,
  name: id,
  count: 2,
  module: { ratedW: 100 },
  mount: { kind: "fixed" as const, tiltDeg, azimuthDeg: 180 },
  at: { eastM, northM, heightM: 1 },
  controller: { maxChargeA: 20 },
});

/** Four days at 10-minute steps with four panel groups among six trees and three stations: what the speed targets are set for. */
export const benchScenario: ScenarioInput = {
  format: "duskline-scenario",
  version: 1,
  name: "Bench",
  place: { name: "Nowhere (invented)", latitudeDeg: 47, longitudeDeg: 10, zone: "Europe/Vienna" },
  time: { start: "2026-06-11T00:00", end: "2026-06-15T00:00", stepMinutes: 10 },
  weather: { kind: "words", days: ["clear", "fair", "mixed", "cloudy", "overcast"], air: { maxC: 24, minC: 12 } },
  gear: [{ id: "router", name: "router", working: { drawW: 8 }, use: { when: "always" } }],
  stations: ["a", "b", "c"].map((id) => ({
    id,
    name: id,
    radio: { ratedW: 100, receive: { drawA: 1.2, atV: 13.8 }, fullPower: { drawA: 20, atV: 13.8 } },
    staffed: [{ from: "08:00", to: "23:00" }],
    modes: [{ mode: "ssb" as const, share: 1 }],
    transmitW: 60,
    sendingShare: 0.2,
  })),
  panels: [group("p1", 0, 0, 0), group("p2", 3, 0, 30), group("p3", -6, -20, 45), group("p4", 8, 2, 15)],
  obstacles: [
    tree("t1", 2, -7),
    tree("t2", 9, -4),
    tree("t3", -8, -4),
    tree("t4", 1, 8),
    tree("t5", -3, -14),
    tree("t6", 14, -9),
  ],
  bank: { chemistry: "lfp", blockAh: 200, startShare: 0.9, reserveShare: 0.2 },
};
