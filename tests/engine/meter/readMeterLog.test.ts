import { describe, expect, test } from "vitest";
import { type MeterMapping, readMeterMapping } from "../../../engine/meter/meterMapping.ts";
import type { MeterReading } from "../../../engine/meter/meterReading.ts";
import { readMeterLog } from "../../../engine/meter/readMeterLog.ts";

/** An invented log: a night and a morning, the bank falling and then charging. */
interface LogForm {
  readonly delimiter: string;
  readonly decimal: string;
  readonly titles: readonly string[];
  readonly time: (ms: number) => string;
}
const START = Date.UTC(2026, 9, 8, 4);
const ROWS = 60;
const iso = (ms: number) => new Date(ms).toISOString().slice(0, 16);
const PLAIN: LogForm = {
  delimiter: ",",
  decimal: ".",
  titles: ["time", "Charge %", "Battery V", "Battery A", "PV W", "Load W"],
  time: (ms) => `${iso(ms)}Z`,
};

function cells(k: number): number[] {
  const pvW = Math.max(0, (k - 25) * 6.5);
  const netA = (pvW - 40) / 13;
  return [80 - 0.2 * k + (k > 32 ? 0.5 * (k - 32) : 0), 12.9 + 0.01 * netA, netA, pvW, 40];
}

function logText(form: Partial<LogForm> = {}, rows = ROWS): string {
  const { delimiter, decimal, titles, time } = { ...PLAIN, ...form };
  const number = (value: number) => value.toFixed(2).replace(".", decimal);
  const line = (k: number) => [time(START + k * 600_000), ...cells(k).map(number)].join(delimiter);
  return [titles.join(delimiter), ...Array.from({ length: rows }, (_, k) => line(k)), ""].join("\n");
}

function read(text: string, mapping: MeterMapping = {}, zone = "UTC") {
  const reading = readMeterLog(text, mapping, zone);
  if (!reading.ok) throw new Error(reading.problems.map(({ message }) => message).join("\n"));
  return reading;
}
function refused(reading: MeterReading) {
  if (reading.ok) throw new Error("it was read");
  return reading;
}
const codes = (reading: ReturnType<typeof read>) =>
  reading.findings.map(({ code }) => code).filter((code) => code !== "stamp-taken");

