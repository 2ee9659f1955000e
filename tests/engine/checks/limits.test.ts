import { describe, expect, test } from "vitest";
import { CHEMISTRY_DATA } from "../../../engine/bank/chemistryData.ts";
import { limits } from "../../../engine/checks/limits.ts";
import { readWeatherFile } from "../../../engine/place/readWeatherFile.ts";
import { trace } from "../../../engine/run/trace.ts";
import { plainInput, readPlain, traceInput } from "../../truth/run/plainScenario.ts";
import { flatBank, limitsOf, lineOf, panelOf, stationOf } from "./oneStation.ts";

/**
 * Current that gives `watts` behind `ohm` from `openV`: the smaller root of P = (E − R I) I, by hand. Five decimals are compared: the
 * bank's prepared curve is rounded to a millionth of a volt.
 */
const handA = (openV: number, ohm: number, watts: number) =>
  (openV - Math.sqrt(openV * openV - 4 * ohm * watts)) / (2 * ohm);

test("an event colder than any that may be typed in, out of a weather file, has its limits", () => {
  const rows = Array.from({ length: 48 }, (_, h) => {
    const start = new Date(Date.UTC(2026, 5, 12, h)).toISOString().slice(0, 16);
    return `${start},0,-81.5`;
  });
  const read = readWeatherFile(["# utcOffset: 0", "time,ghi,temp_c", ...rows].join("\n"), "cold.csv");
  if (!read.ok) throw new Error(read.problems[0]!.message);
  const scenario = readPlain(plainInput({ weather: { kind: "file", file: "cold.csv" }, panels: [panelOf("roof")] }));
  const ran = trace(scenario, { weatherFile: read.file });
  if (!ran.ok) throw new Error(ran.problems[0]!.message);
  const report = limits(ran.trace);
  expect(report.coldestC).toBeCloseTo(-81.5, 5);
  expect(limits(ran.trace, { coldestC: -89 }).coldestC).toBe(-89);
  expect(() => limits(ran.trace, { coldestC: -91 })).toThrow("coldestC must lie in -90…60");
});

test("a peak beyond every fuse that is sold is said so where nothing behind the fuse is stated", () => {
  // 600 A is the largest of NEC 240.6(A) that we list; 9 kW at 12 V are some 700 A.
  const gear = [1, 2].map((n) => ({
    id: `g${n}`,
    name: `g${n}`,
    working: { drawW: 4500 },
    use: { when: "always" as const },
  }));
  const line = limitsOf({ gear, bank: flatBank(3.275, { internalResistanceOhm: 0.0001 }) }).lines.find(
    ({ about, quantity }) => about === "main feed" && quantity === "current through the fuse",
  );
  expect(line?.change).toMatch(/No single wire that is sold will do: fit 4 runs .* or make the current smaller/);
});

/** The stated 0.02 Ω at a report's charge and 25 °C: electronics and joints have four fifths of it, the cells' fifth goes by charge. */
const packOhm = ({ lowestShare }: { lowestShare: number }) =>
  0.016 + 0.004 * CHEMISTRY_DATA.lfp.internalByCharge(Math.min(2047, Math.floor(2048 * lowestShare)) / 2048);

