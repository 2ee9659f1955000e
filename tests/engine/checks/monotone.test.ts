/** What must hold for any plan: a thicker or shorter wire never hurts, an interlock never raises a peak, the report is plain JSON. */
import fc from "fast-check";
import { expect, test } from "vitest";
import { type LimitsReport, limits } from "../../../engine/checks/index.ts";
import { WIRE_GAUGES } from "../../../engine/scenario/cable.ts";
import { arbitraryScenario } from "../../promise/arbitraryScenario.ts";
import { traceInput } from "../../truth/run/plainScenario.ts";
import { flatBank, limitsOf, panelOf, type StationInput, stationOf } from "./oneStation.ts";

const RUNS = { numRuns: 60, seed: 20261010 };
const real = (min: number, max: number) => fc.double({ min, max, noNaN: true });

const station = (id: string): fc.Arbitrary<StationInput> =>
  fc
    .record({
      transmitW: real(1, 100),
      from: fc.integer({ min: 0, max: 20 }),
      interlock: fc.constantFrom("one", "two", null),
    })
    .map(({ transmitW, from, interlock }) =>
      stationOf(id, {
        transmitW,
        staffed: [{ from: `${String(from).padStart(2, "0")}:00`, to: "23:00" }],
        ...(interlock === null ? {} : { interlock }),
      }),
    );
const stations = fc.tuple(station("a"), station("b"), station("c"));
const bank = flatBank(3.275);

const peakA = (report: LimitsReport) => report.branches.find(({ id }) => id === "main")!.peakA;
const radioV = (report: LimitsReport) => report.radios.map((radio) => radio.radioV);

test("a longer lead never raises a radio's volts, a thicker one never lowers them", () => {
  fc.assert(
    fc.property(
      fc.integer({ min: 0, max: WIRE_GAUGES.length - 2 }),
      real(0, 50),
      real(0, 50),
      real(-40, 90),
      (gauge, oneWayM, moreM, tempC) => {
        const at = (awg: (typeof WIRE_GAUGES)[number], lengthM: number) => {
          const cable = { awg, oneWayM: lengthM, tempC };
          const feed = { cable, contactsOhm: 0.01 };
          return radioV(limitsOf({ bank, stations: [stationOf("a", { feed })], mainFeed: { cable } }))[0]!;
        };
        const plain = at(WIRE_GAUGES[gauge]!, oneWayM);
        expect(at(WIRE_GAUGES[gauge]!, oneWayM + moreM)).toBeLessThanOrEqual(plain);
        expect(at(WIRE_GAUGES[gauge + 1]!, oneWayM)).toBeGreaterThanOrEqual(plain);
      },
    ),
    RUNS,
  );
});

test("a station more never lowers the peak, nor raises another's volts", () => {
  fc.assert(
    fc.property(stations, ([a, b, c]) => {
      const two = limitsOf({ bank, stations: [a, b] });
      const three = limitsOf({ bank, stations: [a, b, c] });
      expect(peakA(three)).toBeGreaterThanOrEqual(peakA(two));
      radioV(two).forEach((volts, s) => {
        expect(radioV(three)[s]!).toBeLessThanOrEqual(volts);
      });
    }),
    RUNS,
  );
});

test("an interlock never raises the peak, nor lowers a radio's volts", () => {
  fc.assert(
    fc.property(stations, (list) => {
      const free = list.map(({ interlock: _, ...rest }) => rest);
      const without = limitsOf({ bank, stations: free });
      const withSome = limitsOf({ bank, stations: [...list] });
      const withAll = limitsOf({ bank, stations: free.map((each) => ({ ...each, interlock: "all" })) });
      expect(peakA(withSome)).toBeLessThanOrEqual(peakA(without));
      expect(peakA(withAll)).toBeLessThanOrEqual(peakA(withSome));
      radioV(without).forEach((volts, s) => {
        expect(radioV(withSome)[s]!).toBeGreaterThanOrEqual(volts);
      });
    }),
    RUNS,
  );
});

test("colder nights never lower a string's volts, and a lower charge never raises a radio's", () => {
  fc.assert(
    fc.property(real(-40, 40), real(0, 30), real(0, 1), real(0, 1), (coldestC, colder, charge, less) => {
      const volts = (c: number) =>
        limitsOf({ bank, panels: [panelOf("p")] }, { coldestC: c }).lines.find(({ id }) => id === "panel-volts/p")!
          .value!;
      expect(volts(Math.max(-70, coldestC - colder))).toBeGreaterThanOrEqual(volts(coldestC));
      const lfp = { chemistry: "lfp" as const, blockAh: 100, startShare: 1, reserveShare: 0.2 };
      const at = (lowestShare: number) =>
        radioV(limitsOf({ bank: lfp, stations: [stationOf("a")] }, { lowestShare }))[0]!;
      expect(at(charge * less)).toBeLessThanOrEqual(at(charge));
    }),
    RUNS,
  );
});

test("any plan that runs has limits, in plain JSON and in order", () => {
  const order = ["over", "close", "unknown", "assumed", "within"];
  fc.assert(
    fc.property(arbitraryScenario, (input) => {
      const report = limits(traceInput(input));
      expect(JSON.parse(JSON.stringify(report))).toEqual(report); // no NaN, no Infinity, nothing undefined
      const places = report.lines.map(({ verdict }) => order.indexOf(verdict));
      expect(places).toEqual([...places].sort((a, b) => a - b));
      expect(new Set(report.lines.map(({ id }) => id)).size).toBe(report.lines.length);
      const cautions = report.cautions.map(({ id }) => id);
      for (const line of report.lines) {
        for (const caution of line.cautions) expect(cautions).toContain(caution);
        const isGood = line.bound === "most" ? line.value! <= line.limit! * (1 + 1e-9) : line.value! >= line.limit!;
        if (line.verdict === "within" || line.verdict === "close" || line.verdict === "assumed")
          expect(isGood, line.id).toBe(true);
        if (line.verdict === "over" && line.id !== "cold-charge") expect(isGood, line.id).toBe(false);
      }
    }),
    RUNS,
  );
});
