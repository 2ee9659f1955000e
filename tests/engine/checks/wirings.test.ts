import { describe, expect, test } from "vitest";
import type { LimitLine } from "../../../engine/checks/index.ts";
import { limits } from "../../../engine/checks/limits.ts";
import { traceInput } from "../../truth/run/plainScenario.ts";
import { gear } from "./nastyPlan.ts";
import { flatBank, limitsOf, lineOf, panelOf, stationOf } from "./oneStation.ts";

/**
 * Two dozen wirings that somebody could crimp, and beside each what a person with the tables would say: copper of 75 °C insulation, NEC
 * table 310.16 (14 AWG 20 A, 12: 25, 10: 35, 8: 50, 6: 65, 4: 85, 2: 115, 1/0: 150, 4/0: 230), fuses no larger than 15, 20, 30 A before 14, 12,
 * 10 AWG (240.4(D)), fuses as sold (240.6(A)), 1.25 times what lasts, class 5 wire by IEC 60228. The bank gives 13 V and has no resistance, so
 * that watts over volts are amperes.
 */
const BANK = flatBank(3.25, { internalResistanceOhm: 0, chargingResistanceOhm: 0 });
const BANK_V = 13;
const GOOD: ReadonlySet<string> = new Set(["within", "close"]);

/** Of no length where nothing is said of its drop, so that it takes no volts from the load. */
const awg = (size: string, oneWayM = 0) => ({ awg: size as "8", oneWayM });
const mm2 = (size: number, oneWayM = 0) => ({ mm2: size, oneWayM });
type Parts = Parameters<typeof limitsOf>[0];
/** A main feed that is good for 100 A. */
const FEED = { cable: awg("1/0"), contactsOhm: 0, fuseA: 125, disconnectA: 200, distributionA: 200 };
const line = (parts: Parts, id: string): LimitLine => lineOf(limitsOf({ bank: BANK, mainFeed: FEED, ...parts }), id);
const over = (parts: Parts) =>
  limitsOf({ bank: BANK, mainFeed: FEED, ...parts })
    .lines.filter(({ verdict }) => verdict === "over")
    .map(({ id }) => id);