describe("a log in any of the usual forms", () => {
  const plain = read(logText());
  test("reads as what was written", () => {
    expect(plain.log.timeMs[0]).toBe(START);
    expect(plain.log.timeMs).toHaveLength(ROWS);
    expect(plain.log.usualMs).toBe(600_000);
    expect(plain.log.chargeShare![10]).toBeCloseTo(0.78, 9);
    expect(plain.log.bankA![0]).toBeCloseTo(-40 / 13, 2);
    expect(plain.log.pvW![50]).toBeCloseTo(162.5, 9);
    expect(plain.mapping.currentSign).toBe("chargingPositive");
    expect(codes(plain)).toEqual(["sign-found"]);
  });

  const german = (ms: number) => iso(ms).replace(/(\d+)-(\d+)-(\d+)T(.*)/, "$3.$2.$1 $4");
  const american = (ms: number) => {
    const hour = new Date(ms).getUTCHours();
    return iso(ms).replace(
      /(\d+)-(\d+)-(\d+)T\d+:(\d+)/,
      (_, y, m, d, min) => `${m}/${d}/${y} ${hour % 12 || 12}:${min} ${hour < 12 ? "AM" : "PM"}`,
    );
  };
  test.each<[string, string]>([
    ["semicolons and decimal commas", logText({ delimiter: ";", decimal: "," })],
    ["tabs", logText({ delimiter: "\t" })],
    ["commas inside quotes", logText().replace(/(?<=,)(-?\d+)\.(\d+)/g, '"$1,$2"')],
    ["day.month.year", logText({ time: german, delimiter: ";", decimal: "," })],
    ["month/day/year with AM and PM", logText({ time: american })],
    ["seconds since 1970", logText({ time: (ms) => String(ms / 1000) })],
    ["milliseconds since 1970", logText({ time: (ms) => String(ms) })],
    ["a byte order mark and CRLF", `\uFEFF${logText().replaceAll("\n", "\r\n")}`],
    ["lines before the titles", `Logger of the van;;\n\n${logText({ delimiter: ";" })}`],
    ["units after the numbers", logText().replace(/(?<=Z,)([\d.]+)/g, "$1 %")],
    ["an offset beside each time", logText({ time: (ms) => `${iso(ms + 7_200_000)}+02:00` })],
    ["an offset behind UTC", logText({ time: (ms) => `${iso(ms - 12_600_000)}-03:30` })],
  ])("%s", (name, text) => {
    const mapping: MeterMapping = name.startsWith("month") ? { timeForm: "monthFirst" } : {};
    const { log } = read(text, mapping);
    expect(log.timeMs).toEqual(plain.log.timeMs);
    expect(log.chargeShare).toEqual(plain.log.chargeShare);
    expect(log.bankA).toEqual(plain.log.bankA);
    expect(log.pvW).toEqual(plain.log.pvW);
  });

  test("with date and time in columns of their own", () => {
    const text = logText({
      titles: ["Date", "Clock", ...PLAIN.titles.slice(1)],
      time: (ms) => iso(ms).replace("T", ","),
    });
    const { log, mapping } = read(text);
    expect(mapping.columns).toMatchObject({ date: "Date", time: "Clock" });
    expect(log.timeMs).toEqual(plain.log.timeMs);
  });

  test("on a local clock, the zone counts, and the hour that comes twice is lived twice", () => {
    const local = read(logText({ time: iso }), {}, "Europe/Vienna");
    expect(local.log.timeMs[0]).toBe(START - 7_200_000);
    const backMs = Date.UTC(2026, 9, 25, 0);
    const vienna = (ms: number) => iso(ms + (ms < Date.UTC(2026, 9, 25, 1) ? 7_200_000 : 3_600_000));
    const text = logText({ time: (ms) => vienna(ms - START + backMs) });
    const found = read(text, {}, "Europe/Vienna");
    const { log } = found;
    expect(Array.from(log.timeMs)).toEqual(Array.from({ length: ROWS }, (_, k) => backMs + k * 600_000));
    expect(codes(found)).toEqual(["sign-found"]);
  });

  test("titles in other words, and one that no one should use as a key", () => {
    const titles = ["Timestamp", "SOC", "Akku Spannung [V]", "Akku Strom [A]", "Solar power (W)", "__proto__"];
    const { log, mapping } = read(logText({ titles }));
    expect(mapping.columns).toEqual({
      time: titles[0],
      charge: titles[1],
      bankV: titles[2],
      bankA: titles[3],
      pvW: titles[4],
    });
    expect(log.loadW).toBeNull();
    const mapped = read(logText({ titles }), { columns: { loadW: "__proto__", charge: null } });
    expect(mapped.log.loadW![0]).toBe(40);
    expect(mapped.log.chargeShare).toBeNull();
    expect(mapped.log.pvW![50]).toBeCloseTo(162.5, 9);
  });

  test("its mapping reads the next log of the same meter, and survives JSON", () => {
    const stored = readMeterMapping(JSON.parse(JSON.stringify(plain.mapping)));
    expect(stored.ok && stored.mapping).toEqual(plain.mapping);
    const again = read(logText(), plain.mapping);
    expect(again.log).toEqual(plain.log);
    expect(again.mapping).toEqual(plain.mapping);
    expect(readMeterMapping({ decimal: ":" }).ok).toBe(false);
  });
});