describe("peak and continuous current", () => {
  const bank = flatBank(3.275); // 13.1 V
  const peakW = 20 * 13.8;
  const receiveW = 13.8;
  const atBank = (report: ReturnType<typeof limitsOf>) => report.branches.find(({ id }) => id === "main")!;

  test("stations add up, those behind one interlock do not, nor those that are never there together", () => {
    // Trade practice: the peak for cable, fuse and BMS is the sum of the positions unless they are interlocked.
    const two = limitsOf({ bank, stations: [stationOf("a"), stationOf("b")] });
    expect(atBank(two).peakA).toBeCloseTo(handA(13.1, packOhm(two), 2 * peakW), 5);
    expect(atBank(two).sending).toEqual(["position a", "position b"]);
    const interlock = "mast";
    const locked = limitsOf({ bank, stations: [stationOf("a", { interlock }), stationOf("b", { interlock })] });
    expect(atBank(locked).peakA).toBeCloseTo(handA(13.1, packOhm(locked), peakW + receiveW), 5);
    expect(atBank(locked).sending).toHaveLength(1);
    const apart = limitsOf({
      bank,
      stations: [
        stationOf("a", { staffed: [{ from: "08:00", to: "12:00" }] }),
        stationOf("b", { staffed: [{ from: "14:00", to: "18:00" }] }),
      ],
    });
    expect(atBank(apart).peakA).toBeCloseTo(handA(13.1, packOhm(apart), peakW), 5);
  });

  test("of an interlock group the station that draws most counts", () => {
    const interlock = "mast";
    const small = stationOf("a", { interlock, transmitW: 1 });
    const report = limitsOf({ bank, stations: [small, stationOf("b", { interlock })] });
    expect(atBank(report).sending).toEqual(["position b"]);
    // The small one's own worst moment is its own sending: bias 3 A and 17 A · √(1/100) = 4.7 A, the other receiving.
    const a = report.radios.find(({ id }) => id === "a")!;
    expect(a.sending).toEqual(["position a"]);
    expect(a.links[0]!.lostV).toBeCloseTo(packOhm(report) * handA(13.1, packOhm(report), 4.7 * 13.8 + receiveW), 5);
  });

  test("a fridge that runs a fifth of the time counts in full, at the peak and for as long as it runs", () => {
    const gear = [
      { id: "fridge", name: "Fridge", working: { drawW: 50 }, use: { when: "always" as const, share: 0.2 } },
      {
        id: "fan",
        name: "Fan",
        idle: { drawW: 2 },
        working: { drawW: 30 },
        use: { when: "byTheClock" as const, windows: [{ from: "10:00", to: "12:00" }] },
      },
    ];
    const report = limitsOf({ bank, gear });
    expect(atBank(report).peakA).toBeCloseTo(handA(13.1, packOhm(report), 80), 5);
    // A compressor runs for longer than ten minutes, and so does a fan: what lasts is the same 80 W, not the mean of three hours (30.7 W).
    expect(atBank(report).continuousA).toBeCloseTo(handA(13.1, packOhm(report), 80), 5);
    expect(atBank(report).sending).toEqual([]);
  });

  test("companions, converter and controllers count", () => {
    const companions = [
      { id: "laptop", name: "laptop", working: { drawW: 15 } },
      { id: "amp", name: "amplifier", idle: { drawW: 1 }, working: { drawW: 60 }, works: "sending" as const },
    ];
    const report = limitsOf({
      bank: flatBank(3.275, { nominalV: 24, inSeries: 2 }),
      converter: { outputV: 13.8, efficiencyShare: 0.9 },
      stations: [stationOf("a", { companions })],
      panels: [panelOf("p", { controller: { ownDrawW: 0.5 } })],
    });
    expect(atBank(report).peakA).toBeCloseTo(handA(26.2, packOhm(report), (peakW + 15 + 60) / 0.9 + 0.5), 5);
    // Behind a converter the radio sees its volts less its own lead.
    const [radio] = report.radios;
    expect(radio!.radioV).toBeCloseTo(13.8 - 20 * (0.01044 + 0.01), 3);
  });

  test("a radio that is left on receives at the other's peak", () => {
    const report = (whenUnstaffed: "off" | "receive") =>
      limitsOf({ bank, stations: [stationOf("a"), stationOf("b", { staffed: [], whenUnstaffed })] });
    const [off, receive] = [report("off"), report("receive")];
    expect(atBank(off).peakA).toBeCloseTo(handA(13.1, packOhm(off), peakW), 5);
    expect(atBank(receive).peakA).toBeCloseTo(handA(13.1, packOhm(receive), peakW + receiveW), 5);
  });

  test("a transmission counts by its length, and not by its mean over hours", () => {
    const lasting = (parts: object) =>
      limitsOf({ bank, stations: [stationOf("a", parts)] }).branches.find(({ id }) => id === "lead/a")!;
    // FM draws its 20 A through the whole over. Nobody says how long it is: ten minutes and more, so 20 A and not the mean of 2.9 A.
    expect(lasting({ sendingShare: 0.1 })).toMatchObject({ peakA: 20, continuousA: 20 });
    // Overs of three minutes fill three of ten: 1 A + 0.3 · 19 A.
    expect(lasting({ sendingShare: 0.1, longestOverMin: 3 }).continuousA).toBeCloseTo(1 + 0.3 * 19, 9);
    // Half of the time in overs of a minute: five of ten.
    expect(lasting({ sendingShare: 0.5, longestOverMin: 1 }).continuousA).toBeCloseTo(10.5, 9);
    expect(lasting({ sendingShare: 0.1, longestOverMin: 12 }).continuousA).toBe(20);
    // Speech follows its envelope: bias 3 A and 0.886 √0.2 of 17 A more, 9.74 A while it sends; CW 22 of 50 units at 20 A, the rest at 1 A.
    const speech = 3 + 17 * Math.sqrt(Math.PI / 4) * Math.sqrt(0.2);
    expect(lasting({ modes: [{ mode: "ssb", share: 1 }] }).continuousA).toBeCloseTo(speech, 9);
    expect(lasting({ modes: [{ mode: "cw", share: 1 }] }).continuousA).toBeCloseTo(0.44 * 20 + 0.56, 9);
    // Of two modes the one that draws more for long; one that is never used is none.
    const both = [
      { mode: "cw" as const, share: 0.9 },
      { mode: "rtty" as const, share: 0.1 },
    ];
    expect(lasting({ modes: both }).continuousA).toBe(20);
    const unused = [
      { mode: "cw" as const, share: 1 },
      { mode: "fm" as const, share: 0 },
    ];
    expect(lasting({ modes: unused }).continuousA).toBeCloseTo(9.36, 9);
    // 20 A through a long over want a fuse of 25 A; on 25 A it is within to the last bit, on 20 A over.
    const fuse = (fuseA: number, parts: object = {}) =>
      lineOf(
        limitsOf({
          bank,
          stations: [stationOf("a", { ...parts, feed: { cable: { awg: "8", oneWayM: 2 }, fuseA } })],
        }),
        "lead-fuse-carries/a",
      );
    expect(fuse(25)).toMatchObject({ value: 25, limit: 25, verdict: "within" });
    expect(fuse(20)).toMatchObject({ value: 25, verdict: "over", change: "Fit a 25 A fuse." });
    // In short overs the peak alone binds: 20 A on a 20 A fuse is not carried, on 25 A it is.
    expect(fuse(20, { longestOverMin: 0.25 })).toMatchObject({
      value: 20,
      verdict: "over",
      change: "Fit a 25 A fuse.",
    });
    expect(fuse(25, { longestOverMin: 0.25 })).toMatchObject({ value: 20, verdict: "within" });
  });
});

