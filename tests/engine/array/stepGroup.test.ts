import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { copperOhmPerM } from "../../../engine/array/copperOhmPerM.ts";
import { makeDomeLight } from "../../../engine/array/domeLight.ts";
import { makeFixedPower } from "../../../engine/array/fixedPower.ts";
import { type GroupDetail, groupDetail } from "../../../engine/array/groupDetail.ts";
import { PLANE_SLOTS } from "../../../engine/array/planeSlots.ts";
import type { PreparedGroup } from "../../../engine/array/preparedGroup.ts";
import { MEAN_SHARE } from "../../../engine/array/slots.ts";
import { stepDome } from "../../../engine/array/stepDome.ts";
import { stepGroup } from "../../../engine/array/stepGroup.ts";
import { stepPlane } from "../../../engine/array/stepPlane.ts";
import { groupBusW } from "../../groupBusW.ts";
import { gridAt, panelGroup, perfect, preparedAt, shadeStep, steadyLight } from "./oneGroup.ts";

const overhead = [{ sunAzimuthDeg: 180, sunElevationDeg: 90 }];
/** Air so cool that cells in full sun on an open rack at 1 m/s stand at 25 °C. */
const COOL_C = 25 - 1000 / (25 + 6.84);

/** Runs one step in full sun from overhead, cells at 25 °C, and returns its detail. */
function run(
  prepared: PreparedGroup,
  options: { busV?: number; beamWm2?: number; skyWm2?: number; airTempC?: number } = {},
) {
  const { busV = 13, beamWm2 = 1000, skyWm2 = 0, airTempC = COOL_C } = options;
  const detail = groupDetail(1);
  const light = steadyLight(1, beamWm2 + skyWm2, beamWm2, skyWm2);
  const busW = groupBusW(prepared, 0, light, Float64Array.of(airTempC), busV, detail);
  return Object.assign(at(detail), { busW });
}

function at(detail: GroupDetail) {
  return Object.fromEntries(Object.entries(detail).map(([name, values]) => [name, values[0]])) as Record<
    keyof GroupDetail,
    number
  >;
}

/** What leaves the panels is accounted for. */
function expectBalance(d: ReturnType<typeof run>) {
  expect(d.lossesW + d.cableLossW + d.controllerLossW + d.limitedW + d.busW).toBeCloseTo(d.dcW, 9);
}