describe("what is wrong is said and not corrected", () => {
  const lines = () => logText().trimEnd().split("\n");
  test("rows whose time does not read, cells that are none, values that cannot be", () => {
    const bad = lines();
    bad[5] = bad[5]!.replace(/^[^,]*/, "yesterday");
    bad[7] = bad[7]!.replace(/,(\d+\.\d+),/, ",full,");
    bad[9] = bad[9]!.replace(/,[^,]*$/, ",999999");
    const found = read(bad.join("\n"));
    expect(found.log.timeMs).toHaveLength(ROWS - 1);
    expect(found.findings.slice(0, -1).map(({ code, line }) => [code, line])).toEqual([
      ["bad-time", 6],
      ["unreadable", 8],
      ["impossible", 10],
      ["sign-found", null],
    ]);
    expect(found.log.chargeShare![5]).toBeNaN();
  });

  test("rows of several minutes are taken for instants, and that is said", () => {
    const { findings } = read(logText());
    expect(findings.at(-1)).toMatchObject({ code: "stamp-taken", proposal: { stamp: "end" } });
    expect(findings.at(-1)!.message).toContain("come 5 min off");
    expect(read(logText(), { stamp: "end" }).findings.map(({ code }) => code)).toEqual(["sign-found"]);
  });

  test("duplicates, rows out of order and gaps", () => {
    const odd = lines();
    odd.splice(20, 7);
    odd.push(odd[3]!, odd[4]!.replace("40.00", "41.00"));
    const found = read(odd.join("\n"));
    expect(codes(found)).toEqual(["out-of-order", "duplicates", "gaps", "sign-found"]);
    expect(found.findings[1]!.message).toContain("2 rows repeat a time, 1 of them with other values");
    expect(found.findings[2]!.message).toContain("One gap of more than 30 min, 80 min together");
    expect(found.log.loadW![3]).toBe(40);
  });

  test("a current written the other way round is found, and a mapping that says otherwise is doubted", () => {
    const turned = logText().replace(
      /^([^,]*,[^,]*,[^,]*,)(-?)([\d.]+)/gm,
      (_, head, minus, digits) => `${head}${minus ? "" : "-"}${digits}`,
    );
    const found = read(turned);
    expect(found.mapping.currentSign).toBe("chargingNegative");
    expect(found.log.bankA![0]).toBeCloseTo(-40 / 13, 2);
    const doubted = read(logText(), { currentSign: "chargingNegative" });
    expect(doubted.findings.find(({ code }) => code === "sign-doubtful")!.proposal).toEqual({
      currentSign: "chargingPositive",
    });
    expect(doubted.log.bankA![0]).toBeCloseTo(40 / 13, 2);
  });

  test("a sign that nothing tells is asked for", () => {
    const text = [
      "time,bank A",
      ...Array.from({ length: 40 }, (_, k) => `${iso(START + k * 600_000)},${k % 2 ? 3 : -2}`),
    ].join("\n");
    const { problems, suggestion } = refused(readMeterLog(text));
    expect(problems.map(({ code }) => code)).toEqual(["sign-unknown"]);
    expect(read(text, { ...suggestion, currentSign: "chargingNegative" }).log.bankA![0]).toBe(2);
  });

  test("an order of day and month that may be either is asked for; a day past the 12th or a run of days settles it", () => {
    const of = (dates: readonly string[]) =>
      ["date,bank V", ...dates.flatMap((date) => [`${date} 10:00,12.9`, `${date} 11:00,12.8`])].join("\n");
    const asked = refused(readMeterLog(of(["05/06/2026"])));
    expect(asked.problems[0]!.message).toContain("dayFirst or monthFirst");
    expect(new Date(read(of(["05/06/2026"]), { timeForm: "monthFirst" }).log.timeMs[0]!).getUTCMonth()).toBe(4);
    expect(read(of(["05/06/2026", "06/06/2026"])).mapping.timeForm).toBe("dayFirst");
    expect(read(of(["05/06/2026", "05/07/2026"])).mapping.timeForm).toBe("monthFirst");
    expect(read(of(["13/06/2026"])).mapping.timeForm).toBe("dayFirst");
    expect(read(of(["05.06.2026"])).mapping.timeForm).toBe("dayFirst");
  });

  test("mixed decimal marks: the rarer ones count as missing, and decimal commas that cut cells leave rows out", () => {
    const mixed = lines().map((line, k) => (k > 0 && k % 5 === 0 ? line.replace(/,40\.00$/, ',"40,00"') : line));
    const found = read(mixed.join("\n"));
    expect(found.findings.find(({ code }) => code === "unreadable")).toMatchObject({ rows: 12, line: 6 });
    expect(found.log.loadW!.filter(Number.isNaN)).toHaveLength(12);
    const cut = lines().map((line, k) => (k > 0 && k % 5 === 0 ? line.replace(/40\.00$/, "40,00") : line));
    expect(read(cut.join("\n")).findings[0]).toMatchObject({ code: "too-wide", rows: 12 });
  });
});

