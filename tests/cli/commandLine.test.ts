import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { csvParse } from "d3-dsv";
import { afterAll, describe, expect, test } from "vitest";
import type * as z from "zod";
import { duskline } from "./duskline.ts";
import { Check, Explanation, Ledger, Trace } from "./printedJson.ts";
import { notWellFormed } from "./wellFormed.ts";

const GROVE = "scenarios/walnut-grove.json";
const MOOR = "scenarios/peat-moor.json";
const HUT = "scenarios/polar-hut.json";
const VERBS = ["trace", "ledger", "explain", "check"];
const folder = mkdtempSync(join(tmpdir(), "duskline-"));
afterAll(() => rmSync(folder, { recursive: true }));

const sum = (values: readonly number[]) => values.reduce((total, value) => total + value, 0);

/** Writes a changed copy of an example and returns where it lies. */
function written(name: string, change: (document: Record<string, unknown>) => void, from = GROVE): string {
  const document = JSON.parse(readFileSync(from, "utf8")) as Record<string, unknown>;
  change(document);
  const path = join(folder, name);
  writeFileSync(path, JSON.stringify(document));
  return path;
}

describe("help", () => {
  test("without a verb the overview is printed, and that is a wrong call; asked for, it is not", () => {
    for (const args of [[], ["help"], ["--help"], ["-h"]]) {
      const { code, out, err } = duskline(...args);
      expect(code).toBe(args.length === 0 ? 2 : 0);
      expect(err).toBe("");
      for (const verb of VERBS) expect(out).toMatch(new RegExp(`^  ${verb} SCENARIO`, "m"));
      expect(out).toMatch(/Exit codes: 0 .* 1 .* 2 /);
    }
  });

  test.each(VERBS)("%s --help names every option of its usage", (verb) => {
    const { code, out, err } = duskline(verb, "--help");
    expect(code).toBe(0);
    expect(err).toBe("");
    const [usage, ...rest] = out.split("\n");
    expect(usage).toMatch(new RegExp(`^duskline ${verb} SCENARIO`));
    const named = [...usage!.matchAll(/--[a-z]+/g)].map(([option]) => option);
    for (const option of [...named, "--variant", "--help"])
      expect(
        rest.some((line) => /^ {2}(?:-\w, )?(--[\w-]+)/.exec(line)?.[1] === option),
        option,
      ).toBe(true);
  });
});