describe("main feed", () => {
  const main = (amps: number, mainFeed: Parts["mainFeed"]) => ({ gear: [gear("load", amps, {})], mainFeed });

  test("500 A on 10 AWG: wire, fuse, switch and distribution, each of them said by each line", () => {
    // 1.25 · 500 = 625 A. No gauge carries that; three of 4/0 with 225 A each do (208.3 A each, and 225 is the next fuse that is sold).
    const feed = { cable: awg("10"), contactsOhm: 0, fuseA: 30, disconnectA: 100, distributionA: 60 };
    const all =
      "No single wire that is sold will do: fit 3 runs of 4/0 AWG side by side, each with a 225 A fuse, a switch for 625 A or more and a distribution for 625 A or more, or make the current smaller or the run shorter.";
    for (const id of ["main-fuse-carries", "main-wire-carries", "main-disconnect", "main-distribution"]) {
      expect(line(main(500, feed), id), id).toMatchObject({ verdict: "over", change: all });
    }
    expect(line(main(500, feed), "main-wire-carries")).toMatchObject({ value: 625, limit: 35 });
    // What one wire still does: 160 A want 200 A, and 3/0 carries them.
    expect(line(main(160, feed), "main-wire-carries").change).toBe(
      "Fit wire of 3/0 AWG or thicker, a switch for 200 A or more, a distribution for 200 A or more and a 200 A fuse, or make the peak smaller.",
    );
  });

  test("a 100 A fuse before a 60 A panel and a 50 A switch", () => {
    // 20 A want 25 A; the switch bears 50 A: a 25 A fuse does it, and nothing else has to change.
    const feed = { cable: awg("2"), contactsOhm: 0, fuseA: 100, disconnectA: 50, distributionA: 60 };
    expect(line(main(20, feed), "main-fuse-protects")).toMatchObject({
      verdict: "over",
      value: 100,
      limit: 50,
      quantity: "fuse for the switch behind it",
      change: "Fit a 25 A fuse.",
    });
    const panel = { ...feed, disconnectA: 150 };
    expect(line(main(20, panel), "main-fuse-protects")).toMatchObject({ verdict: "over", limit: 60 });
    expect(line(main(20, { ...panel, fuseA: 60 }), "main-fuse-protects").verdict).toBe("within");
    expect(line(main(20, { ...panel, fuseA: 70 }), "main-fuse-protects").verdict).toBe("over");
  });

  test("a 100 A fuse in a 60 A holder", () => {
    const feed = { cable: awg("2"), contactsOhm: 0, fuseA: 100, holderA: 60 };
    expect(line(main(20, feed), "main-fuse-protects")).toMatchObject({ limit: 60, change: "Fit a 25 A fuse." });
    // 60 A want 75: the next fuse is 80, the holder has to be for it, and 2 AWG (115 A) may stay.
    expect(line(main(60, feed), "main-fuse-protects").change).toBe(
      "Fit a holder for 80 A or more and an 80 A fuse, or make the peak smaller.",
    );
  });

  test("a 100 A fuse before a main cable that nobody stated", () => {
    // 20 A want 25 A; the lead that would do is 10 AWG (25 A fuse; 12 AWG stops at 20), which no 100 A fuse protects.
    const found = line(main(20, { contactsOhm: 0, fuseA: 100 }), "main-fuse-protects");
    expect(found).toMatchObject({ verdict: "over", limit: 30, isAssumed: true });
    expect(found.change).toBe("Fit a 25 A fuse. State mainFeed.cable: this counts with 10 AWG over 1 m one way.");
  });

  test("a wire that carries its load and loses too much", () => {
    // 20 A through 10 m of 8 AWG: 2 · 10 m · 0.778 Ω/kft · 0.8385 / 304.8 = 42.8 mΩ, 0.856 V, 7.1 % of 12 V.
    const found = line(main(20, { ...FEED, cable: awg("8", 10), fuseA: 40 }), "drop/main");
    // The load takes its 260 W, so that it draws more behind the wire: I = (13 − √(13² − 4 · 42.8 mΩ · 260 W)) / (2 · 42.8 mΩ) = 21.5 A. For 3 % of 12 V they may
    // meet 0.36 V / 21.5 A = 16.7 mΩ: 4 AWG has 16.9, 3 AWG 13.5.
    const ohm = (20 * 0.000778 * 0.8385) / 0.3048;
    const amps = (13 - Math.sqrt(169 - 4 * ohm * 260)) / (2 * ohm);
    expect(found.value).toBeCloseTo((amps * ohm) / 12, 5);
    expect(found).toMatchObject({ verdict: "over", change: "Fit 3 AWG or thicker, or shorten the run." });
  });

  test("wire in the heat: 10 AWG at 50 °C bears 26 A, and no 30 A fuse", () => {
    // 35 A · √(25/45) = 26.1 A (the code's table has 0.75: 26.3).
    const hot = { kind: "clear" as const, air: { maxC: 50, minC: 50 } };
    const found = line(
      { ...main(15, { cable: awg("10"), contactsOhm: 0, fuseA: 30 }), weather: hot },
      "main-fuse-protects",
    );
    expect(found).toMatchObject({ verdict: "over", change: "Fit a 20 A fuse." });
    expect(found.limit).toBeCloseTo(26.09, 2);
  });

  test("metric wire by its own table, and what is assumed is metric too", () => {
    // 2.5 mm² carries 24 A in conduit: not the 25 A that 20 A for long want; 4 mm² carries 32 A, and a 25 A fuse protects it.
    const thin = line(main(20, { cable: mm2(2.5), contactsOhm: 0, fuseA: 25 }), "main-wire-carries");
    expect(thin).toMatchObject({ verdict: "over", limit: 24, change: "Fit 4 mm² or thicker." });
    // Class 5: 1 m of 4 mm² out and back at 25 °C, 2 · 4.95 mΩ · 1.01965.
    const enough = { ...FEED, cable: mm2(4), fuseA: 25 };
    const lead = { gear: [gear("load", 20, { cable: mm2(4, 1), fuseA: 25 })] };
    expect(line(lead, "drop/gear/load").value).toBeCloseTo((20 * 2 * 0.00495 * 1.01965) / 12, 6);
    const wholeReport = limitsOf({ bank: BANK, ...main(20, enough) });
    // 20 A over 3 m there and back may meet 18 mΩ, 3 mΩ/m: 6 mm² has 3.36 at 25 °C, 10 mm² 1.95.
    expect(wholeReport.runs.find(({ id }) => id === "gear/load")).toMatchObject({ size: "10 mm²", isAssumed: true });
  });
});