describe("the chain behind the panels", () => {
  test("a perfect one brings rated power in rated light at 25 °C", () => {
    const d = run(preparedAt(panelGroup(), overhead));
    expect(d.busW).toBeCloseTo(100, 2);
    expect(d.cellTempC).toBeCloseTo(25, 2);
    expect(d.mppV).toBeCloseTo(20, 2);
    expect(d.sectionsConducting).toBe(3);
  });

  test("warmth takes its coefficient from power and voltage", () => {
    const d = run(preparedAt(panelGroup({ module: { ratedW: 100, vmpV: 20, powerTempCoeffPerK: -0.004 } }), overhead), {
      airTempC: COOL_C + 40,
    });
    expect(d.busW).toBeCloseTo(84, 2);
    expect(d.mppV).toBeCloseTo(16.8, 2);
  });

  test("losses multiply", () => {
    const losses = [
      { name: "dust", share: 0.1 },
      { name: "age", share: 0.2 },
    ];
    const d = run(preparedAt(panelGroup({ losses }), overhead));
    expect(d.busW).toBeCloseTo(72, 2);
    expect(d.lossesW).toBeCloseTo(28, 2);
    expectBalance(d);
  });

  test("the cable carries what the losses leave, and a lossless controller gives all the rest", () => {
    const cable = { awg: "12", oneWayM: 20, tempC: 40 } as const;
    const ohm = 40 * copperOhmPerM(cable, 40);
    const losses = [{ name: "dust", share: 0.2 }];
    const d = run(preparedAt(panelGroup({ losses, controller: perfect({ cable }) }), overhead));
    // 5 A at 20 V, 4 A of it left.
    expect(d.cableLossW).toBeCloseTo(16 * ohm, 3);
    expect(d.busW).toBeCloseTo(80 - 16 * ohm, 2);
    expect(d.controllerLossW).toBeCloseTo(0, 9);
  });

  test("a controller at the bank: the cable carries panel volts", () => {
    const cable = { awg: "12", oneWayM: 20, tempC: 40 } as const;
    const ohm = 40 * copperOhmPerM(cable, 40);
    const d = run(preparedAt(panelGroup({ controller: perfect({ cable, efficiencyShare: 0.9 }) }), overhead));
    expect(d.cableLossW).toBeCloseTo(5 * 5 * ohm, 2); // 100 W at 20 V
    expect(d.busW).toBeCloseTo(0.9 * (100 - 25 * ohm), 2);
    expectBalance(d);
  });

  test("a controller at the panels: the cable carries bank volts, and drops them exactly", () => {
    const cable = { awg: "12", oneWayM: 20, tempC: 40 } as const;
    const ohm = 40 * copperOhmPerM(cable, 40);
    const controller = perfect({ cable, efficiencyShare: 0.9, at: "panels" });
    const d = run(preparedAt(panelGroup({ controller }), overhead));
    const busA = d.busW / 13;
    expect(busA * (13 + busA * ohm)).toBeCloseTo(90, 2);
    expect(d.cableLossW).toBeCloseTo(busA * busA * ohm, 9);
    expect(d.controllerLossW).toBeCloseTo(10, 2);
    expectBalance(d);
  });

  test.each(["bank", "panels"] as const)("a controller at the %s gives no more than its current", (place) => {
    const cable = { awg: "10", oneWayM: 10, tempC: 25 } as const;
    const d = run(preparedAt(panelGroup({ controller: perfect({ at: place, maxChargeA: 5, cable }) }), overhead));
    expect(d.busW).toBeCloseTo(5 * 13, 9);
    expect(d.limitedW).toBeGreaterThan(30);
    expectBalance(d);
  });

  test("volts of strings add, their currents add", () => {
    const inSeries = run(preparedAt(panelGroup({ count: 4, inSeries: 2 }), overhead));
    expect(inSeries.busW).toBeCloseTo(400, 1);
    expect(inSeries.mppV).toBeCloseTo(40, 2);
  });

  test("no modules, no power", () => {
    expect(run(preparedAt(panelGroup({ count: 0 }), overhead)).busW).toBe(0);
  });
});

test("a tracking controller at the end of a long cable takes the sections that bring most to it", () => {
  const cable = { awg: "18", oneWayM: 40, tempC: 25 } as const;
  const ohm = 80 * copperOhmPerM(cable, 25);
  const prepared = preparedAt(panelGroup({ count: 2, inSeries: 2, controller: perfect({ cable }) }), overhead);
  shadeStep(prepared, 0, [1, 1, 1, 0.45, 0.45, 0.45]);
  // Three sections would give 5 A at 18.5 V and lose 2 V for each ohm more; six give 2.25 A at 40 V.
  const three = 5 * (18.5 - 5 * ohm);
  const six = 2.25 * (40 - 2.25 * ohm);
  expect(5 * 18.5).toBeGreaterThan(2.25 * 40);
  expect(six).toBeGreaterThan(three);
  const d = run(prepared);
  expect(d.sectionsConducting).toBe(6);
  expect(d.busW).toBeCloseTo(six, 2);
});