describe("trace", () => {
  const { code, out, err } = duskline("trace", GROVE);

  test("prints verdict, days, lowest hour, and says that it is one run", () => {
    expect(code).toBe(0);
    expect(err).toBe("");
    const lines = out.trimEnd().split("\n");
    expect(lines[0]).toBe("Autumn weekend in the walnut grove · Walnut grove at Amsel Halt (invented)");
    expect(lines[2]).toMatch(/^The bank (holds|does not hold)/);
    expect(lines.filter((line) => /^(Thu 8|Fri 9|Sat 10|Sun 11) Oct /.test(line))).toHaveLength(4);
    expect(out).toMatch(/^Lowest: \d+ %, \d+ of 269 Ah, /m);
    expect(out).toMatch(/^Volts at the radios:\n( {2}.*\d+\.\d\d V at worst.*\n){3}/m);
    expect(lines.at(-1)).toBe("One run, not a chance: real days differ; odds puts a chance on it.");
  });

  test("the table's columns line up", () => {
    const lines = out.split("\n");
    const rule = lines.findIndex((line) => /^-+( {2}-+)+$/.test(line));
    const ends = [...lines[rule]!.matchAll(/-+/g)].map((dashes) => dashes.index + dashes[0].length);
    for (const line of lines.slice(rule + 1, rule + 5)) {
      for (const end of ends.slice(1)) expect(line.slice(end, end + 2).trim(), line).toBe("");
    }
  });

  test("a variant runs under its own name", () => {
    const meadow = duskline("trace", GROVE, "--variant", "meadow");
    expect(meadow.code).toBe(0);
    expect(meadow.out).toContain("Autumn weekend in the walnut grove, two folding panels in the meadow");
    expect(meadow.out).toMatch(/ meadow,\n|meadow, /);
  });

  const files: [path: string, steps: number][] = [
    [GROVE, 468],
    [MOOR, 408],
    [HUT, 1440],
  ];
  test.each(files)("--json of %s has the documented shape and adds up", (path, steps) => {
    const printed = duskline("trace", path, "--json");
    expect(printed.code).toBe(0);
    const json = Trace(steps).parse(JSON.parse(printed.out)) as z.infer<ReturnType<typeof Trace>>;
    const stepH = json.time.stepMs / 3_600_000;
    const wh = (watts: readonly number[]) => sum(watts) * stepH;
    // Six decimals a step: sums of a thousand steps are good to a milliwatt-hour.
    expect(sum(json.days.map((day) => day.solarWh))).toBeCloseTo(wh(json.steps.solarW), 2);
    expect(sum(json.days.map((day) => day.demandWh))).toBeCloseTo(wh(json.steps.demandW), 2);
    expect(sum(json.days.map((day) => day.unservedWh))).toBeCloseTo(json.verdict.unservedWh, 2);
    expect(json.ledger.solarWh).toBeCloseTo(wh(json.steps.solarW), 2);
    expect(wh(json.steps.solarW)).toBeCloseTo(sum(json.panels.map((panel) => wh(panel.busW))), 2);
    expect(sum(json.ledger.sources.map((source) => source.wh))).toBeCloseTo(
      sum(json.sources.map((source) => wh(source.busW))),
      2,
    );
    for (let i = 0; i < steps; i++) {
      const at = (values: readonly number[]) => values[i]!;
      const { solarW, spilledW, servedW, bankW, demandW, unservedW } = json.steps;
      const sources = sum(json.sources.map((source) => at(source.busW)));
      expect(at(solarW) - at(spilledW) + sources - at(bankW) - at(servedW)).toBeCloseTo(0, 4);
      expect(at(demandW) - at(servedW) - at(unservedW)).toBeCloseTo(0, 4);
    }
    expect(json.verdict.lowestShare).toBeCloseTo(Math.min(...json.chargeShare), 5);
    expect(json.verdict.endShare).toBeCloseTo(json.chargeShare.at(-1)!, 5);
    expect(json.verdict.holds).toBe(json.chargeShare.every((share) => share >= json.bank.reserveAh / json.bank.fullAh));
  });

  test("--csv parses back, and its sums are those of the JSON", () => {
    const path = join(folder, "hut.csv");
    const printed = duskline("trace", HUT, "--json", "--csv", path);
    const json = Trace(1440).parse(JSON.parse(printed.out));
    const rows = csvParse(readFileSync(path, "utf8"));
    expect(rows).toHaveLength(1440);
    expect(rows.columns).toEqual([
      "local",
      "utc",
      "charge_share",
      "stored_Ah",
      "bank_V",
      "bank_A",
      "bank_W",
      "solar_W",
      "spilled_W",
      "demand_W",
      "served_W",
      "served_always_W",
      "served_used_W",
      "served_sending_W",
      "unserved_W",
      "ghi_Wm2",
      "air_C",
      "panels_wall_W",
      "shade_wall_W",
      "source_generator_W",
      "radio_hf_V",
    ]);
    expect(rows[0]).toMatchObject({ local: "2027-01-22T12:00+01:00", utc: "2027-01-22T11:00:00.000Z" });
    for (const row of rows) {
      for (const name of rows.columns.slice(2)) expect(Number.isFinite(Number.parseFloat(row[name]!)), name).toBe(true);
    }
    const column = (name: string) => rows.map((row) => Number(row[name]));
    expect(column("solar_W")).toEqual(json.steps.solarW);
    expect(column("demand_W")).toEqual(json.steps.demandW);
    expect(column("unserved_W")).toEqual(json.steps.unservedW);
    expect(column("bank_W")).toEqual(json.steps.bankW);
    expect(column("charge_share")).toEqual(json.chargeShare.slice(0, -1));
    expect(sum(column("source_generator_W")) / 6).toBeCloseTo(json.ledger.sources[0]!.wh, 2);
    expect(sum(column("shade_wall_W")) / 6).toBeCloseTo(json.ledger.harvest[0]!.shadeLossWh, 2);
    expect(sum(column("panels_wall_W")) / 6).toBeCloseTo(json.ledger.solarWh, 2);
  });

  test("--svg is well-formed, says the verdict, and keeps strange names harmless", () => {
    for (const [name, from] of [
      ["grove.svg", GROVE],
      ["moor.svg", MOOR],
      ["hut.svg", HUT],
    ] as const) {
      const path = join(folder, name);
      expect(duskline("trace", from, "--svg", path).code).toBe(0);
      const svg = readFileSync(path, "utf8");
      expect(notWellFormed(svg)).toBeNull();
      expect(svg).toMatch(/^<svg xmlns="http:\/\/www\.w3\.org\/2000\/svg"/);
      const json = Trace(from === GROVE ? 468 : from === MOOR ? 408 : 1440).parse(
        JSON.parse(duskline("trace", from, "--json").out),
      );
      // Over the drawing that the page shows too, whose own titles are of the same class.
      const drawn = [...svg.matchAll(/<text class="title said"[^>]*>([^<]*)</g)].map(([, words]) => words).join(" ");
      expect(drawn).toBe(json.verdict.sentences[0]);
      for (const sentence of json.verdict.sentences) expect(svg).toContain(sentence);
      expect(svg).not.toMatch(/NaN|Infinity|undefined/);
    }
    const strange = written("strange.json", (document) => {
      document.name = `<script>&"'\u0007]]>`;
    });
    const path = join(folder, "strange.svg");
    expect(duskline("trace", strange, "--svg", path).code).toBe(0);
    const svg = readFileSync(path, "utf8");
    expect(notWellFormed(svg)).toBeNull();
    expect(svg).not.toContain("<script");
  });

  test("sixty days in steps of a minute are printed, written and drawn", () => {
    const path = written("long.json", (document) => {
      document.time = { start: "2026-06-01T00:00", end: "2026-07-31T00:00", stepMinutes: 1 };
      document.obstacles = [];
    });
    const { code, err } = duskline("trace", path, "--csv", join(folder, "long.csv"), "--svg", join(folder, "long.svg"));
    expect(err).toBe("");
    expect(code).toBe(0);
  });
});