describe("what cannot be read is refused in words", () => {
  test.each<[string, string, string]>([
    ["nothing", "  \n", "empty-log"],
    ["no titles", logText().split("\n").slice(1).join("\n"), "no-titles"],
    ["titles alone", PLAIN.titles.join(","), "no-rows"],
    ["no time", "bank V,bank A\n12.8,3\n12.7,4\n", "no-time"],
    ["no quantity", "time,remark\n2026-10-08T10:00,hello\n2026-10-08T10:10,hello\n", "no-quantity"],
    ["times of day alone", "time,bank V\n10:00,12.8\n10:10,12.7\n", "no-time"],
    ["one row", logText({}, 1), "one-row"],
    ["ten megabytes", `time,bank V\n${"x".repeat(10_000_001)}`, "log-too-large"],
    ["too many rows", `time,bank V\n${"1,2\n".repeat(400_001)}`, "too-many-rows"],
    ["a scenario", '{"format":"duskline-scenario"}', "no-titles"],
  ])("%s", (_, text, code) => {
    const { problems } = refused(readMeterLog(text));
    expect(problems.map((each) => each.code)).toEqual([code]);
    expect(problems[0]!.message).toMatch(/^[A-Z].*\.$/);
  });

  test("a mapping that names a column or zone that is not there", () => {
    expect(refused(readMeterLog(logText(), { columns: { time: "time", pvW: "sun" } })).problems[0]!.message).toContain(
      'pvW in the column "sun"',
    );
    expect(refused(readMeterLog(logText(), { zone: "Nowhere/Land" })).problems[0]!.code).toBe("no-such-zone");
  });

  test("rows of gaps only", () => {
    const gaps = logText().replace(/Z,.*/g, "Z,,,,,");
    expect(codes(read(gaps))).toEqual(Array.from({ length: 5 }, () => "empty-column"));
  });

  test("noise of any kind gives a log or problems, never an exception or a number that is none", () => {
    let state = 7;
    const draw = (n: number) => {
      state = Math.imul(state, 1664525) + 1013904223;
      return (state >>> 8) % n;
    };
    const pieces = [
      ",",
      ";",
      "\t",
      "\n",
      '"',
      "time",
      "12,5",
      "12.5",
      "-",
      "2026-10-08",
      "08/10/2026 10:00",
      "NaN",
      "1e999",
      "\u0000",
      "bank A",
    ];
    for (let round = 0; round < 300; round++) {
      const noise = Array.from({ length: 1 + draw(60) }, () => pieces[draw(pieces.length)]).join(draw(2) ? "" : ",");
      const reading = readMeterLog(round % 3 === 0 ? `time,bank V,PV W\n${noise}` : noise);
      if (!reading.ok) expect(reading.problems.length).toBeGreaterThan(0);
      else expect(reading.log.timeMs.every(Number.isFinite)).toBe(true);
    }
  });
});