describe("volts at the radio", () => {
  test("are those of the run where the run is at its worst", () => {
    // One station and nothing else: the run's own lowest volts (another path through the code) must come out.
    const input = { bank: flatBank(3.2), stations: [stationOf("a")] };
    const report = limitsOf(input);
    const time = { start: "2026-06-12T00:00", end: "2026-06-13T00:00", stepMinutes: 60 as const };
    const run = traceInput({
      ...{ format: "duskline-scenario", version: 1, name: "Plain", time },
      place: { name: "Nowhere (invented)", latitudeDeg: 47, longitudeDeg: 10, zone: "Etc/UTC" },
      weather: { kind: "clear", air: { maxC: 25, minC: 25 } },
      ...input,
    });
    // The run looks at its steps' starts, the limits at the charge it ends with: a millivolt of the cells' curve lies between.
    expect(report.radios[0]!.radioV).toBeCloseTo(run.verdict.radios[0]!.lowestV!, 2);
  });

  test("the main feed takes its part, and the weak link is named", () => {
    const mainFeed = { cable: { awg: "6" as const, oneWayM: 15.24, tempC: 75 }, contactsOhm: 0.002 };
    const report = limitsOf({ bank: flatBank(3.275), stations: [stationOf("a")], mainFeed });
    // 50 ft of 6 AWG at 75 °C: 2 · 50 · 0.491 / 1000 = 49.1 mΩ (NEC chapter 9, table 8).
    const amps = handA(13.1, packOhm(report) + 0.0491 + 0.002, 276);
    const [radio] = report.radios;
    expect(radio!.weakLink).toMatchObject({ link: "main cable" });
    expect(radio!.weakLink.lostV).toBeCloseTo(amps * 0.0491, 6);
    expect(radio!.radioV).toBeCloseTo(13.1 - amps * (packOhm(report) + 0.0511) - 20 * (0.010439 + 0.01), 4);
  });

  test("advice: a lead that is enough, a charge that is enough, or neither", () => {
    const thin = stationOf("a", { feed: { cable: { awg: "16", oneWayM: 2.4384 }, contactsOhm: 0.01 } });
    const thinReport = limitsOf({ bank: flatBank(3.275), stations: [thin] }, { lowestShare: 0.9 });
    const lead = lineOf(thinReport, "radio-volts/a");
    // 13.1 − 22 A · 20 mΩ − 20 A · 10 mΩ leaves 12.45 V; least 11.73 V and 0.25 V of room: the lead may take 0.47 V at 20 A in 16 ft
    // out and back, 1.47 Ω per 1000 ft: 12 AWG has 1.66 at 25 °C, 10 AWG 1.04; and 20 A want 14 AWG or more.
    expect(lead).toMatchObject({ verdict: "over", change: expect.stringMatching(/lead of 10 AWG or thicker/) });
    const thinOhm = packOhm(thinReport);
    expect(lead.value).toBeCloseTo(13.1 - thinOhm * handA(13.1, thinOhm, 276) - 20 * (16 * 0.00499 * 0.8385 + 0.01), 3);
    const low = { bank: { chemistry: "agm" as const, blockAh: 200, startShare: 0.4, reserveShare: 0.1 } };
    const flat = lineOf(limitsOf({ ...low, stations: [stationOf("a")] }), "radio-volts/a");
    expect(flat).toMatchObject({ verdict: "over", change: expect.stringMatching(/keep the bank above \d+ %/) });
    const at = Number(/above (\d+) %/.exec(flat.change)![1]) / 100;
    const volts = (lowestShare: number) =>
      lineOf(limitsOf({ ...low, stations: [stationOf("a")] }, { lowestShare }), "radio-volts/a").value!;
    expect(volts(at)).toBeGreaterThanOrEqual(11.98); // 11.73 V and a quarter of a volt of room
    expect(volts(at - 0.01)).toBeLessThan(11.98);
    // Where only a lead of 1 AWG would do (0.46 V at 20 A over 44 m), nobody is told to tie one to a radio.
    const far = stationOf("a", { feed: { cable: { awg: "8", oneWayM: 22 }, contactsOhm: 0.01 } });
    const long = lineOf(limitsOf({ bank: flatBank(3.275), stations: [far] }), "radio-volts/a");
    expect(long).toMatchObject({ verdict: "over", change: expect.stringMatching(/No lead alone cures it/) });
    const never = lineOf(limitsOf({ bank: flatBank(2.8), stations: [stationOf("a")] }), "radio-volts/a");
    expect(never.change).toMatch(/no charge of this bank is enough/);
  });

  test("are met at the lowest charge while the loads are connected", () => {
    // 20 Ah under about 5 A is empty in hours; the disconnect opens on the way, and nobody sends below it.
    const bank = { chemistry: "lfp" as const, blockAh: 20, startShare: 1, reserveShare: 0.2, disconnectV: 12.9 };
    const gear = [{ id: "lamp", name: "Lamp", working: { drawW: 60 }, use: { when: "always" as const } }];
    const report = limitsOf({ bank, gear, stations: [stationOf("a")] });
    expect(report.lowestFrom).toBe("run");
    expect(report.openV).toBeGreaterThan(12.8);
    // A controller wired ahead of the disconnect goes on emptying the bank, and no radio meets that.
    const drain = panelOf("p", { module: { ratedW: 1 }, controller: { ownDrawW: 20 } });
    const drained = limitsOf({ bank, gear, stations: [stationOf("a")], panels: [drain] });
    expect(drained.openV).toBeGreaterThan(12.8);
    expect(drained.lowestShare).toBeGreaterThan(0.05);
    expect(limitsOf({ bank, gear }, { lowestShare: 0.1 })).toMatchObject({ lowestShare: 0.1, lowestFrom: "given" });
  });
});

