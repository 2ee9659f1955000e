import { csvParseRows } from "d3-dsv";
import { beforeAll, expect, test } from "vitest";
import { actualCsv } from "../../../engine/answers/actual/actualCsv.ts";
import { actualOf } from "../../../engine/answers/actual/ask.ts";
import { daysCsv } from "../../../engine/answers/days/dayRows.ts";
import { driversOf } from "../../../engine/answers/drivers/ask.ts";
import { driversCsv } from "../../../engine/answers/drivers/rows.ts";
import { KIND_NAMES } from "../../../engine/answers/kinds.ts";
import { ledgerCsv } from "../../../engine/answers/ledger/rows.ts";
import { runOf } from "../../../engine/answers/run/ask.ts";
import { stepsCsv } from "../../../engine/answers/run/runCsv.ts";
import { planColumns } from "../../../engine/answers/versus/planColumns.ts";
import { versusCsv } from "../../../engine/answers/versus/versusCsv.ts";
import type { Drawing } from "../../../engine/drawing/drawing.ts";
import { html } from "../../../engine/drawing/html.ts";
import { svgDocument } from "../../../engine/drawing/svgDocument.ts";
import type { Entry, Notebook } from "../../../engine/notebook/notebook.ts";
import { drawingRules } from "../../../engine/report/drawingRules.ts";
import type { ReportPage } from "../../../engine/report/reportPage.ts";
import { tellsOf } from "../../../engine/report/tellsOf.ts";
import { readLog } from "../../../explorer/entries/actual/readLog.ts";
import { exampleNotebook } from "../../../explorer/notebook/exampleNotebook.ts";
import { slidesOf } from "../../../explorer/present/slides.ts";
import { FORBIDDEN, notWellFormed } from "../../cli/wellFormed.ts";
import { exampleLog } from "../../explorer/actual/exampleLog.ts";
import { EXAMPLE } from "../../explorer/exampleRun.ts";
import { reportOf } from "../../explorer/report/reportOf.ts";

/**
 * What XML 1.0 (5th edition, production 2 "Char") forbids, with half a surrogate pair on either side; what means something in markup; the end
 * of a CDATA section; and a sign that turns the direction of what follows.
 */
const HOSTILE = `\u0007\u0000\u000b<b a="&'">]]>\ud800\udc00\ud800x\udc00\ufffe\uffff\u202e&#1;`;

/** The same with every name, title, operator and mark in it hostile, and still apart from the others. */
function withHostileNames<T>(value: T): T {
  const turned = (key: string, inner: unknown): unknown => {
    if (typeof inner === "string") return /^(name|title|by|placeName)$/.test(key) ? `${HOSTILE}${inner}` : inner;
    if (Array.isArray(inner)) return inner.map((each) => turned(key, each));
    if (typeof inner !== "object" || inner === null) return inner;
    return Object.fromEntries(Object.entries(inner).map(([name, each]) => [name, turned(name, each)]));
  };
  return turned("", value) as T;
}

async function hostileNotebook(): Promise<Notebook> {
  const example = exampleNotebook("probe");
  const { text } = await exampleLog();
  const { log } = readLog({
    name: "meter.csv",
    text,
    mapping: null,
    remembered: [],
    document: EXAMPLE,
    takenAt: "2026-10-12T10:00",
  });
  const others: Entry[] = [
    { id: "limits", kind: "limits", title: "Wiring", doc: { scenario: "roof", dropIn100: 1 } },
    {
      id: "readings",
      kind: "readings",
      title: "Readings",
      doc: { scenario: "roof", readings: [{ at: "2026-10-10T08:00", outAh: 160, by: "Ada" }] },
    },
    { id: "actual", kind: "actual", title: "Actual", doc: { scenario: "roof", log: log! } },
    {
      id: "reach",
      kind: "reach",
      title: "Reach",
      doc: { scenario: "roof", targetIn100: 95, most: "money", locked: [], lent: ["meadow"] },
    },
    {
      id: "packing",
      kind: "packing",
      title: "Packing",
      doc: {
        scenario: "roof",
        targetIn100: 90,
        most: "mass",
        lent: ["meadow"],
        mostMassKg: 60,
        owned: [
          { id: "b", kind: "battery", name: "Block", count: 1, chemistry: "lfp", blockAh: 280 },
          { id: "f", kind: "panel", name: "Fold", count: 2, ratedW: 120, as: "meadow" },
          { id: "g", kind: "generator", name: "Motor", count: 1, chargerA: 20, fuelL: 5, get: "borrow" },
        ],
      },
    },
  ];
  const there = new Set(example.entries.map(({ kind }) => kind));
  const entries = [...example.entries, ...others.filter(({ kind }) => !there.has(kind))];
  return withHostileNames({ ...example, members: 40, entries });
}