describe("no fuse stated, at each place", () => {
  const cases: readonly [string, Parts, string, string][] = [
    ["main", { gear: [gear("load", 20)], mainFeed: { cable: awg("4"), contactsOhm: 0 } }, "main-fuse-carries", "25 A"],
    ["radio lead", { stations: [stationOf("a")] }, "lead-fuse-carries/a", "25 A"],
    ["gear with its lead", { gear: [gear("fridge", 4, { cable: awg("12", 2) })] }, "gear-fuse/fridge", "5 A"],
    ["all other gear", { gear: [gear("a", 3), gear("b", 5)] }, "gear-fuse", "10 A"],
    ["controller", { panels: [panelOf("p")] }, "controller-fuse/p", "25 A"],
    [
      "mains charger",
      {
        sources: [
          { kind: "mains", id: "m", name: "Charger", chargerA: 30, available: [{ from: "00:00", to: "24:00" }] },
        ],
      },
      "source-fuse/m",
      "40 A",
    ],
    [
      "DC-DC",
      { sources: [{ kind: "vehicle", id: "v", name: "Van", outputA: 60, running: [{ from: "10:00", to: "12:00" }] }] },
      "source-fuse/v",
      "80 A",
    ],
    ["each of two strings", { bank: { ...BANK, inParallel: 2 }, gear: [gear("load", 32)] }, "string-lead-fuse", "20 A"],
  ];
  test.each(cases)("%s", (_, parts, id, fuse) => {
    const found = line(parts, id);
    expect(found).toMatchObject({ verdict: "over", limit: null });
    expect(found.change).toMatch(new RegExp(`Fit an? ${fuse} fuse\\.`));
    expect(found.change).toMatch(/Then state [\w.]+\.fuseA\.$/);
  });

  test("into and out of a converter", () => {
    const bank = flatBank(3.25, { nominalV: 24, inSeries: 2, internalResistanceOhm: 0 });
    const parts = { bank, gear: [gear("load", 20)], converter: { outputV: 13, efficiencyShare: 1 } };
    // 260 W: 10 A at 26 V into it, 12.5 A with what lasts; 20 A at 13 V out of it, 25 A.
    const open = { ...parts, mainFeed: { cable: awg("4"), contactsOhm: 0 } };
    expect(line(open, "converter-in-fuse")).toMatchObject({ verdict: "over", limit: null, value: 12.5 });
    expect(line(open, "converter-out-fuse")).toMatchObject({ verdict: "over", limit: null, value: 25 });
    // A main fuse stands before the converter too; out of it stands its own limit, where it is stated.
    expect(line(parts, "converter-in-fuse")).toMatchObject({ verdict: "within", limit: 125 });
    const limited = limitsOf({ ...parts, converter: { ...parts.converter, maxOutputA: 30 }, mainFeed: FEED });
    expect(limited.lines.some(({ id }) => id === "converter-out-fuse")).toBe(false);
    expect(lineOf(limited, "converter-out-wire")).toMatchObject({ value: 30, verdict: "assumed" });
  });
});