describe("a controller that only steps down", () => {
  const group = preparedAt(panelGroup({ controller: perfect({ stepDownOnly: true }) }), overhead);

  test("needs the panel a volt above the bank to track it", () => {
    expect(run(group, { busV: 18.9 }).busW).toBeGreaterThan(99);
    expect(run(group, { busV: 18.9 }).mppV).toBeCloseTo(20, 3);
  });

  test("ties the panel to the bank where it sinks below that, and gets nothing past its open volts", () => {
    // 20 V at the power point, 24 V open, 0.3 V over the controller; x = (bank + 0.3 − 20) ÷ 4.
    expect(run(group, { busV: 19.1 }).busW).toBeCloseTo(5 * 19.4, 2);
    expect(run(group, { busV: 19.1 }).mppV).toBeCloseTo(19.4, 9);
    expect(run(group, { busV: 21.7 }).busW).toBeCloseTo(5 * (1 - 0.5 * 0.5) * 22, 1);
    expect(run(group, { busV: 23.8 }).busW).toBe(0);
    expect(run(group, { busV: 23.8 }).mppV).toBe(0);
    expectBalance(run(group, { busV: 21.7 }));
  });

  test("one that also steps up does not", () => {
    expect(run(preparedAt(panelGroup(), overhead), { busV: 24 }).busW).toBeCloseTo(100, 2);
  });
});

describe("a PWM controller", () => {
  const pwm = (changes: object = {}) =>
    preparedAt(panelGroup({ controller: perfect({ kind: "pwm", ...changes }) }), overhead);

  test("gives the power point's current at the bank's volts", () => {
    const d = run(pwm());
    expect(d.busW).toBeCloseTo(5 * 13, 2);
    expect(d.mppV).toBeCloseTo(13, 9);
    expectBalance(d);
  });

  test("gives less past the power point and nothing at open voltage", () => {
    expect(run(pwm(), { busV: 22 }).busW).toBeCloseTo(5 * 0.75 * 22, 1);
    expect(run(pwm(), { busV: 24.1 }).busW).toBe(0);
  });

  test("stands above the bank by the drop in the cable", () => {
    const cable = { awg: "18", oneWayM: 10, tempC: 25 } as const;
    const ohm = 20 * copperOhmPerM(cable, 25);
    const d = run(pwm({ cable, efficiencyShare: 0.98 }));
    expect(d.mppV).toBeCloseTo(13 + 5 * ohm, 3);
    expect(d.cableLossW).toBeCloseTo(25 * ohm, 2);
    expect(d.busW).toBeCloseTo(5 * 13 * 0.98, 2);
    expectBalance(d);
  });

  test("is driven past the power point by the drop in a long cable", () => {
    const cable = { awg: "18", oneWayM: 10, tempC: 25 } as const;
    const past = (19 + 5 * 20 * copperOhmPerM(cable, 25) - 20) / 4;
    const d = run(pwm({ cable }), { busV: 19 });
    expect(past).toBeGreaterThan(0.2);
    expect(d.busW).toBeCloseTo(5 * (1 - past * past) * 19, 2);
    expectBalance(d);
  });

  test("takes strings of two modules at their own volts, and current from strings alone", () => {
    const controller = perfect({ kind: "pwm" });
    const prepared = preparedAt(panelGroup({ count: 4, inSeries: 2, controller }), overhead);
    expect(run(prepared).busW).toBeCloseTo(2 * 5 * 13, 2);
    expect(run(prepared, { busV: 44 }).busW).toBeCloseTo(2 * 5 * 0.75 * 44, 1); // half-way from 40 to 48 V
  });

  test("may sit at either end of its cable", () => {
    const cable = { awg: "18", oneWayM: 10, tempC: 25 } as const;
    expect(run(pwm({ cable, at: "panels" }))).toEqual(run(pwm({ cable, at: "bank" })));
  });

  test("keeps within its current", () => {
    const d = run(pwm({ maxChargeA: 3 }));
    expect(d.busW).toBeCloseTo(39, 9);
    expectBalance(d);
  });

  test("divides by nothing where a data sheet crosses over in the cold", () => {
    const module = { ratedW: 100, vmpV: 20, vocV: 20.5, powerTempCoeffPerK: -0.01, vocTempCoeffPerK: 0 };
    const prepared = preparedAt(panelGroup({ module, controller: perfect({ kind: "pwm" }) }), overhead);
    for (const busV of [13, 20.5, 28, 30])
      expect(run(prepared, { busV, airTempC: -70 }).busW).toBeGreaterThanOrEqual(0);
  });
});