describe("fuses, wires and what is rated", () => {
  const stations = [stationOf("a", { feed: { cable: { awg: "10", oneWayM: 2 }, fuseA: 25 } })];
  const bank = flatBank(3.275);

  test("a fuse for its load and for its wire", () => {
    const report = limitsOf({ bank, stations });
    expect(lineOf(report, "lead-fuse-carries/a")).toMatchObject({ verdict: "within", value: 25, limit: 25 });
    expect(lineOf(report, "lead-fuse-wire/a")).toMatchObject({ verdict: "within", value: 25, limit: 30 });
    expect(lineOf(report, "lead-wire-carries/a")).toMatchObject({ verdict: "within", value: 25, limit: 35 });
    // A fuse at its rating on every peak carries it for a while only.
    const even = [stationOf("a", { feed: { cable: { awg: "10", oneWayM: 2 }, fuseA: 20 } })];
    expect(lineOf(limitsOf({ bank, stations: even }), "lead-fuse-carries/a")).toMatchObject({
      verdict: "over",
      change: "Fit a 25 A fuse.",
    });
    const small = [stationOf("a", { feed: { cable: { awg: "14", oneWayM: 2 }, fuseA: 15 } })];
    const thin = limitsOf({ bank, stations: small });
    expect(lineOf(thin, "lead-fuse-carries/a")).toMatchObject({ verdict: "over", limit: 15 });
    // All that must change: 25 A is the next fuse, and 10 AWG the smallest gauge that it protects (NEC 240.4(D): 12 AWG stops at 20 A).
    expect(lineOf(thin, "lead-fuse-carries/a").change).toBe(
      "Fit wire of 10 AWG or thicker and a 25 A fuse, or make the peak smaller.",
    );
    expect(lineOf(thin, "lead-fuse-wire/a")).toMatchObject({ verdict: "within", limit: 15, marginShare: 0 });
    const large = [stationOf("a", { feed: { cable: { awg: "10", oneWayM: 2 }, fuseA: 40 } })];
    expect(lineOf(limitsOf({ bank, stations: large }), "lead-fuse-wire/a")).toMatchObject({
      verdict: "over",
      change: "Fit a 25 A fuse.",
    });
  });

  test("hot air takes from the wire", () => {
    const hot = { kind: "clear" as const, air: { maxC: 50, minC: 40 } };
    // 8 AWG in 50 °C: 50 A · 0.745 (NEC 310.15(B)(1) prints 0.75).
    const line = lineOf(limitsOf({ bank, stations: [stationOf("a")], weather: hot }), "lead-wire-carries/a");
    expect(line.limit).toBeCloseTo(50 * Math.sqrt(25 / 45), 1);
  });

  test("the main feed: every part, and what is not stated says its field", () => {
    const open = limitsOf({ bank, stations });
    const unknown = open.lines.filter(({ verdict }) => verdict === "unknown").map(({ id, change }) => [id, change]);
    expect(Object.fromEntries(unknown)).toMatchObject({
      "main-fuse-near": expect.stringMatching(/mainFeed\.fuseFromPostM/),
      "main-fuse-breaks": expect.stringMatching(/mainFeed\.fuseBreaksA/),
      "main-disconnect": expect.stringMatching(/mainFeed\.disconnectA/),
      "main-distribution": expect.stringMatching(/mainFeed\.distributionA/),
    });
    // A lead that nobody stated is assumed, starred, and neither within nor unknown.
    expect(lineOf(open, "main-wire-carries")).toMatchObject({
      verdict: "assumed",
      isAssumed: true,
      change: "State mainFeed.cable: this counts with 10 AWG over 1 m one way.",
    });
    // A wire without a fuse is a fault, and not only unknown.
    expect(lineOf(open, "main-fuse-carries")).toMatchObject({
      verdict: "over",
      limit: null,
      change: expect.stringMatching(/^No fuse is stated.* Fit a 30 A fuse.* Then state mainFeed\.fuseA\.$/),
    });
    const mainFeed = {
      cable: { awg: "4" as const, oneWayM: 1 },
      contactsOhm: 0,
      fuseA: 50,
      fuseBreaksA: 20_000,
      fuseFromPostM: 0.15,
      disconnectA: 100,
      distributionA: 20,
    };
    const report = limitsOf({ bank, stations, mainFeed });
    const loop = (2 * 1 * 0.308 * (1 + 0.00323 * (25 - 75))) / 304.8;
    const amps = handA(13.1, packOhm(report) + loop, 276);
    for (const [id, verdict] of [
      ["main-fuse-carries", "within"],
      ["main-fuse-protects", "over"],
      ["main-wire-carries", "within"],
      ["main-fuse-near", "within"],
      ["main-fuse-breaks", "within"],
      ["main-disconnect", "within"],
      ["main-distribution", "over"],
    ] as const) {
      expect(lineOf(report, id).verdict, id).toBe(verdict);
    }
    expect(lineOf(report, "main-fuse-carries").value).toBeCloseTo(1.25 * amps, 5);
    // 85 A of wire, 100 A of switch, 20 A of distribution: the smallest counts, and the others once that is gone.
    expect(lineOf(report, "main-fuse-protects")).toMatchObject({
      limit: 20,
      quantity: "fuse for the distribution behind it",
    });
    const feeds = { ...mainFeed, distributionA: 60, disconnectA: 50, fuseA: 100 };
    const largest = lineOf(limitsOf({ bank, stations, mainFeed: feeds }), "main-fuse-protects");
    expect(largest).toMatchObject({
      verdict: "over",
      value: 100,
      limit: 50,
      quantity: "fuse for the switch behind it",
    });
    const wire = limitsOf({ bank, stations, mainFeed: { ...feeds, distributionA: 200, disconnectA: 200, fuseA: 85 } });
    expect(lineOf(wire, "main-fuse-protects")).toMatchObject({ verdict: "within", limit: 85 });
    const heavy = { ...feeds, cable: { awg: "10" as const, oneWayM: 1 } };
    const ten = Array.from({ length: 5 }, (_, k) => stationOf(`s${k}`));
    const all = lineOf(limitsOf({ bank, stations: ten, mainFeed: heavy }), "main-fuse-carries");
    expect(all.verdict).toBe("over");
    expect(all.change).toMatch(
      /^Fit wire of \S+ AWG or thicker, a switch for \d+ A or more, a distribution for \d+ A or more and a \d+ A fuse, or/,
    );
    expect(lineOf(report, "main-wire-carries").value).toBeCloseTo(1.25 * amps, 5);
    expect(lineOf(report, "main-fuse-carries").marginShare).toBeCloseTo((50 - 1.25 * amps) / 50, 5);
    expect(lineOf(report, "main-distribution").marginShare).toBeCloseTo((20 - 1.25 * amps) / 20, 5);
    const far = limitsOf({ bank, stations, mainFeed: { ...mainFeed, fuseFromPostM: 0.5 } });
    expect(lineOf(far, "main-fuse-near")).toMatchObject({ verdict: "over", limit: 0.178 });
    const sheathed = { ...mainFeed, fuseFromPostM: 0.5, fuseLeadSheathed: true };
    expect(lineOf(limitsOf({ bank, stations, mainFeed: sheathed }), "main-fuse-near")).toMatchObject({
      verdict: "within",
      limit: 1.83,
    });
  });

  test("short circuit: 20 kA for lithium, volts over resistance for lead, or as the maker says", () => {
    const mainFeed = { fuseBreaksA: 2000 };
    const value = (parts: Parameters<typeof limitsOf>[0]) =>
      lineOf(limitsOf({ mainFeed, ...parts }), "main-fuse-breaks");
    expect(value({ bank })).toMatchObject({ value: 20_000, verdict: "over", isAssumed: true });
    expect(value({ bank: flatBank(3.275, { shortCircuitA: 1500 }) })).toMatchObject({ value: 1500, isAssumed: false });
    // AGM full, 12.70 V over 6 mΩ: 2117 A.
    const agm = { chemistry: "agm" as const, blockAh: 100, startShare: 1, reserveShare: 0.5 };
    expect(value({ bank: agm }).value).toBeCloseTo(12.7 / 0.006, 0);
    expect(value({ bank: { ...agm, inParallel: 2 } }).value).toBeCloseTo(12.7 / 0.003, 0);
  });
});

