import type { ScenarioInput } from "../../engine/index.ts";

type Gear = NonNullable<ScenarioInput["gear"]>[number];

/** A common load that one ticks, with what it usually takes. */
export interface CommonGear {
  readonly id: string;
  readonly name: string;
  /** What it takes and when, in a few words. */
  readonly says: string;
  /** How many come along unless somebody says otherwise; 0 for none. */
  readonly usual: number;
  readonly working: Gear["working"];
  readonly use: Gear["use"];
}

const EVENING = { when: "byTheClock", windows: [{ from: "18:00", to: "23:00" }] } as const;

/**
 * Gear that portable stations bring, generic, with draws from the middle of what the trade reports: single-board computers
 * and USB modems from published measurements; the standing draw of a trailer (1.2 A) and a breathing machine (0.9 A) from a
 * motorhome's energy audit; the rest common practice, no source. Measure your own.
 */
export const COMMON_GEAR: readonly CommonGear[] = [
  {
    id: "laptop",
    name: "Logging laptop",
    says: "15 W while somebody operates",
    usual: 1,
    working: { drawW: 15 },
    use: { when: "whenStaffed" },
  },
  {
    id: "router",
    name: "Router with modem",
    says: "8 W always",
    usual: 1,
    working: { drawW: 8 },
    use: { when: "always" },
  },
  {
    id: "lamps",
    name: "Lamps",
    says: "4 W each, evenings",
    usual: 2,
    working: { drawW: 4 },
    use: { ...EVENING, windows: [...EVENING.windows] },
  },
  {
    id: "phones",
    name: "Phones on charge",
    says: "6 W each, two hours",
    usual: 2,
    working: { drawW: 6 },
    use: { when: "byTheClock", windows: [{ from: "20:00", to: "22:00" }] },
  },
  {
    id: "fridge",
    name: "Compressor fridge",
    says: "4 A, a third of the time",
    usual: 0,
    working: { drawA: 4, atV: 12.8 },
    use: { when: "always", share: 0.35 },
  },
  {
    id: "fan",
    name: "Fan",
    says: "0.3 A, afternoons",
    usual: 0,
    working: { drawA: 0.3, atV: 12.8 },
    use: { when: "byTheClock", windows: [{ from: "12:00", to: "17:00" }] },
  },
  {
    id: "marker",
    name: "Lights on guys and pegs",
    says: "0.5 W each after dark",
    usual: 0,
    working: { drawW: 0.5 },
    use: { when: "afterDark" },
  },
  {
    id: "computer",
    name: "Single-board computer",
    says: "4 W always",
    usual: 0,
    working: { drawW: 4 },
    use: { when: "always" },
  },
  {
    id: "satellite",
    name: "Satellite internet",
    says: "60 W while somebody operates",
    usual: 0,
    working: { drawW: 60 },
    use: { when: "whenStaffed" },
  },
  {
    id: "standing",
    name: "Trailer's standing draw",
    says: "1.2 A always",
    usual: 0,
    working: { drawA: 1.2, atV: 12.8 },
    use: { when: "always" },
  },
  {
    id: "breathing",
    name: "Breathing machine",
    says: "0.9 A at night",
    usual: 0,
    working: { drawA: 0.9, atV: 12.8 },
    use: { when: "byTheClock", windows: [{ from: "22:30", to: "06:30" }] },
  },
];