test("the check of well-formedness sees what is wrong", () => {
  for (const wrong of [
    "<a>",
    "<a></b>",
    "<a b=c/>",
    "<a>&</a>",
    "<a>x</a>y",
    '<a b="1" b="2"/>',
    "<a>\u0001</a>",
    "<a><b</a>",
  ])
    expect(notWellFormed(wrong), wrong).not.toBeNull();
  expect(notWellFormed('<a b="1"><c/>x &amp; y</a>')).toBeNull();
});

describe("ledger", () => {
  test.each([GROVE, MOOR, HUT])("of %s adds up, line by line and as a whole", (path) => {
    const printed = duskline("ledger", path, "--json");
    expect(printed.code).toBe(0);
    const book = Ledger.parse(JSON.parse(printed.out));
    const served = book.wantedWh - book.unservedWh;
    expect(sum(book.loads.map((line) => line.totalWh))).toBeCloseTo(served, 6);
    expect(sum(book.loads.map((line) => line.share))).toBeCloseTo(1, 9);
    for (const line of book.loads) expect(line.alwaysWh + line.usedWh).toBeCloseTo(line.totalWh, 9);
    expect(book.loads.map((line) => line.totalWh)).toEqual(
      book.loads.map((line) => line.totalWh).sort((a, b) => b - a),
    );
    for (const line of book.harvest) expect(line.unshadedWh - line.shadeLossWh).toBeCloseTo(line.offeredWh, 6);
    const fromSources = sum(book.sources.map((source) => source.wh));
    expect(book.solarWh - book.spilledWh + fromSources + book.bankOutWh - book.bankInWh).toBeCloseTo(served, 6);
    expect(book.storedStartWh + book.bankInWh - book.bankOutWh - book.bankLossWh).toBeCloseTo(book.storedEndWh, 6);
  });

  test("prints each load with its share, the panels, and what became of the energy", () => {
    const { code, out, err } = duskline("ledger", HUT, "--variant", "both");
    expect([code, err]).toEqual([0, ""]);
    expect(out).toMatch(/panels and generator charging together: where the energy went in 240 h/);
    expect(out).toMatch(/^Heating pad in the battery box +1920 +0 +1920 +192 /m);
    expect(out).toMatch(/^Generator behind the woodpile: \d+ Wh, \d+\.\d L of fuel$/m);
    expect(out).toMatch(/^Sun offered \d+ Wh, of which 0 Wh were spilled; loads went without 0 Wh\.$/m);
  });
});