describe("the bank", () => {
  const stations = [stationOf("a"), stationOf("b")];

  test("peak against what it gives for seconds, mean against what it gives for hours", () => {
    const of = (parts: object) => limitsOf({ bank: flatBank(3.275, parts), stations });
    const amps = handA(13.1, packOhm(of({})), 552);
    expect(lineOf(of({ maxDischargeA: 40 }), "bank-peak")).toMatchObject({ limit: 40, verdict: "over" });
    expect(lineOf(of({ maxDischargeA: 40, peakDischargeA: 80 }), "bank-peak")).toMatchObject({
      limit: 80,
      verdict: "within",
      isAssumed: false,
    });
    expect(lineOf(of({}), "bank-peak")).toMatchObject({ limit: 100, isAssumed: true });
    expect(lineOf(of({}), "bank-peak").value).toBeCloseTo(amps, 5);
    expect(lineOf(of({ maxDischargeA: 5 }), "bank-continuous")).toMatchObject({ limit: 5, verdict: "over" });
  });

  test("the disconnect would cut on a peak", () => {
    const of = (disconnectV: number) => limitsOf({ bank: flatBank(3.275, { disconnectV }), stations });
    const ohm = packOhm(of(11));
    const volts = 13.1 - ohm * handA(13.1, ohm, 552); // 12.1 V, the bank nearly empty
    expect(lineOf(of(11), "bank-cut").value).toBeCloseTo(volts, 5);
    expect(lineOf(of(11), "bank-cut").verdict).toBe("within");
    expect(lineOf(of(12), "bank-cut").verdict).toBe("close");
    expect(lineOf(of(12.5), "bank-cut").verdict).toBe("over");
    expect(of(0).lines.some(({ id }) => id === "bank-cut")).toBe(false);
  });

  test("blocks side by side: how many, and what is left when one drops out", () => {
    const of = (inParallel: number) => limitsOf({ bank: flatBank(3.275, { inParallel, maxDischargeA: 70 }), stations });
    expect(of(1).lines.some(({ id }) => id === "parallel-strings")).toBe(false);
    expect(lineOf(of(2), "lost-block")).toMatchObject({ limit: 35, verdict: "over" });
    expect(lineOf(of(4), "lost-block")).toMatchObject({ limit: 52.5, verdict: "within" });
    expect(lineOf(of(4), "parallel-strings").verdict).toBe("within");
    expect(lineOf(of(5), "parallel-strings").verdict).toBe("over");
  });
});

