import { expect, test } from "vitest";
import { record } from "../record.ts";
import { plainInput, traceInput } from "../run/plainScenario.ts";

// Ranges of common practice (trade handbooks, no single source): taper to full, and energy kept over a round trip.
const practice = [
  { chemistry: "lfp", rate: 0.3, fullCurrentUpTo: [0.9, 0.98], taperH: [0.25, 0.75], roundTrip: [0.92, 0.98] },
  { chemistry: "agm", rate: 0.2, fullCurrentUpTo: [0.78, 0.87], taperH: [3, 6], roundTrip: [0.75, 0.85] },
  { chemistry: "flooded", rate: 0.13, fullCurrentUpTo: [0.75, 0.85], taperH: [4, 8], roundTrip: [0.7, 0.8] },
] as const;

const wholeDay = [{ from: "00:00", to: "24:00" }];

test.each(practice)("$chemistry takes its current, then tapers", ({ chemistry, rate, fullCurrentUpTo, taperH }) => {
  const traced = traceInput(
    plainInput({
      time: { start: "2026-06-12T00:00", end: "2026-06-14T00:00", stepMinutes: 5 },
      bank: { chemistry, blockAh: 100, startShare: 0.2, reserveShare: 0.2, temperature: 25, maxChargeA: 100 * rate },
      sources: [{ kind: "mains", id: "mains", name: "charger", chargerA: 100 * rate, available: wholeDay }],
    }),
  );
  const { bankA } = traced.record;
  // In the first steps the voltage is still rising, and a charger limited in current gives a little less power.
  const fading = bankA.findIndex((amps, i) => i > 12 && amps < 0.98 * 100 * rate);
  const full = traced.chargeShare.findIndex((share) => share >= 0.99);
  const hours = (full - fading) / 12;
  record({
    what: `${chemistry}: hours from the first fading of the current to 99 %`,
    source: "common practice, no source: 15–45 min (LFP), 3–6 h (AGM), 4–8 h (flooded)",
    tolerance: taperH[1],
    why: "upper end of the range; the lower end is checked as well",
    worst: hours,
    unit: "h",
    n: 1,
  });
  expect(traced.chargeShare[fading]!).toBeGreaterThan(fullCurrentUpTo[0]);
  expect(traced.chargeShare[fading]!).toBeLessThan(fullCurrentUpTo[1]);
  expect(hours).toBeGreaterThan(taperH[0]);
  expect(hours).toBeLessThan(taperH[1]);
});

test.each(practice)(
  "$chemistry gives back the usual part of the energy over a round trip",
  ({ chemistry, rate, roundTrip }) => {
    // Charged at its usual rate from 0.3 to 0.8, drawn at the 20-hour rate back to where it was.
    const traced = traceInput(
      plainInput({
        time: { start: "2026-06-12T00:00", end: "2026-06-14T00:00", stepMinutes: 5 },
        bank: {
          chemistry,
          blockAh: 100,
          startShare: 0.3,
          reserveShare: 0,
          temperature: 25,
          maxChargeA: 100 * rate,
          disconnectV: 0,
          reconnectV: 0,
          ...(chemistry === "lfp" ? {} : { peukertExponent: 1 }),
        },
        sources: [
          {
            kind: "mains",
            id: "mains",
            name: "charger",
            chargerA: 100 * rate,
            available: [{ from: "00:00", to: "03:00", days: ["fri"] }],
          },
        ],
        gear: [
          {
            id: "load",
            name: "load",
            working: { drawW: 60 },
            use: {
              when: "byTheClock",
              windows: [
                { from: "06:00", to: "24:00", days: ["fri"] },
                { from: "00:00", to: "24:00", days: ["sat"] },
              ],
            },
          },
        ],
      }),
    );
    const { bankW, storedAh } = traced.record;
    const back = storedAh.findIndex((ah, i) => i > 72 && ah <= storedAh[0]!);
    let inWh = 0;
    let outWh = 0;
    for (let i = 0; i < back; i++) {
      if (bankW[i]! > 0) inWh += bankW[i]! / 12;
      else outWh -= bankW[i]! / 12;
    }
    const kept = outWh / inWh;
    record({
      what: `${chemistry}: energy kept over a round trip`,
      source: "makers' figures as quoted in the trade: LFP 0.92–0.98, AGM 0.75–0.85, flooded 0.70–0.80",
      tolerance: (roundTrip[1] - roundTrip[0]) / 2,
      why: "half the published range, about its middle",
      worst: Math.abs(kept - (roundTrip[0] + roundTrip[1]) / 2),
      unit: "of the energy",
      n: 1,
    });
    expect(kept).toBeGreaterThan(roundTrip[0]);
    expect(kept).toBeLessThan(roundTrip[1]);
  },
);

test("a plain 13.6 V converter never finishes an LFP bank", () => {
  // Common practice, no source: 13.6 V leaves LFP short of full.
  const endAt = (chargeV: number) =>
    traceInput(
      plainInput({
        bank: { chemistry: "lfp", blockAh: 100, startShare: 0.5, reserveShare: 0.2, temperature: 25 },
        sources: [{ kind: "mains", id: "mains", name: "converter", chargerA: 20, chargeV, available: wholeDay }],
      }),
    ).verdict.endShare;
  expect(endAt(13.6)).toBeLessThan(0.997);
  expect(endAt(14.4)).toBeGreaterThan(0.999);
});
