import * as z from "zod";

// The shapes that docs/command-line.md promises, written down a second time and on purpose: a field that is renamed,
// dropped or added in the program is noticed here. Infinity and NaN do not survive JSON: they arrive as null and are refused.

const share = z
  .number()
  .min(-1e-9)
  .max(1 + 1e-9);
const text = z.string().min(1);
const list = (length?: number) => (length === undefined ? z.array(z.number()) : z.array(z.number()).length(length));

const moment = z.strictObject({
  date: z.string().regex(/^\d{4}-\d\d-\d\d$/),
  clock: z.string().regex(/^\d\d:\d\d$/),
  words: z.string().regex(/^[A-Z][a-z]{2} \d{1,2} [A-Z][a-z]{2} \d\d:\d\d$/),
});

export const Problem = z.strictObject({
  code: z.string().regex(/^[a-z-]+$/),
  path: z.array(z.union([z.string(), z.number()])),
  message: text,
});

export const Check = z.strictObject({
  format: z.literal("duskline-check"),
  version: z.literal(1),
  ok: z.boolean(),
  problems: z.array(Problem),
});

export const Explanation = z.strictObject({
  format: z.literal("duskline-explanation"),
  version: z.literal(1),
  parts: z
    .array(
      z.strictObject({
        title: text,
        numbers: z.array(z.strictObject({ name: text, value: z.number(), unit: z.string(), how: z.string() })).min(1),
      }),
    )
    .min(4),
});

const ledger = {
  hours: z.number().positive(),
  loads: z.array(
    z.strictObject({
      id: text,
      name: text,
      alwaysWh: z.number(),
      usedWh: z.number(),
      totalWh: z.number(),
      share,
    }),
  ),
  alwaysWh: z.number(),
  usedWh: z.number(),
  wantedWh: z.number(),
  unservedWh: z.number().min(0),
  harvest: z.array(
    z.strictObject({
      id: text,
      name: text,
      unshadedWh: z.number(),
      shadeLossWh: z.number(),
      lossesWh: z.number(),
      cableLossWh: z.number(),
      controllerLossWh: z.number(),
      limitedWh: z.number(),
      offeredWh: z.number(),
    }),
  ),
  solarWh: z.number(),
  spilledWh: z.number(),
  sources: z.array(z.strictObject({ id: text, name: text, wh: z.number(), fuelL: z.number() })),
  bankInWh: z.number(),
  bankOutWh: z.number(),
  bankLossWh: z.number(),
  storedStartWh: z.number(),
  storedEndWh: z.number(),
};

export const Ledger = z.strictObject({ format: z.literal("duskline-ledger"), version: z.literal(1), ...ledger });

const day = z.strictObject({
  date: z.string().regex(/^\d{4}-\d\d-\d\d$/),
  sunriseMs: z.number().nullable(),
  sunsetMs: z.number().nullable(),
  hours: z.number().positive().max(25),
  solarWh: z.number(),
  groupWh: list(),
  spilledWh: z.number(),
  shadeLossWh: z.number(),
  sourceWh: z.number(),
  demandWh: z.number(),
  unservedWh: z.number(),
  startShare: share,
  lowestShare: share,
  highestShare: share,
  endShare: share,
});

const verdict = z.strictObject({
  holds: z.boolean(),
  dark: z.boolean(),
  lowestShare: share,
  lowestAh: z.number(),
  lowestMs: z.number(),
  lowestAt: moment,
  endShare: share,
  marginShare: z.number(),
  belowReserveFromMs: z.number().nullable(),
  belowReserveH: z.number(),
  darkFromMs: z.number().nullable(),
  darkH: z.number(),
  unservedWh: z.number(),
  radios: z.array(
    z.strictObject({
      id: text,
      name: text,
      minimumV: z.number(),
      lowestV: z.number().nullable(),
      lowestMs: z.number().nullable(),
      lost: z.strictObject({ chargeV: z.number(), leadV: z.number(), packV: z.number() }).nullable(),
      dropoutH: z.number(),
    }),
  ),
  sentences: z.array(text).min(1),
});

/** The shape of `trace --json`; every list has one value per step. */
export function Trace(steps: number) {
  const each = list(steps);
  return z.strictObject({
    format: z.literal("duskline-trace"),
    version: z.literal(1),
    scenario: z.strictObject({ name: text, place: z.looseObject({ name: text }), note: z.string().nullable() }),
    time: z.strictObject({
      zone: text,
      startMs: z.number(),
      stepMs: z.number(),
      steps: z.literal(steps),
      dates: z.array(z.string()),
    }),
    nights: z.array(z.strictObject({ startMs: z.number(), endMs: z.number() })),
    remarks: z.array(text),
    verdict,
    days: z.array(day).min(1),
    ledger: z.strictObject(ledger),
    bank: z.strictObject({ fullAh: z.number(), reserveAh: z.number() }),
    steps: z.strictObject({
      middleMs: each,
      sunAzimuthDeg: each,
      sunElevationDeg: each,
      ghiWm2: each,
      dniWm2: each,
      dhiWm2: each,
      airTempC: each,
      solarW: each,
      spilledW: each,
      demandW: each,
      servedW: each,
      unservedW: each,
      bankW: each,
      bankA: each,
      bankV: each,
      bankLossW: each,
      connected: each,
    }),
    chargeShare: list(steps + 1),
    panels: z.array(
      z.strictObject({
        id: text,
        name: text,
        busW: each,
        planeBeforeWm2: each,
        planeWm2: each,
        effectiveWm2: each,
        cellTempC: each,
        sectionsConducting: each,
        mppV: each,
        dcW: each,
        shadeLossW: each,
      }),
    ),
    sources: z.array(z.strictObject({ id: text, name: text, busW: each, fuelL: each })),
    loads: z.array(z.strictObject({ id: text, name: text, alwaysW: each, usedW: each })),
    stations: z.array(
      z.strictObject({
        id: text,
        name: text,
        minimumV: z.number(),
        staffedShare: each,
        sendingShare: each,
        radioV: each,
      }),
    ),
  });
}