test("drop in a lead: 3 % of 12 V, at the radio's peak and not at what the wire must carry", () => {
  // 20 A over 16 ft of 8 AWG out and back at 25 °C: 0.209 V, 1.74 % of 12 V (ABYC E-11 takes nominal volts).
  const sending = stationOf("a", { sendingShare: 0.9 });
  const run = limitsOf({ bank: flatBank(3.275), stations: [sending] }).runs.find(({ id }) => id === "lead/a");
  expect(run).toMatchObject({ id: "lead/a", size: "8 AWG", currentA: 20 });
  expect(run!.dropShare).toBeCloseTo((20 * 16 * 0.000778 * 0.8385) / 12, 5);
});

describe("panels", () => {
  const cold = { kind: "clear" as const, air: { maxC: 0, minC: -10 } };
  const with_ = (parts: Parameters<typeof panelOf>[1], options?: Parameters<typeof limitsOf>[1]) =>
    limitsOf({ bank: flatBank(3.25), weather: cold, panels: [panelOf("p", parts)] }, options);
  const controller = (parts: object) => ({
    controller: { kind: "mppt" as const, cable: { awg: "10" as const, oneWayM: 6.096, tempC: 25 }, ...parts },
  });

  test("open volts at the event's coldest hour, or a given night", () => {
    // Two of 22 V at −10 °C by the code's 1.14: 50.16 V (coldest hour a little above; never warmer than −9.5 °C here).
    const line = lineOf(with_(controller({ maxPanelV: 50 })), "panel-volts/p");
    expect(line).toMatchObject({ verdict: "over", limit: 50 });
    expect(line.value).toBeCloseTo(2 * 22 * 1.14, 6);
    expect(lineOf(with_(controller({ maxPanelV: 60 })), "panel-volts/p").verdict).toBe("within");
    const night = with_(controller({ maxPanelV: 60 }), { coldestC: -40 });
    expect(lineOf(night, "panel-volts/p").value).toBeCloseTo(55, 9);
    expect(night.coldestFrom).toBe("given");
  });

  test("currents: 1.25 × Isc into the controller, 1.56 × in the wire, strings side by side", () => {
    const one = with_(controller({ maxPanelA: 10 }));
    expect(lineOf(one, "panel-amps/p")).toMatchObject({ value: 8.75, limit: 10, verdict: "within" });
    expect(lineOf(one, "panel-wire/p").value).toBeCloseTo(7 * 1.5625, 9);
    const two = with_({ ...controller({ maxPanelA: 10 }), inSeries: 1 });
    expect(lineOf(two, "panel-amps/p")).toMatchObject({ value: 17.5, verdict: "over" });
    expect(two.lines.some(({ id }) => id === "series-fuse/p")).toBe(false);
    const module = { ratedW: 120, vmpV: 18.2, impA: 6.6, vocV: 22, iscA: 7, maxSeriesFuseA: 15 };
    const three = with_({ ...controller({}), count: 3, inSeries: 1, module });
    expect(lineOf(three, "series-fuse/p")).toMatchObject({ value: 17.5, limit: 15, verdict: "over" });
    // A PWM controller passes the panels' current on: its charging current is the limit.
    const pwm = with_({ ...controller({ kind: "pwm", maxChargeA: 8 }), count: 1, inSeries: 1 });
    expect(lineOf(pwm, "panel-amps/p")).toMatchObject({ value: 8.75, limit: 8, verdict: "over" });
    expect(pwm.lines.some(({ id }) => id === "controller-watts/p")).toBe(false);
  });

  test("watts over volts: 400 W at 13 V are 31 A", () => {
    // Common practice of the trade, worked so in print.
    const module = { ratedW: 200, vmpV: 20, impA: 10 };
    const line = lineOf(with_({ ...controller({ maxChargeA: 30 }), module }), "controller-watts/p");
    expect(line).toMatchObject({ limit: 30, verdict: "over" });
    expect(line.value).toBeCloseTo(400 / 13, 9);
    expect(Math.round(line.value!)).toBe(31);
  });

  test("the fuse behind a controller, and its wire where the long cable carries bank volts", () => {
    const near = with_(controller({ maxChargeA: 20, fuseA: 25 }));
    expect(lineOf(near, "controller-fuse/p")).toMatchObject({ value: 25, limit: 25, verdict: "within" });
    // Beside the bank nobody stated the lead: 10 AWG carries 23.1 A and stands behind 25 A, and it is assumed all the same.
    expect(lineOf(near, "controller-fuse-wire/p")).toMatchObject({ value: 25, limit: 30, verdict: "assumed" });
    const stated = with_(controller({ maxChargeA: 20, fuseA: 40, shortCable: { awg: "10", oneWayM: 1 } }));
    expect(lineOf(stated, "controller-fuse-wire/p")).toMatchObject({ value: 40, limit: 30, verdict: "over" });
    const far = with_(controller({ at: "panels", maxChargeA: 20, fuseA: 40 }));
    expect(lineOf(far, "controller-fuse-wire/p")).toMatchObject({ value: 40, limit: 30, verdict: "over" });
    expect(lineOf(far, "controller-wire/p")).toMatchObject({ verdict: "within", limit: 35 });
    expect(lineOf(far, "controller-wire/p").value).toBeCloseTo(1.25 * (240 / 13), 9);
    // The short run from the panels is the one that nobody stated.
    expect(lineOf(far, "panel-wire/p")).toMatchObject({ verdict: "assumed", value: 7 * 1.5625 });
  });

  test("drop: panel volts before the bank, bank volts behind a controller at the panels", () => {
    // 20 ft one way of 10 AWG at 25 °C, 1.24 · 0.8385 Ω per 1000 ft: 41.6 mΩ; 6.6 A lose 0.274 V of 36.4 V.
    const ohm = 40 * 0.00124 * 0.8385;
    const near = with_(controller({ maxChargeA: 20 })).runs[0]!;
    expect(near.dropV).toBeCloseTo(6.6 * ohm, 5);
    expect(near.dropShare).toBeCloseTo((6.6 * ohm) / 36.4, 5);
    const far = with_(controller({ at: "panels", maxChargeA: 20 })).runs.find(({ id }) => id === "controller/p")!;
    expect(far.currentA).toBeCloseTo(240 / 13, 9);
    expect(far.dropShare).toBeCloseTo((far.currentA * ohm) / 12, 5);
    // No fuse is stated either: 18.5 A want 25 A, and both are said.
    expect(lineOf(with_(controller({ at: "panels" })), "drop/controller/p")).toMatchObject({
      verdict: "over",
      change: "Fit wire of 6 AWG or thicker and a 25 A fuse.",
    });
    expect(lineOf(with_(controller({ at: "panels", fuseA: 25 })), "drop/controller/p")).toMatchObject({
      verdict: "over",
      change: "Fit 6 AWG or thicker, or shorten the run.",
    });
    const lax = with_(controller({ at: "panels" }), { targetDropShare: 0.1 });
    expect(lineOf(lax, "drop/controller/p")).toMatchObject({ verdict: "within", limit: 0.1 });
    expect(with_({ count: 0 }).runs.map(({ id }) => id)).toEqual(["main"]);
  });
});

