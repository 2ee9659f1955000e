import { existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeAll, expect, test } from "vitest";
import { exampleNotebook } from "../../explorer/notebook/exampleNotebook.ts";
import { htmlOf } from "../explorer/report/reportOf.ts";
import { duskline } from "./duskline.ts";

const example = { ...exampleNotebook("example"), members: 40 };
let folder: string;
const at = (name: string) => join(folder, name);
const written = (name: string, value: unknown) => {
  writeFileSync(at(name), typeof value === "string" ? value : JSON.stringify(value));
  return at(name);
};
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), "duskline-report-"));
});
afterAll(() => rmSync(folder, { recursive: true }));

test("a notebook becomes one file, on all cores the same as in one thread", async () => {
  const call = duskline("report", written("notebook.json", example), "-o", at("report.html"));
  expect(call).toMatchObject({ code: 0, err: "" });
  expect(call.out).toBe(`${at("report.html")} is written: ${example.entries.length} entries, 40 members, seed 4127.\n`);
  expect(readFileSync(at("report.html"), "utf8")).toBe(await htmlOf(example));
});

test("the wrong call ends with 2, the wrong notebook with 1, each with a sentence, and nothing is written", () => {
  const good = written("good.json", example);
  for (const [args, sentence] of [
    [[good], /report needs the name of the file to write/],
    [[], /report needs a notebook file/],
    [[at("nowhere.json"), "-o", at("x.html")], /There is no file/],
    [[good, good, "-o", at("x.html")], /one notebook file/],
    [[good, "-o", join(folder, "nowhere", "x.html")], /could not be written/],
    [[good, "--variant", "meadow", "-o", at("x.html")], /Unknown option .--variant.*Known here/],
  ] as const) {
    const call = duskline("report", ...args);
    expect(call.err).toMatch(sentence);
    expect(call.code).toBe(2);
  }
  for (const [value, sentence] of [
    ["{", /is not JSON/],
    [{ format: "duskline-scenario" }, /format should be "duskline-notebook"/],
    [{ ...example, version: 99 }, /newer duskline/],
    [`{"__proto__": {"x": 1}, "format": "duskline-notebook"}`, /__proto__/],
    [`${"[".repeat(60)}${"]".repeat(60)}`, /nests deeper/],
  ] as const) {
    const call = duskline("report", written("bad.json", value), "-o", at("x.html"));
    expect(call.err).toMatch(sentence);
    expect(call.code).toBe(1);
  }
  expect(existsSync(at("x.html"))).toBe(false);
});

test("a scenario that does not work out ends with 1, and the report says it as well", () => {
  const [roof] = example.scenarios;
  const lost = { id: "lost", name: "Lost", basedOn: roof!.id, changes: [{ at: "bank.blockAh", to: -1 }] };
  const notebook = {
    ...example,
    scenarios: [roof, lost],
    entries: [{ id: "run", kind: "run", title: "Run", doc: { scenario: "lost" } }],
  };
  const call = duskline("report", written("lost.json", notebook), "-o", at("lost.html"));
  expect(call.code).toBe(1);
  expect(call.err).toMatch(/blockAh/);
  expect(readFileSync(at("lost.html"), "utf8")).toMatch(/<p class="wrong">[^<]*blockAh/);
});

test("a weather file comes out of the notebook, or lies beside it", () => {
  const [roof] = example.scenarios;
  if (roof === undefined || !("document" in roof)) throw new Error("the first scenario has a document");
  const rows = Array.from({ length: 120 }, (_, h) => {
    const at = new Date(Date.UTC(2026, 9, 7) + h * 3_600_000).toISOString().slice(0, 16);
    const hour = h % 24;
    return `${at}Z,${hour > 6 && hour < 17 ? 300 : 0},12`;
  });
  const weather = ["# latitude: 46.9", "# longitude: 15.6", "time,ghi,temp_c", ...rows].join("\n");
  const scenarios = [
    { ...roof, document: { ...roof.document, weather: { kind: "file", file: "october.csv" }, variants: [] } },
  ];
  const entries = [{ id: "run", kind: "run", title: "Run", doc: { scenario: roof.id } }];
  const lacking = duskline("report", written("weather.json", { ...example, scenarios, entries }), "-o", at("w.html"));
  expect(lacking.code).toBe(1);
  expect(lacking.err).toMatch(/october\.csv/);
  written("october.csv", weather);
  const beside = duskline("report", at("weather.json"), "-o", at("w.html"), "--force");
  expect(beside).toMatchObject({ code: 0, err: "" });
  const found = readFileSync(at("w.html"), "utf8");
  rmSync(at("october.csv"));
  const weatherFiles = [{ name: "october.csv", text: weather }];
  const kept = written("kept.json", { ...example, scenarios, entries, weatherFiles });
  expect(duskline("report", kept, "-o", at("k.html"))).toMatchObject({ code: 0, err: "" });
  expect(readFileSync(at("k.html"), "utf8")).toBe(found);
});

test("help names what it takes", () => {
  expect(duskline("report", "--help").out).toMatch(/report NOTEBOOK -o FILE\.html[\s\S]*-o, --output/);
  expect(duskline("--help").out).toContain("report NOTEBOOK");
});
