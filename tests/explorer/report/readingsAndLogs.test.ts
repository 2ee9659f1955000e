import { expect, test } from "vitest";
import { MOST_LOG_ROWS } from "../../../engine/answers/notebookLimits.ts";
import type { Entry, Notebook } from "../../../engine/notebook/notebook.ts";
import { readNotebook } from "../../../engine/notebook/readNotebook.ts";
import { readLog } from "../../../explorer/entries/actual/readLog.ts";
import { exampleNotebook } from "../../../explorer/notebook/exampleNotebook.ts";
import { exampleLog } from "../actual/exampleLog.ts";
import { EXAMPLE } from "../exampleRun.ts";
import { htmlOf } from "./reportOf.ts";

const READINGS: Entry = {
  id: "readings",
  kind: "readings",
  title: "Where do we stand?",
  doc: { scenario: "roof", readings: [{ at: "2026-10-10T08:00", outAh: 160, by: "Ada <b>" }] },
};

async function logEntry(): Promise<Extract<Entry, { kind: "actual" }>> {
  const { text } = await exampleLog();
  const asked = {
    name: "meter.csv",
    text,
    mapping: null,
    remembered: [],
    document: EXAMPLE,
    takenAt: "2026-10-12T10:00",
  };
  const { log } = readLog(asked);
  return { id: "actual", kind: "actual", title: "How good was the plan?", doc: { scenario: "roof", log: log! } };
}

const holding = (entries: readonly Entry[]): Notebook => ({
  ...exampleNotebook("probe"),
  members: 100,
  entries: [...entries],
});

test("limits, readings and a log stand in a report with their pictures, and names in them are no markup", async () => {
  const limits: Entry = { id: "limits", kind: "limits", title: "Wiring", doc: { scenario: "roof", dropIn100: 1 } };
  const report = (await htmlOf(holding([limits, READINGS, await logEntry()]))).replaceAll("\u202f", " ");
  expect(report).toMatch(/things? (is|are) over (its|their) limit: /);
  expect(report).toContain("Rules and where they come from");
  expect(report).toMatch(/from Sat 10 08:00 on the bank holds to Sun 16:00 in/);
  expect(report).toContain("read by Ada &lt;b&gt;");
  expect(report).toContain('reading-mark reading-latest"');
  expect(report).toContain("What can still be done");
  expect(report).toMatch(/load<\/|load took most|load gave most/);
  expect(report).toContain("Draw between transmissions");
  expect([...report.matchAll(/<svg class="drawing"/g)]).toHaveLength(3);
  expect(report).not.toMatch(/NaN|undefined|notebook only/);
});

test("a notebook whose readings or log leave their bounds is refused with the place", async () => {
  const refusal = (notebook: unknown) => {
    const read = readNotebook(JSON.stringify(notebook));
    return read.ok ? "read" : read.sentences.join(" ");
  };
  const actual = await logEntry();
  expect(refusal(holding([READINGS, actual]))).toBe("read");
  const reading = (part: object) => ({
    ...READINGS,
    doc: { scenario: "roof", readings: [{ at: "2026-10-10T08:00", ...part }] },
  });
  expect(refusal(holding([reading({ chargeShare: 2 }) as Entry]))).toContain("entries.0.doc.readings.0.chargeShare");
  expect(refusal(holding([reading({ at: "yesterday" }) as Entry]))).toContain("2026-10-09T18:30");
  expect(refusal(holding([reading({ charm: 1 }) as Entry]))).toContain("charm");
  const long = {
    ...actual,
    doc: { ...actual.doc, log: { ...actual.doc.log!, atMinutes: new Array(MOST_LOG_ROWS + 1).fill(0) } },
  };
  expect(refusal(holding([long]))).toContain("atMinutes");
  const script = { ...actual, doc: { ...actual.doc, log: { ...actual.doc.log!, stamp: "<script>" } } };
  expect(refusal(holding([script as unknown as Entry]))).toContain("stamp");
});