describe("explain", () => {
  test("opens one step, as text and as JSON of the same numbers", () => {
    const { code, out, err } = duskline("explain", GROVE, "--at", "2026-10-09T12:00");
    expect([code, err]).toEqual([0, ""]);
    const json = Explanation.parse(JSON.parse(duskline("explain", GROVE, "--at", "2026-10-09T12:00", "--json").out));
    expect(json.parts[0]!.title).toBe("Step 157 of 468: Fri 9 Oct 12:00 to 12:10, the sun taken in the middle");
    for (const part of json.parts) {
      expect(out).toContain(part.title);
      for (const number of part.numbers) expect(out).toContain(number.name);
    }
  });

  test("asks for a time that lies in the event", () => {
    const without = duskline("explain", GROVE);
    expect(without).toMatchObject({
      code: 2,
      out: "",
      err: "explain needs a time: write --at 2026-10-09T12:00, for example.\n",
    });
    const late = duskline("explain", GROVE, "--at", "2026-10-12T00:00");
    expect(late.code).toBe(2);
    expect(late.err).toMatch(
      /outside the event, which runs from 2026-10-08T10:00 to 2026-10-11T16:00 \(Europe\/Vienna\)/,
    );
    for (const word of ["noon", "12:00", "2026-10-09T12:00Z", ""]) {
      const wrong = duskline("explain", GROVE, "--at", word);
      expect([wrong.code, wrong.out]).toEqual([2, ""]);
      expect(wrong.err).toMatch(/no local time; write it as 2026-10-09T12:00/);
    }
  });
});

describe("check", () => {
  test.each([GROVE, MOOR, HUT])("%s is right, in words and as JSON", (path) => {
    const { code, out, err } = duskline("check", path);
    expect([code, err]).toEqual([0, ""]);
    expect(out).toMatch(/ is right: .* steps of 10 min\. Its variants \(.*\) are right as well\./);
    expect(Check.parse(JSON.parse(duskline("check", path, "--json").out))).toMatchObject({ ok: true, problems: [] });
  });

  test("a wrong scenario ends with code 1, one sentence a line, and the same as JSON", () => {
    const path = written("wrong.json", (document) => {
      document.bank = { chemistry: "lfp", blockAh: -1, startShare: 2 };
    });
    const { code, out, err } = duskline("check", path);
    expect([code, out]).toEqual([1, ""]);
    const lines = err.trimEnd().split("\n");
    expect(lines).toHaveLength(3);
    const printed = duskline("check", path, "--json");
    const json = Check.parse(JSON.parse(printed.out));
    expect([printed.code, printed.err, json.ok]).toEqual([1, "", false]);
    expect(json.problems.map((problem) => problem.message)).toEqual(lines);
  });

  test("a wrong variant is found and named", () => {
    const path = written("variant.json", (document) => {
      document.variants = [{ id: "deep", name: "deep", changes: [{ at: "bank.reserveShare", to: 3 }] }];
    });
    const { code, err } = duskline("check", path);
    expect(code).toBe(1);
    expect(err).toMatch(/^Variant deep: bank\.reserveShare is 3 but must be a number from 0 to 0\.95/);
    expect(duskline("trace", path).code).toBe(0);
  });
});

