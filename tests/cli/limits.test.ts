import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, describe, expect, test } from "vitest";
import * as z from "zod";
import { duskline } from "./duskline.ts";

const GROVE = "scenarios/walnut-grove.json";
const MOOR = "scenarios/peat-moor.json";
const HUT = "scenarios/polar-hut.json";
const PAGE = readFileSync("docs/command-line.md", "utf8");
const folder = mkdtempSync(join(tmpdir(), "duskline-limits-"));
afterAll(() => rmSync(folder, { recursive: true }));

const text = z.string().min(1);
const LINKS = ["pack", "main cable", "main fuse and switch", "lead", "fuse and plugs of the lead"];
const lost = z.strictObject({ link: z.enum(LINKS), lostV: z.number().min(0) });
/** The shape that docs/command-line.md promises, written down a second time and on purpose. */
const Limits = z.strictObject({
  format: z.literal("duskline-limits"),
  version: z.literal(1),
  scenario: z.strictObject({ name: text, place: z.looseObject({ name: text }) }),
  remarks: z.array(text),
  lowestShare: z.number().min(0).max(1),
  lowestFrom: z.enum(["run", "reserve", "given"]),
  openV: z.number().positive(),
  coldestC: z.number(),
  coldestFrom: z.enum(["event", "record", "given"]),
  warmestC: z.number(),
  targetDropShare: z.number(),
  branches: z
    .array(
      z.strictObject({
        id: text,
        about: text,
        peakA: z.number().min(0),
        continuousA: z.number().min(0),
        sending: z.array(text),
      }),
    )
    .min(2),
  runs: z.array(
    z.strictObject({
      id: text,
      about: text,
      size: z.string().regex(/^[\d/.]+ (AWG|mm²)$/),
      isAssumed: z.boolean(),
      oneWayM: z.number(),
      tempC: z.number(),
      currentA: z.number(),
      dropV: z.number(),
      dropShare: z.number(),
      smallest: z.string().nullable(),
    }),
  ),
  wiring: z.array(
    z.strictObject({
      number: z.number().int().min(1),
      id: text,
      kind: z.enum([
        "string",
        "main",
        "converterIn",
        "converterOut",
        "panels",
        "controller",
        "source",
        "station",
        "gear",
      ]),
      name: text,
      box: z.strictObject({ title: text, detail: z.string() }).nullable(),
      lastingA: z.number().min(0),
      peakA: z.number().min(0),
      fuseA: z.number().nullable(),
      needsFuse: z.boolean(),
      size: z.string().nullable(),
      isAssumed: z.boolean(),
      oneWayM: z.number().nullable(),
      dropShare: z.number().nullable(),
      verdict: z.enum(["over", "close", "unknown", "assumed", "within"]),
      changes: z.array(text),
    }),
  ),
  rated: z.strictObject({ switchA: z.number().nullable(), distributionA: z.number().nullable() }),
  radios: z.array(
    z.strictObject({
      id: text,
      name: text,
      minimumV: z.number(),
      radioV: z.number(),
      sending: z.array(text),
      links: z.array(lost).length(5),
      weakLink: lost,
    }),
  ),
  lines: z
    .array(
      z.strictObject({
        id: z.string().regex(/^[a-z-]+(\/[\w/-]+)?$/),
        run: text.nullable(),
        about: text,
        quantity: text,
        value: z.number().nullable(),
        unit: z.enum(["A", "V", "m", "°C", "share", ""]),
        limit: z.number().nullable(),
        bound: z.enum(["most", "least"]),
        marginShare: z.number().nullable(),
        verdict: z.enum(["over", "close", "unknown", "assumed", "within"]),
        isAssumed: z.boolean(),
        rule: z.strictObject({ words: text, source: text }),
        change: text,
        cautions: z.array(text),
      }),
    )
    .min(8),
  cautions: z.array(z.strictObject({ id: text, title: text, words: text, why: z.string().nullable() })).min(4),
  sentences: z.array(text).min(1),
});

const jsonOf = (...args: string[]) => Limits.parse(JSON.parse(duskline("limits", ...args, "--json").out));