describe("light", () => {
  test("on a level panel is the level light, whatever the model", () => {
    for (const transposition of ["hayDavies", "perez", "isotropic"] as const) {
      const d = run(
        preparedAt(panelGroup(), [{ sunAzimuthDeg: 120, sunElevationDeg: 40 }], { models: { transposition } }),
        {
          beamWm2: 0,
          skyWm2: 300,
        },
      );
      expect(d.planeWm2).toBeCloseTo(300, 2);
    }
  });

  test("glass counts for power, not for warmth", () => {
    const mount = { kind: "fixed", tiltDeg: 70, azimuthDeg: 180 } as const;
    const d = run(
      preparedAt(panelGroup({ mount }), overhead, { models: { transposition: "isotropic", albedoShare: 0 } }),
      {
        airTempC: 10,
      },
    );
    const planeWm2 = 1000 * Math.cos((70 * Math.PI) / 180);
    expect(d.planeWm2).toBeCloseTo(planeWm2, 2);
    expect(d.cellTempC).toBeCloseTo(10 + planeWm2 / (25 + 6.84), 2);
    expect(d.effectiveWm2).toBeCloseTo(planeWm2 * 0.85972, 1); // physical form at 70°, De Soto 2006
  });

  test("shade takes beam but leaves the sky's and the ground's light", () => {
    const wall = {
      kind: "box",
      id: "w",
      eastM: 0,
      northM: -3,
      heightM: 30,
      lengthM: 40,
      widthM: 0.1,
      headingDeg: 90,
    } as const;
    const prepared = preparedAt(panelGroup(), [{ sunAzimuthDeg: 180, sunElevationDeg: 40 }], {
      obstacles: [wall],
      models: { transposition: "isotropic", diffuseShade: "none" },
    });
    const detail = groupDetail(1);
    groupBusW(prepared, 0, steadyLight(1, 800, 1000, 150), Float64Array.of(20), 13, detail);
    expect(detail.planeWm2[0]).toBeCloseTo(150, 2);
    expect(detail.planeBeforeWm2[0]).toBeCloseTo(150 + 1000 * Math.sin((40 * Math.PI) / 180), 2);
    expect(detail.shadeLossW[0]).toBeGreaterThan(50);
    // The wall hides nearly half of the sky as well.
    const withSky = preparedAt(panelGroup(), [{ sunAzimuthDeg: 180, sunElevationDeg: 40 }], {
      obstacles: [wall],
      models: { transposition: "isotropic" },
    });
    groupBusW(withSky, 0, steadyLight(1, 800, 1000, 150), Float64Array.of(20), 13, detail);
    expect(detail.planeWm2[0]!).toBeGreaterThan(75);
    expect(detail.planeWm2[0]!).toBeLessThan(100);
  });

  test("light from beside the sun is shaded with the beam", () => {
    const wall = {
      kind: "box",
      id: "w",
      eastM: 0,
      northM: -3,
      heightM: 30,
      lengthM: 40,
      widthM: 0.1,
      headingDeg: 90,
    } as const;
    const planeWm2 = (transposition: "hayDavies" | "isotropic") => {
      const prepared = preparedAt(panelGroup(), [{ sunAzimuthDeg: 180, sunElevationDeg: 40 }], {
        obstacles: [wall],
        models: { transposition, diffuseShade: "none" },
      });
      const detail = groupDetail(1);
      groupBusW(prepared, 0, steadyLight(1, 800, 680.5, 150), Float64Array.of(20), 13, detail);
      return detail.planeWm2[0]!;
    };
    expect(planeWm2("isotropic")).toBeCloseTo(150, 2);
    expect(planeWm2("hayDavies")).toBeCloseTo(75, 1); // half of the light above the air is left in the beam
  });
});