describe("charging", () => {
  const wholeDay = [{ from: "00:00", to: "24:00" }];
  const mains = (chargerA: number, id = "mains") => ({
    kind: "mains" as const,
    id,
    name: id,
    chargerA,
    available: wholeDay,
  });
  const half = { startShare: 0.3, absorptionV: 14.4, chargingResistanceOhm: 0.001 };

  test("chargers add up unless a selector stands between them", () => {
    const bank = flatBank(3.2, { ...half, maxChargeA: 50 });
    const both = limitsOf({ bank, sources: [mains(30), mains(25, "second")] });
    expect(lineOf(both, "charge-rate")).toMatchObject({ value: 55, limit: 50, verdict: "over", isAssumed: false });
    const selector = { mode: "either" as const, inputs: ["mains", "second"] };
    const either = limitsOf({ bank, sources: [mains(30), mains(25, "second")], selector });
    expect(lineOf(either, "charge-rate")).toMatchObject({ value: 30, verdict: "within" });
  });

  test("cold lithium takes a tenth to 5 °C, a fifth to 10 °C, and nothing at 0 °C", () => {
    // Manuals of LFP packs; 100 Ah.
    const at = (temperature: number) =>
      limitsOf({ bank: flatBank(3.2, { ...half, temperature }), sources: [mains(15)] });
    expect(lineOf(at(3), "charge-rate")).toMatchObject({ limit: 10, verdict: "over" });
    expect(lineOf(at(8), "charge-rate")).toMatchObject({ limit: 20, verdict: "within" });
    expect(lineOf(at(20), "charge-rate")).toMatchObject({ limit: 50, isAssumed: true });
    expect(lineOf(at(0), "cold-charge")).toMatchObject({ value: 0, limit: 0, verdict: "over" });
    expect(lineOf(at(0), "cold-charge").quantity).toMatch(/24 h locked/);
    expect(lineOf(at(2), "cold-charge").verdict).toBe("close");
    expect(lineOf(at(8), "cold-charge").verdict).toBe("within");
    // As cold as the air, from 6 to 16 °C: the coldest hour with the charger on is what counts.
    const air = { kind: "clear" as const, air: { maxC: 16, minC: 6 } };
    const outdoors = limitsOf({
      bank: flatBank(3.2, { ...half, temperature: "air" }),
      weather: air,
      sources: [mains(15)],
    });
    expect(lineOf(outdoors, "cold-charge").value).toBeCloseTo(6, 0);
    const noLock = limitsOf({
      bank: flatBank(3.2, { ...half, temperature: -5, coldChargeLockC: null }),
      sources: [mains(5)],
    });
    expect(noLock.lines.some(({ id }) => id === "cold-charge")).toBe(false);
  });

  test("six groups in full sun count with all they can give, whatever this run's sky and trees leave of it", () => {
    const controller = { kind: "mppt" as const, maxChargeA: 20, cable: { awg: "10" as const, oneWayM: 2 } };
    const panels = [1, 2, 3, 4, 5, 6].map((k) => panelOf(`p${k}`, { count: 1, inSeries: 1, controller }));
    const obstacles = [
      {
        kind: "box" as const,
        id: "barn",
        name: "Barn",
        eastM: 0,
        northM: -60,
        lengthM: 60,
        widthM: 2,
        heightM: 30,
      },
    ];
    const parts = { bank: flatBank(3.25, { maxChargeA: 50 }), panels, obstacles };
    const report = limitsOf({ ...parts, weather: { kind: "clear", air: { maxC: 25, minC: 15 } } });
    // 6 modules of 120 W at 13 V at rest: 55 A on 50 A.
    expect(lineOf(report, "charge-rate")).toMatchObject({ verdict: "over", limit: 50 });
    expect(lineOf(report, "charge-rate").value).toBeCloseTo((6 * 120) / 13, 6);
  });

  test("a string whose volts never reach the bank's charging volts is said to charge nothing", () => {
    const bank = flatBank(3.25, { nominalV: 24, inSeries: 2 });
    const weather = { kind: "clear" as const, air: { maxC: 25, minC: 25 } };
    const low = (inSeries: number, controller: object = {}) =>
      limitsOf({
        bank,
        weather,
        panels: [panelOf("p", { count: inSeries, inSeries, controller: { kind: "mppt", ...controller } })],
      });
    // 18.2 V at 25 °C, 0.3 % a kelvin less at 55 °C: 16.56 V a module. One on a 24 V bank gives nothing, two do.
    const one = lineOf(low(1), "panel-low/p");
    expect(one.verdict).toBe("over");
    expect(one.value).toBeCloseTo(18.2 * (1 - 0.003 * 30), 6);
    expect(lineOf(low(2), "panel-low/p").verdict).toBe("within");
    expect(low(1, { stepDownOnly: false }).lines.some(({ id }) => id === "panel-low/p")).toBe(false);
  });

  test("peaks are met at the reserve, which a worse day comes down to, and lower where the run itself does", () => {
    const of = (reserveShare: number, startShare = 1) =>
      limitsOf({
        bank: flatBank(3.25, { reserveShare, startShare }),
        stations: [stationOf("a", { sendingShare: 0.02 })],
      });
    expect(of(0.2)).toMatchObject({ lowestShare: 0.2, lowestFrom: "reserve" });
    expect(of(0.9, 0.5).lowestFrom).toBe("run");
    expect(of(0.9, 0.5).lowestShare).toBeLessThan(0.5);
  });

  test("chargers count with what they give, and with nothing to charge it there is no line", () => {
    const full = limitsOf({
      bank: { chemistry: "lfp", blockAh: 100, startShare: 1, reserveShare: 0.2, temperature: 25 },
      sources: [mains(400)],
    });
    expect(lineOf(full, "charge-rate")).toMatchObject({ value: 400, limit: 50, verdict: "over" });
    expect(limitsOf({ bank: flatBank(3.2) }).lines.some(({ id }) => id === "charge-rate")).toBe(false);
  });
});