let page: ReportPage;
let report: string;
beforeAll(async () => {
  const made = await reportOf(await hostileNotebook());
  if (!made.ok) throw new Error(made.sentences.join(" "));
  expect(made.wrong).toEqual([]);
  page = made.page;
  report = made.html;
});

/** What no file may hold: forbidden characters, and the name as markup. */
function faults(text: string): string | null {
  return notWellFormed(text) ?? (/<b[ >]|&#1;/.test(text) ? "a name became markup" : null);
}

test("every kind of entry is there with names that mean harm, and they are in what is told", () => {
  expect(new Set(page.notebook().entries.map(({ kind }) => kind))).toEqual(new Set(KIND_NAMES));
  expect(page.notebook().scenarios.every(({ name }) => name.includes("\ufffe"))).toBe(true);
});

test("each kind's drawing, section and slide is XML, and so is each drawing as a file", async () => {
  const tells = await tellsOf(page.notebook());
  const drawn: string[] = [];
  for (const { kind, doc } of page.notebook().entries) {
    const { section, drawing } = tells.get(kind)!;
    const part = html`<div>${section(page, doc)}</div>`.text;
    expect([kind, faults(part)]).toEqual([kind, null]);
    const picture: Drawing | null = drawing?.(page, doc) ?? null;
    if (picture === null) continue;
    drawn.push(kind);
    expect([kind, faults(svgDocument(picture, drawingRules))]).toEqual([kind, null]);
  }
  expect(drawn).toEqual(expect.arrayContaining(["forecast", "versus", "sizing", "drivers", "run", "ledger", "shade"]));
  expect(drawn).toEqual(expect.arrayContaining(["readings", "actual", "reach", "packing"]));
  for (const { id, body, chart } of slidesOf(page, tells)) {
    const slide = html`<div>${body}<svg>${chart?.drawing.body}</svg></div>`.text;
    expect([id, faults(slide)]).toEqual([id, null]);
  }
});

test("a report with such names holds no forbidden character, and its pictures are XML", () => {
  expect(report).not.toMatch(FORBIDDEN);
  const pictures = report.match(/<svg [\s\S]*?<\/svg>/g) ?? [];
  expect(pictures.length).toBeGreaterThan(8);
  for (const picture of pictures) expect(faults(picture)).toBeNull();
  const [main] = report.match(/<main>[\s\S]*<\/main>/)!;
  expect(faults(main)).toBeNull();
  expect(report).toContain("&lt;b a=&quot;&amp;&#39;&quot;&gt;]]&gt;");
});

test("names like these stay one cell each in every CSV", () => {
  const run = runOf(page, "roof").result!;
  const texts = [
    stepsCsv(run),
    daysCsv(run),
    ledgerCsv(run),
    versusCsv(planColumns(page, { scenarios: ["roof", "meadow"] })),
    driversCsv(driversOf(page, "roof").result!.report!),
    actualCsv(actualOf(page, page.notebook().entries.find((entry) => entry.kind === "actual")!.doc as never).result!),
  ];
  for (const text of texts) {
    const named = csvParseRows(text)
      .flat()
      .filter((cell) => cell.includes("\u0007"));
    expect(named.every((cell) => cell.includes(HOSTILE))).toBe(true);
    // A name that broke out of its cell would leave its quotation mark or its end in another.
    expect(text.split("\u0007").length - 1).toBe(named.reduce((sum, cell) => sum + cell.split(HOSTILE).length - 1, 0));
  }
});