test("a weather file's beam above what arrives outside the air leaves no negative sky", () => {
  // A panel that faces away from the sun, with dark ground: only the open sky's part is left, and there is none.
  const mount = { kind: "fixed", tiltDeg: 90, azimuthDeg: 0 } as const;
  const prepared = preparedAt(panelGroup({ mount }), [{ sunAzimuthDeg: 180, sunElevationDeg: 20 }], {
    models: { albedoShare: 0 },
  });
  const detail = groupDetail(1);
  groupBusW(prepared, 0, steadyLight(1, 700, 1700, 100), Float64Array.of(20), 13, detail);
  expect(detail.planeWm2[0]).toBe(0);
});

describe("set out for part of the time", () => {
  const out = [{ from: "08:00", to: "12:00" }];
  const grid = gridAt([7 * 60 + 30, 8 * 60 + 30, 11.5 * 60, 12 * 60 + 30], 60);
  const moments = grid.localMinute.reduce<{ sunAzimuthDeg: number; sunElevationDeg: number }[]>(
    (list) => [...list, ...overhead],
    [],
  );
  const prepared = preparedAt(panelGroup({ out }), moments, { grid });

  test("gives only then, and in a step half outside half as much", () => {
    const light = steadyLight(4, 1000, 1000, 0);
    const air = new Float64Array(4).fill(COOL_C);
    expect(groupBusW(prepared, 0, light, air, 13)).toBe(0);
    expect(groupBusW(prepared, 1, light, air, 13)).toBeCloseTo(100, 2);
    expect(groupBusW(prepared, 3, light, air, 13)).toBe(0);
    const controller = perfect({ efficiencyShare: 0.9 });
    const half = preparedAt(panelGroup({ out, controller }), overhead, { grid: gridAt([8 * 60], 60) });
    const d = run(half);
    expect(d.busW).toBeCloseTo(45, 2);
    expect(d.controllerLossW).toBeCloseTo(5, 2);
    expect(d.planeWm2).toBeCloseTo(500, 2);
    expect(d.mppV).toBeCloseTo(20, 2);
    expect(d.cellTempC).toBeCloseTo(25, 2);
    expectBalance(d);
  });
});

test("a step in the dark clears what the detail held", () => {
  const detail = groupDetail(1);
  for (const values of Object.values(detail)) values.fill(7);
  const night = preparedAt(panelGroup(), [{ sunAzimuthDeg: 0, sunElevationDeg: -10 }]);
  expect(groupBusW(night, 0, steadyLight(1, 0, 0, 0), Float64Array.of(11), 13, detail)).toBe(0);
  const left: Record<string, number> = { cellTempC: 11, seenV: 13 }; // air and bank are there in the dark, too
  for (const [name, values] of Object.entries(detail)) expect(values[0], name).toBe(left[name] ?? 0);
});

test("light while the sun is down, as a weather file may have it, gives nothing and no NaN", () => {
  const night = preparedAt(panelGroup(), [{ sunAzimuthDeg: 0, sunElevationDeg: -1 }]);
  expect(groupBusW(night, 0, steadyLight(1, 20, 0, 20), Float64Array.of(11), 13, groupDetail(1))).toBe(0);
});

test("arrays of different length are refused", () => {
  expect(() => preparedAt(panelGroup(), overhead, { grid: gridAt([5, 15]) })).toThrow(
    "elevationDeg must have as many values as middleMs (2), got 1",
  );
});