describe("a weather file beside the scenario", () => {
  const inEvent = (document: Record<string, unknown>) => {
    document.weather = { kind: "file", file: "sky.csv" };
    document.variants = [];
  };

  test("that is not there is the scenario's problem", () => {
    const path = written("file.json", inEvent);
    rmSync(join(folder, "sky.csv"), { force: true });
    for (const verb of ["trace", "check", "ledger"]) {
      const { code, out, err } = duskline(verb, path);
      expect([code, out]).toEqual([1, ""]);
      expect(err).toMatch(/^weather\.file is "sky\.csv", which lies beside the scenario: There is no file .*sky\.csv/);
    }
  });

  test("that is wrong is refused, and that is right is used", () => {
    const path = written("file.json", inEvent);
    writeFileSync(join(folder, "sky.csv"), "time,glo\n2026-10-08T00:00Z,1\n");
    expect(duskline("trace", path)).toMatchObject({ code: 1, out: "" });
    const rows = Array.from({ length: 96 }, (_, h) => {
      const time = new Date(Date.UTC(2026, 9, 8, h)).toISOString().slice(0, 16);
      return `${time}Z,${h % 24 > 6 && h % 24 < 15 ? 250 : 0}`;
    });
    writeFileSync(join(folder, "sky.csv"), ["time,ghi", ...rows].join("\n"));
    const { code, out } = duskline("trace", path);
    expect(code).toBe(0);
    expect(out).toMatch(/^Weather: The file has no temperature\./m);
  });
});

describe("a wrong call is one sentence, code 2 and no stack trace", () => {
  const calls: [args: string[], says: RegExp][] = [
    [["fly", GROVE], /^There is no verb "fly"\. Known: new, trace, odds, .*ledger, explain, check/],
    [["trace"], /^trace needs a scenario file: duskline trace SCENARIO/],
    [["trace", GROVE, MOOR], /^trace takes one scenario file, and "scenarios\/peat-moor\.json" is one too many/],
    [
      ["trace", GROVE, "--speed"],
      /--speed.*Known here: --variant, --json, --csv, --svg, --member, --seed, --output, --weather-anywhere, --force, --help/,
    ],
    [["trace", GROVE, "--variant"], /--variant.*Known here/],
    [["trace", GROVE, "--json=yes"], /--json.*Known here/],
    [["trace", "nowhere.json"], /^There is no file nowhere\.json; check the name and the folder/],
    [["trace", "scenarios"], /^scenarios is a folder; name a file in it/],
    [["trace", `${GROVE}/x`], /could not be read \(ENOTDIR\)/],
    [["trace", "x".repeat(5000)], /could not be read \(ENAMETOOLONG\)/],
    [["trace", GROVE, "--csv", "nowhere/x.csv"], /^nowhere\/x\.csv could not be written \(ENOENT\)/],
    [["trace", GROVE, "--svg", "scenarios"], /^scenarios could not be written \(EISDIR\)/],
  ];
  test.each(calls)("%j", (args, says) => {
    const { code, out, err } = duskline(...args);
    expect(err).toMatch(says);
    expect(err.trimEnd().split("\n")).toHaveLength(1);
    expect([code, out]).toEqual([2, ""]);
  });

  test("a file of more than 10 MB is not read", () => {
    const path = join(folder, "large.json");
    writeFileSync(path, Buffer.alloc(10_000_001, "x"));
    const { code, out, err } = duskline("check", path);
    expect([code, out]).toEqual([2, ""]);
    expect(err).toMatch(/has 10\.0 MB; files of up to 10 MB are read/);
  });

  test.each(["", "{", "[]", "null", "\u0000\u0001", '{"format":"duskline-scenario"}'])(
    "a file that holds %j is a wrong scenario for every verb, code 1",
    (text) => {
      const path = join(folder, "broken.json");
      writeFileSync(path, text);
      for (const verb of VERBS) {
        const { code, out, err } = duskline(verb, path, ...(verb === "explain" ? ["--at", "2026-10-09T12:00"] : []));
        expect([code, out]).toEqual([1, ""]);
        expect(err.length).toBeGreaterThan(20);
        expect(err).not.toMatch(/^\s+at |Error:|fault of duskline|Invalid/m);
      }
    },
  );

  test("an unknown variant is the scenario's problem and names those there are", () => {
    const { code, err } = duskline("ledger", GROVE, "--variant", "moon");
    expect(code).toBe(1);
    expect(err).toBe('The scenario has no variant "moon" (meadow, one-station, two-blocks); write one of its ids.\n');
  });
});