describe("24 V and the converter", () => {
  const bank = flatBank(3.25, { nominalV: 24, inSeries: 2, internalResistanceOhm: 0 });
  const load = { bank, gear: [gear("load", 38)] };

  test("the distribution of 12 V gear meets the converter's amperes, not the bank's", () => {
    // 494 W at 13 V are 38 A, 47.5 A with what lasts; at the bank 494 / 0.95 / 26 V = 20 A.
    const converter = { outputV: 13, efficiencyShare: 0.95, maxOutputA: 60, output: { cable: awg("6"), fuseA: 50 } };
    const parts = { ...load, converter, mainFeed: { ...FEED, distributionA: 30 } };
    expect(line(parts, "main-fuse-carries").value).toBeCloseTo(25, 9);
    expect(line(parts, "main-distribution")).toMatchObject({ verdict: "over", value: 47.5, limit: 30 });
    expect(line(parts, "converter-out-fuse-wire")).toMatchObject({
      verdict: "over",
      limit: 30,
      quantity: "fuse for the distribution behind it",
      change: "Fit a distribution for 50 A or more.",
    });
    expect(line(parts, "main-distribution").change).toBe("Fit a distribution for 50 A or more.");
    // Before the converter the bar does not count: the 125 A main fuse protects wire and switch alone.
    expect(line(parts, "main-fuse-protects")).toMatchObject({ verdict: "within", limit: 150 });
  });

  test("a converter that gives less than the peak, and one that would burn its lead", () => {
    const small = { ...load, converter: { outputV: 13, efficiencyShare: 1, maxOutputA: 30 }, mainFeed: FEED };
    expect(line(small, "converter-amps")).toMatchObject({ verdict: "over", value: 38, limit: 30 });
    expect(line(small, "converter-amps").change).toMatch(/^Bring a converter that gives 38 A or more/);
    const unknown = { ...load, converter: { outputV: 13 } };
    expect(line(unknown, "converter-amps")).toMatchObject({
      verdict: "unknown",
      change: expect.stringMatching(/^State converter\.maxOutputA/),
    });
    // 60 A of its own through 10 AWG (35 A), without a fuse: 6 AWG carries 65.
    const strong = {
      ...load,
      gear: [gear("load", 5)],
      converter: { outputV: 13, efficiencyShare: 1, maxOutputA: 60, output: { cable: awg("10") } },
    };
    expect(line(strong, "converter-out-wire")).toMatchObject({ value: 60, limit: 35, change: "Fit 6 AWG or thicker." });
  });

  test("at night, at the reserve, the converter draws more: the same watts at fewer volts", () => {
    const own = {
      chemistry: "agm" as const,
      blockAh: 100,
      nominalV: 24 as const,
      inSeries: 2,
      startShare: 1,
      reserveShare: 0.4,
      internalResistanceOhm: 0,
      temperature: 25,
      disconnectV: 0,
    };
    // Lead at rest: 12.06 V at 50 %, 11.90 V at 40 % for 12 V (charge-controller manuals): 23.80 V. 260 / 0.93 / 23.8 = 11.75 A.
    const report = limitsOf({
      bank: own,
      gear: [{ ...gear("load", 20), use: { when: "byTheClock", windows: [{ from: "22:00", to: "23:00" }] } }],
      converter: { outputV: 13, efficiencyShare: 0.93 },
    });
    expect(report.lowestFrom).toBe("reserve");
    expect(report.branches.find(({ id }) => id === "converter-in")!.peakA).toBeCloseTo(260 / 0.93 / 23.8, 1);
  });

  test("a 20.4 V string on a 24 V bank gives nothing, and says so", () => {
    const module = { ratedW: 100, vmpV: 20.4, vocV: 24, impA: 4.9, iscA: 5.2, vocTempCoeffPerK: 0 };
    const found = line({ bank, panels: [panelOf("p", { count: 1, inSeries: 1, module })] }, "panel-low/p");
    expect(found).toMatchObject({ verdict: "over", value: 20.4 });
    expect(found.change).toMatch(/^Wire 2 or more modules in series/); // 2 · 20.4 = 40.8 V over 28.8 V
  });
});