describe("for any shade and weather", () => {
  const share = fc.double({ min: 0, max: 1, noNaN: true });
  const setting = fc.record({
    shares: fc.tuple(share, share, share, share, share, share),
    beamWm2: fc.double({ min: 0, max: 1100, noNaN: true }),
    skyWm2: fc.double({ min: 0, max: 600, noNaN: true }),
    airTempC: fc.double({ min: -30, max: 45, noNaN: true }),
    busV: fc.double({ min: 10.5, max: 15, noNaN: true }),
    elevationDeg: fc.double({ min: 1, max: 90, noNaN: true }),
    kind: fc.constantFrom("mppt" as const, "pwm" as const),
    place: fc.constantFrom("bank" as const, "panels" as const),
    transposition: fc.constantFrom("hayDavies" as const, "perez" as const, "isotropic" as const),
    sectionRule: fc.constantFrom("kthBrightest" as const, "mildShade" as const),
    oneWayM: fc.double({ min: 0, max: 50, noNaN: true }),
    maxChargeA: fc.constantFrom(null, 4),
  });
  type Setting = typeof setting extends fc.Arbitrary<infer S> ? S : never;

  /** A group of two modules in series with the given light on its six sections, and the same in full light. */
  function both(s: Setting) {
    const group = panelGroup({
      count: 2,
      inSeries: 2,
      losses: [{ name: "dust", share: 0.05 }],
      controller: {
        kind: s.kind,
        at: s.place,
        efficiencyShare: 0.95,
        stepDownOnly: false,
        maxChargeA: s.maxChargeA,
        cable: { awg: "12", oneWayM: s.oneWayM, tempC: 25 },
      },
    });
    const make = () =>
      preparedAt(group, [{ sunAzimuthDeg: 180, sunElevationDeg: s.elevationDeg }], {
        models: { transposition: s.transposition, sectionRule: s.sectionRule },
      });
    const shaded = make();
    const sections = [...s.shares].sort((a, b) => b - a);
    shadeStep(shaded, 0, sections, s.shares.reduce((sum, one) => sum + one, 0) / 6);
    return { shaded, free: make() };
  }

  test("all is accounted for, nothing is negative, nothing is NaN", () => {
    fc.assert(
      fc.property(setting, (s) => {
        const d = run(both(s).shaded, s);
        for (const value of Object.values(d)) expect(Number.isFinite(value)).toBe(true);
        for (const name of [
          "dcW",
          "lossesW",
          "cableLossW",
          "controllerLossW",
          "limitedW",
          "busW",
          "planeWm2",
        ] as const) {
          expect(d[name]).toBeGreaterThanOrEqual(-1e-9);
        }
        expectBalance(d);
      }),
      { numRuns: 500 },
    );
  });

  test("no choice of sections gives more than no shade, by the k-th brightest rule", () => {
    fc.assert(
      fc.property(setting, (s) => {
        const { shaded, free } = both({ ...s, sectionRule: "kthBrightest" });
        // Cells at the same temperature: shade cools them, which is worth more than 0.
        for (const one of [shaded, free]) one.perStep[MEAN_SHARE] = 1;
        expect(run(shaded, s).busW).toBeLessThanOrEqual(run(free, s).busW + 1e-9);
      }),
      { numRuns: 500 },
    );
  });

  test("one section brighter never gives less", () => {
    fc.assert(
      fc.property(setting, fc.integer({ min: 0, max: 5 }), share, (s, which, more) => {
        const brighter = s.shares.map((one, k) => (k === which ? one + more * (1 - one) : one)) as typeof s.shares;
        const rule = { ...s, sectionRule: "kthBrightest" as const };
        const before = both(rule).shaded;
        const after = both({ ...rule, shares: brighter }).shaded;
        for (const one of [before, after]) one.perStep[MEAN_SHARE] = 1;
        expect(run(after, s).busW).toBeGreaterThanOrEqual(run(before, s).busW - 1e-9);
      }),
      { numRuns: 300 },
    );
  });

  test("noting the details changes no number", () => {
    fc.assert(
      fc.property(setting, (s) => {
        const { shaded } = both(s);
        const light = steadyLight(1, s.beamWm2 + s.skyWm2, s.beamWm2, s.skyWm2);
        const air = Float64Array.of(s.airTempC);
        const plane = new Float64Array(PLANE_SLOTS);
        const out = Float64Array.of(0, 0);
        const sorted = makeDomeLight(shaded.dome.transposition, 1, 1);
        stepDome(shaded.dome, light, air, sorted, 0);
        stepPlane(shaded, 0, sorted, 1, plane, makeFixedPower(1, 0, 0), true);
        stepGroup(shaded, 0, 0, 0, plane, Float64Array.of(0, s.busV), 1, out, 1, makeFixedPower(1, 0, 0));
        expect(groupBusW(shaded, 0, light, air, s.busV, groupDetail(1))).toBe(out[1]);
      }),
    );
  });
});