describe("the report", () => {
  test("worst first, every line with rule, source and advice, every caution it points at there", () => {
    const report = limitsOf({
      bank: flatBank(3.0, { maxDischargeA: 30 }),
      stations: [stationOf("a"), stationOf("b")],
      panels: [panelOf("p")],
    });
    const order = ["over", "close", "unknown", "assumed", "within"];
    const places = report.lines.map(({ verdict }) => order.indexOf(verdict));
    expect(places).toEqual([...places].sort((a, b) => a - b));
    expect(new Set(places).size).toBeGreaterThan(2);
    expect(new Set(report.lines.map(({ id }) => id)).size).toBe(report.lines.length);
    const cautions = report.cautions.map(({ id }) => id);
    for (const line of report.lines) {
      expect(line.rule.words.length, line.id).toBeGreaterThan(20);
      expect(line.rule.source.length, line.id).toBeGreaterThan(10);
      expect(line.change, line.id).toMatch(/^[A-Z].*\.$/);
      for (const caution of line.cautions) expect(cautions, line.id).toContain(caution);
    }
    expect(report.sentences[0]).toMatch(/^Over the limit: /);
    expect(JSON.parse(JSON.stringify(report))).toEqual(report);
  });

  test("options outside their range are refused by name", () => {
    expect(() => limitsOf({}, { targetDropShare: 0 })).toThrow(/targetDropShare must lie in 0\.001…0\.5, got 0/);
    expect(() => limitsOf({}, { lowestShare: 1.2 })).toThrow(/lowestShare must lie in 0…1/);
    expect(() => limitsOf({}, { coldestC: Number.NaN })).toThrow(/coldestC must lie in -90…60/);
  });
});