describe("radio and gear leads", () => {
  const lead = (cable: object, fuseA: number, parts: object = {}) => ({
    stations: [stationOf("a", { feed: { cable: cable as ReturnType<typeof awg>, fuseA }, ...parts })],
  });

  test("a long thin lead: wire and fuse at once", () => {
    // 20 A through 10 m of 18 AWG: 2 · 10 · 7.95 · 0.8385 / 304.8 = 437 mΩ, 8.75 V. 3 % of 12 V asks for 18 mΩ: 4 AWG; 20 A for long for 25 A.
    const parts = lead(awg("18", 10), 7);
    expect(line(parts, "drop/lead/a").value).toBeCloseTo((20 * 20 * 0.00795 * 0.8385) / 0.3048 / 12, 4);
    for (const id of ["lead-fuse-carries/a", "lead-wire-carries/a", "drop/lead/a"]) {
      expect(line(parts, id), id).toMatchObject({
        verdict: "over",
        change: "Fit wire of 4 AWG or thicker and a 25 A fuse, or make the peak smaller.",
      });
    }
  });

  test("a fuse that is too small on a wire that is thick enough, and the other way about", () => {
    expect(line(lead(awg("8", 2), 10), "lead-fuse-carries/a")).toMatchObject({
      verdict: "over",
      change: "Fit a 25 A fuse.",
    });
    // 14 AWG behind 25 A: 25 A on 20 A of wire and a cap of 15 A: 10 AWG, and the fuse may stay.
    expect(line(lead(awg("14", 1), 25), "lead-fuse-wire/a")).toMatchObject({
      verdict: "over",
      limit: 15,
      change: "Fit 10 AWG or thicker.",
    });
  });

  test("a 30 A fuse in a 20 A holder", () => {
    const stations = [stationOf("a", { feed: { cable: awg("8", 2), fuseA: 30, holderA: 20 } })];
    expect(line({ stations }, "lead-fuse-wire/a")).toMatchObject({
      verdict: "over",
      limit: 20,
      quantity: "fuse for the holder behind it",
      change: "Fit a holder for 25 A or more and a 25 A fuse, or make the peak smaller.",
    });
  });

  test("an amplifier beside the radio is on the branch of all other gear, or on its own lead", () => {
    const amp = { id: "amp", name: "amplifier", working: { drawW: 40 * BANK_V }, works: "sending" as const };
    const with_ = (own: object, longestOverMin?: number) => ({
      stations: [
        stationOf("a", {
          companions: [{ ...amp, ...own }],
          ...(longestOverMin === undefined ? {} : { longestOverMin }),
        }),
      ],
    });
    // 60 A in all, and 40 of them by the amplifier's way: 50 A with what lasts.
    expect(line(with_({}), "gear-fuse")).toMatchObject({ verdict: "over" });
    expect(line(with_({}), "gear-fuse").value).toBeCloseTo(50, 1);
    const own = with_({ lead: { cable: awg("6", 1), fuseA: 60 } });
    expect(line(own, "gear-fuse/a/amp")).toMatchObject({ verdict: "within", limit: 60 });
    expect(limitsOf({ bank: BANK, ...own }).lines.some(({ id }) => id === "gear-fuse")).toBe(false);
    // In overs of five minutes half of it lasts: 25 A with the factor, below the peak of 40 A that the fuse must be above.
    expect(line(with_({ lead: { cable: awg("6", 1), fuseA: 40 } }, 5), "gear-fuse/a/amp")).toMatchObject({
      verdict: "over",
      change: "Fit a 45 A fuse.",
    });
  });

  test("gear of its own: a 20 A fuse before 14 AWG", () => {
    const parts = { gear: [gear("fridge", 4, { cable: awg("14", 2), fuseA: 20 })] };
    expect(line(parts, "gear-fuse-wire/fridge")).toMatchObject({
      verdict: "over",
      limit: 15,
      change: "Fit a 5 A fuse.",
    });
  });

  test("what nobody stated is assumed, starred, and never within", () => {
    const { feed: _, ...bare } = stationOf("a");
    const report = limitsOf({
      bank: BANK,
      mainFeed: FEED,
      gear: [gear("lamp", 1)],
      stations: [bare],
      panels: [panelOf("p", { controller: { kind: "mppt", maxChargeA: 20, fuseA: 25 } })],
    });
    const unstated = report.runs.filter(({ isAssumed }) => isAssumed).map(({ id }) => id);
    expect(unstated).toEqual(["panels/p", "controller/p", "lead/a", "gear"]);
    for (const id of unstated) {
      const wires = report.lines.filter(({ run, rule }) => run === id && /wire|drops/.test(rule.words));
      expect(wires.length, id).toBeGreaterThan(1);
      for (const { verdict, isAssumed, change, id: lineId } of wires.filter(({ limit }) => limit !== null)) {
        expect(GOOD.has(verdict), lineId).toBe(false);
        if (verdict === "assumed")
          expect([isAssumed, /State \S+[cC]able: /.test(change)], lineId).toEqual([true, true]);
      }
    }
    expect(report.sentences.join(" ")).toMatch(/count with leads that nobody stated/);
  });
});