describe("limits", () => {
  test.each([GROVE, MOOR, HUT])("%s: a report within 100 columns, cautions last, code 0", (path) => {
    const { code, out, err } = duskline("limits", path);
    expect([code, err]).toEqual([0, ""]);
    for (const line of out.split("\n")) expect([...line].length, line).toBeLessThanOrEqual(100);
    const [what, cautions] = [out.indexOf("\nRules:\n"), out.indexOf("\nCautions:\n")];
    expect(what).toBeGreaterThan(0);
    expect(cautions).toBeGreaterThan(what);
    expect(out.slice(0, what)).toMatch(/A plan and not a permit/);
    for (const word of ["Fire and short circuit", "RF exposure", "Lifting", "Roof, ladder and wind"]) {
      expect(out.slice(cautions).replace(/\s+/g, " ")).toContain(word);
    }
    expect(out).not.toMatch(/NaN|Infinity|undefined|-0 /);
  });

  test("every line is a row with its rule's number, and every rule a source", () => {
    const { lines } = jsonOf(GROVE);
    const { out } = duskline("limits", GROVE);
    const rows = out.split("\n").filter((line) => /^(OVER|close|unknown|assumed|within) /.test(line));
    expect(rows).toHaveLength(lines.length);
    const rules = new Set(lines.map(({ rule }) => rule.words)).size;
    for (const row of rows) expect(Number(/\d+$/.exec(row)![0])).toBeLessThanOrEqual(rules);
    const printed = out.slice(out.indexOf("Rules:"), out.indexOf("Cautions:"));
    expect([...printed.matchAll(/^ {2}\d+\. /gm)]).toHaveLength(rules);
    expect([...printed.replace(/\s+/g, " ").matchAll(/ Source: /g)]).toHaveLength(rules);
  });

  test("the moor's flat lead block is over its limit, which is an answer and no error", () => {
    const moor = jsonOf(MOOR);
    expect(moor.lines[0]).toMatchObject({ verdict: "over" });
    const volts = moor.lines.find(({ id }) => id === "radio-volts/hf")!;
    expect(volts.value!).toBeLessThan(volts.limit!);
    expect(volts.change).toMatch(/no charge of this bank is enough/);
    const full = jsonOf(MOOR, "--charge", "100").lines.find(({ id }) => id === "radio-volts/hf")!;
    expect(full.value! - full.limit!).toBeLessThan(0.25); // the room that a worn plug takes
    expect(duskline("limits", MOOR).out).toMatch(/^OVER +lead of HF in the tent/m);
  });

  test("the hut's LFP bank is kept warm; left open, the cold locks it with the charger on", () => {
    expect(jsonOf(HUT).lines.find(({ id }) => id === "cold-charge")!.verdict).toBe("within");
    const cold = jsonOf(HUT, "--variant", "cold-box").lines.find(({ id }) => id === "cold-charge")!;
    expect(cold.verdict).toBe("over");
    expect(jsonOf(HUT).cautions.map(({ id }) => id)).toEqual(expect.arrayContaining(["fumes", "mains", "lithium"]));
    expect(jsonOf(GROVE).cautions.map(({ id }) => id)).not.toContain("fumes");
  });

  test("the options move what they say", () => {
    const dropped = jsonOf(GROVE, "--drop", "1").lines.filter(
      ({ id, verdict }) => /^drop/.test(id) && verdict === "over",
    );
    // All but the main feed, which is short and thick.
    expect(dropped.map(({ id }) => id).sort()).toEqual(
      ["controller/roof", "gear", "lead/hf-data", "lead/hf-run", "lead/vhf", "panels/roof"].map((run) => `drop/${run}`),
    );
    expect(jsonOf(GROVE, "--drop", "10").targetDropShare).toBe(0.1);
    const full = jsonOf(GROVE, "--charge", "100");
    expect(full).toMatchObject({ lowestShare: 1, lowestFrom: "given" });
    expect(full.radios[0]!.radioV).toBeGreaterThan(jsonOf(GROVE).radios[0]!.radioV);
    const cold = jsonOf(GROVE, "--coldest=-25");
    expect(cold).toMatchObject({ coldestC: -25, coldestFrom: "given" });
    expect(cold.lines.find(({ id }) => id === "panel-volts/roof")!.value).toBeCloseTo(24.3 * 1.2, 6);
  });

  test("--sheet writes a page to print or a picture, and never over what is there", () => {
    const page = join(folder, "sheet.html");
    const written = duskline("limits", GROVE, "--sheet", page);
    expect([written.code, written.err]).toEqual([0, ""]);
    const text = readFileSync(page, "utf8");
    expect(text).toMatch(/^<!doctype html>/);
    expect(text).toContain("Walnut grove at Amsel Halt (invented), Thu 8 to Sun 11 October 2026.");
    expect([...text.matchAll(/<td class="number">/g)]).toHaveLength(jsonOf(GROVE).wiring.length);
    const again = duskline("limits", GROVE, "--sheet", page);
    expect([again.code, again.out]).toEqual([2, ""]);
    expect(again.err).toMatch(/is there already; name another file, or write --force/);
    expect(duskline("limits", GROVE, "--sheet", page, "--force").code).toBe(0);
    const picture = join(folder, "sheet.svg");
    expect(duskline("limits", GROVE, "--sheet", picture).code).toBe(0);
    expect(readFileSync(picture, "utf8")).toMatch(/^<svg xmlns=.*aria-label="One-line diagram: seven runs/);
    const wrong = duskline("limits", GROVE, "--sheet", join(folder, "sheet.pdf"));
    expect([wrong.code, wrong.out]).toEqual([2, ""]);
    expect(wrong.err).toMatch(/but must end in \.html \(a page to print\) or \.svg \(a picture\)\.\n$/);
  });

  test("a wrong number is a wrong call, a wrong scenario is one", () => {
    for (const [option, word] of [
      ["drop", "three"],
      ["drop", "0"],
      ["charge", "101"],
      ["coldest", ""],
    ]) {
      const { code, out, err } = duskline("limits", GROVE, `--${option}`, word!);
      expect([code, out]).toEqual([2, ""]);
      expect(err).toMatch(new RegExp(`^--${option} is "${word}" but must be a number from .*\\.\\n$`));
    }
    const path = join(folder, "wrong.json");
    const document = JSON.parse(readFileSync(GROVE, "utf8")) as { mainFeed: Record<string, unknown> };
    document.mainFeed.fuseA = -5;
    writeFileSync(path, JSON.stringify(document));
    const { code, out, err } = duskline("limits", path);
    expect([code, out]).toEqual([1, ""]);
    expect(err).toMatch(/^mainFeed\.fuseA is -5 but must be a number from 1 to 1000 A \(rating of the main fuse\)/);
  });

  test("the page names every field of the JSON", () => {
    const names = [...JSON.stringify(z.toJSONSchema(Limits)).matchAll(/"required":\[([^\]]*)\]/g)].flatMap(([, list]) =>
      [...list!.matchAll(/"(\w+)"/g)].map(([, name]) => name!),
    );
    expect(new Set(names).size).toBeGreaterThan(30);
    for (const name of new Set(names)) expect(PAGE, name).toContain(`\`${name}\``);
  });
});