describe("panels and chargers", () => {
  const module = {
    ratedW: 120,
    vmpV: 18.2,
    impA: 6.6,
    vocV: 22,
    iscA: 7,
    maxSeriesFuseA: 15,
    vocTempCoeffPerK: -0.003,
  };
  const four = (parts: object) => ({ panels: [panelOf("p", { count: 4, inSeries: 1, module, ...parts })] });

  test("four strings side by side: without fuses 26 A back into one, with fuses by the module's label", () => {
    // 3 · 1.25 · 7 = 26.25 A on a label of 15 A. A string's fuse carries 1.56 · 7 = 10.94 A: 15 A is the next, and the label allows it.
    expect(line(four({}), "series-fuse/p")).toMatchObject({
      verdict: "over",
      value: 26.25,
      limit: 15,
      change: "Give each string a 15 A fuse of its own.",
    });
    expect(over(four({ stringFuseA: 15 }))).not.toContain("series-fuse/p");
    expect(line(four({ stringFuseA: 15 }), "string-fuse/p")).toMatchObject({ verdict: "within", value: 10.9375 });
    expect(line(four({ stringFuseA: 20 }), "series-fuse/p")).toMatchObject({ verdict: "over", value: 20, limit: 15 });
    expect(line(four({ stringFuseA: 10 }), "string-fuse/p")).toMatchObject({ verdict: "over", limit: 10 });
    const { maxSeriesFuseA: _, ...unlabelled } = module;
    expect(line(four({ module: unlabelled }), "series-fuse/p").verdict).toBe("unknown");
    const weak = { ...module, maxSeriesFuseA: 10 };
    expect(line(four({ module: weak }), "series-fuse/p").change).toMatch(/^No fuse carries a string/);
  });

  test("21 A of panels on 14 AWG", () => {
    // 1.56 · 3 · 7 = 32.8 A: 10 AWG (35 A) carries it, 14 AWG 20 A.
    const controller = { kind: "pwm" as const, maxChargeA: 30, fuseA: 35, cable: awg("14", 0.3) };
    const found = line({ panels: [panelOf("p", { count: 3, inSeries: 1, controller })] }, "panel-wire/p");
    expect(found).toMatchObject({ verdict: "over", value: 32.8125, limit: 20, change: "Fit 10 AWG or thicker." });
  });

  test("a controller that is too small in two ways says both", () => {
    // Two of 22 V at −10 °C by the code's 1.14: 50.2 V; 1.25 · 14 = 17.5 A of two strings.
    const cold = { kind: "clear" as const, air: { maxC: -10, minC: -10 } };
    const controller = { kind: "mppt" as const, maxPanelV: 50, maxPanelA: 15, maxChargeA: 40 };
    const parts = { weather: cold, panels: [panelOf("p", { count: 4, inSeries: 2, controller })] };
    expect(line(parts, "panel-volts/p")).toMatchObject({
      verdict: "over",
      change:
        "Wire at most 1 in series, or use a controller with an input for 51 V and an input for 18 A: too many volts destroy it at the first cold sunrise.",
    });
    expect(line(parts, "panel-amps/p").change).toContain("an input for 51 V and an input for 18 A");
  });

  test("controller and charger to the bank: wire, fuse, holder", () => {
    const controller = { kind: "mppt" as const, maxChargeA: 20, fuseA: 40, holderA: 30, shortCable: awg("10", 1) };
    const parts = { panels: [panelOf("p", { controller })] };
    // 40 A before 10 AWG (30 A) in a 30 A holder: 25 A carries 1.25 · 20 A.
    expect(line(parts, "controller-fuse-wire/p")).toMatchObject({
      verdict: "over",
      limit: 30,
      change: "Fit a 25 A fuse.",
    });
    // In a holder for 20 A that is the smallest part: the next fuse that carries 25 A asks for another.
    const held = { ...controller, fuseA: 25, holderA: 20 };
    expect(line({ panels: [panelOf("p", { controller: held })] }, "controller-fuse-wire/p")).toMatchObject({
      verdict: "over",
      limit: 20,
      quantity: "fuse for the holder behind it",
    });
    const vehicle = (lead: object) => ({
      sources: [
        {
          kind: "vehicle" as const,
          id: "v",
          name: "Van",
          outputA: 60,
          running: [{ from: "10:00", to: "12:00" }],
          lead,
        },
      ],
    });
    // 60 A want 75: 10 AWG carries 35, a 70 A fuse too little. 4 AWG (85) behind 80 A.
    const thin = vehicle({ cable: awg("10", 1), fuseA: 70 });
    for (const id of ["source-fuse/v", "source-fuse-wire/v", "source-wire/v"]) {
      expect(line(thin, id), id).toMatchObject({
        verdict: "over",
        change: "Fit wire of 4 AWG or thicker and an 80 A fuse.",
      });
    }
    // 6 AWG carries 65 A: the 60 A of the charger, and not the 75 A that hours of it ask for.
    expect(line(vehicle({ cable: awg("6", 1), fuseA: 80 }), "source-wire/v")).toMatchObject({
      verdict: "over",
      value: 75,
      limit: 65,
    });
    // What is left is the bank: 60 A into 100 Ah that take 50.
    expect(over(vehicle({ cable: awg("4", 1), fuseA: 80, holderA: 100 }))).toEqual(["charge-rate"]);
    // 60 A through 4 m of 4 AWG: 2 · 4 · 0.308 · 0.8385 / 304.8 = 6.78 mΩ, 0.407 V, 3.4 %.
    const long = line(vehicle({ cable: awg("4", 4), fuseA: 80 }), "drop/source/v");
    expect(long.value).toBeCloseTo((60 * 8 * 0.000308 * 0.8385) / 0.3048 / 12, 5);
    expect(long).toMatchObject({ verdict: "over", change: "Fit 3 AWG or thicker, or shorten the run." });
  });
});

describe("two banks in parallel", () => {
  const bank = (stringLead: object) => ({ ...BANK, inParallel: 2, maxDischargeA: 100, stringLead });
  const load = [gear("load", 48, { cable: awg("6", 0.5), fuseA: 60 })];

  test("each carries half, behind its own fuse and wire; one alone the whole, fuse and all", () => {
    // 48 A: 24 A each, 30 A with what lasts.
    const good = { bank: bank({ cable: awg("8", 0.5), fuseA: 50 }), gear: load };
    expect(line(good, "string-lead-fuse")).toMatchObject({ verdict: "within", value: 30, limit: 50 });
    expect(line(good, "lost-block")).toMatchObject({ verdict: "close", value: 48, limit: 50 });
    const small = { bank: bank({ cable: awg("8", 0.5), fuseA: 30 }), gear: load };
    expect(line(small, "string-lead-fuse").verdict).toBe("within");
    expect(line(small, "lost-block")).toMatchObject({ verdict: "over", limit: 30 });
    const thin = { bank: bank({ cable: awg("14", 0.5), fuseA: 60 }), gear: load };
    expect(line(thin, "string-lead-fuse-wire")).toMatchObject({
      verdict: "over",
      value: 60,
      limit: 15,
      change: "Fit 6 AWG or thicker.",
    });
    expect(line({ ...good, bank: { ...BANK, inParallel: 1 } }, "main-wire-carries").value).toBeCloseTo(60, 9);
  });
});

describe("short circuit and cold", () => {
  test("lead shorts from full: by its least resistance, stated or not", () => {
    const agm = { chemistry: "agm" as const, blockAh: 100, startShare: 0.5, reserveShare: 0.4, temperature: 25 };
    // 12.70 V full over 6 mΩ, and not the 12.06 V at which it begins.
    expect(line({ bank: agm }, "main-fuse-breaks").value).toBeCloseTo(12.7 / 0.006, 0);
    // A maker's 3 mΩ at half charge is less: 4233 A and, as lead has less resistance when full, more.
    const stiff = line({ bank: { ...agm, internalResistanceOhm: 0.003 } }, "main-fuse-breaks").value!;
    expect(stiff).toBeGreaterThanOrEqual(12.7 / 0.003 - 1);
  });

  test("panels meet the record of the place, unless the event or somebody is colder", () => {
    const run = traceInput({
      format: "duskline-scenario",
      version: 1,
      name: "Cold",
      place: { name: "Nowhere (invented)", latitudeDeg: 47, longitudeDeg: 10, zone: "Etc/UTC" },
      time: { start: "2026-06-12T00:00", end: "2026-06-13T00:00", stepMinutes: 60 },
      weather: { kind: "clear", air: { maxC: 20, minC: 10 } },
      bank: BANK,
      panels: [panelOf("p")],
    });
    const volts = (recordC?: number, coldestC?: number) => {
      const report = limits(run, coldestC === undefined ? {} : { coldestC }, recordC === undefined ? {} : { recordC });
      return [report.coldestFrom, Math.round(100 * lineOf(report, "panel-volts/p").value!) / 100];
    };
    // Two of 22 V: 1.18 at −20 °C, 1.06 at 10 °C, 1.25 at −40 °C (NEC table 690.7(A)).
    expect(volts(-20)).toEqual(["record", 51.92]);
    expect(volts()[0]).toBe("event");
    expect(volts(25)[0]).toBe("event");
    expect(volts(-20, -40)).toEqual(["given", 55]);
  });
});
