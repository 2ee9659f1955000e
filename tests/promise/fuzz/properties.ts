import { readFileSync } from "node:fs";
import fc from "fast-check";
import { noteHtml } from "../../../engine/answers/note/noteHtml.ts";
import { readMeasuredGear } from "../../../engine/gear/measuredGear.ts";
import { searchGear } from "../../../engine/gear/searchGear.ts";
import { readReadings } from "../../../engine/learn/readReadings.ts";
import { readMeterMapping } from "../../../engine/meter/meterMapping.ts";
import { readMeterLog } from "../../../engine/meter/readMeterLog.ts";
import { readNotebook } from "../../../engine/notebook/readNotebook.ts";
import { scenarioDocument } from "../../../engine/notebook/scenarioDocument.ts";
import { readWeatherFile } from "../../../engine/place/readWeatherFile.ts";
import { readScenario } from "../../../engine/scenario/readScenario.ts";
import { timeGrid } from "../../../engine/scenario/timeGrid.ts";
import { exampleNotebook } from "../../../explorer/notebook/exampleNotebook.ts";
import { shareFragment, textOfFragment } from "../../../explorer/share/shareLink.ts";
import { workSteps } from "../../../explorer/share/workSteps.ts";
import { brokenDocument, brokenText } from "./brokenDocument.ts";
import { answerApart, answerHere, callsWith, callWell } from "./calls.ts";
import { extremeScenario } from "./extremeScenario.ts";
import { askOneRun, askTheOdds, askTheRest } from "./questions.ts";
import { mustBeNumbers, mustBeSentences, readsWell } from "./sayings.ts";

/** One thing that holds whatever comes in. */
export interface Promised {
  readonly name: string;
  /** Cases in `npm test`, about five seconds each. */
  readonly cases: number;
  readonly property: fc.IAsyncProperty<unknown>;
}

function promised<Case>(
  name: string,
  cases: number,
  arbitrary: fc.Arbitrary<Case>,
  holds: (value: Case) => void | Promise<void>,
): Promised {
  const property = fc.asyncProperty(arbitrary, async (value) => {
    await holds(value);
  });
  return { name, cases, property: property as unknown as fc.IAsyncProperty<unknown> };
}

const scenarios = ["walnut-grove", "peat-moor", "polar-hut"].map((name): unknown =>
  JSON.parse(readFileSync(`scenarios/${name}.json`, "utf8")),
);
const notebook: unknown = JSON.parse(JSON.stringify(exampleNotebook("example")));
const readings = {
  format: "duskline-readings",
  version: 1,
  readings: [
    { at: "2026-10-08T18:00", chargeShare: 0.8, errorShare: 0.02, by: "Somebody" },
    { at: "2026-10-09T07:00", restV: 13.1, loadA: 3.2 },
    { at: "2026-10-09T13:00", outAh: 60, panelsW: 120, sky: { date: "2026-10-09", word: "fair" } },
  ],
};
const measured = { format: "duskline-measured-gear", version: 1, measured: [{ id: "x", working: 1 }] };
const laid = timeGrid({ start: "2026-10-08T10:00", end: "2026-10-11T16:00", stepMinutes: 10 }, "Europe/Vienna");
if (!laid.ok) throw new Error("these times are right");
const { grid } = laid;

const two = (value: number) => String(value).padStart(2, "0");
const rows = (row: (hour: number) => string, hours = 48) =>
  Array.from({ length: hours }, (_, hour) => row(hour)).join("\n");
const day = (hour: number) => 8 + Math.floor(hour / 24);
const LOGS = [
  `time,charge %,bank V,bank A,PV W\n${rows((h) => `2026-10-${two(day(h))} ${two(h % 24)}:00,${90 - h},${13.1 - h / 100},${Math.sin(h)},${h % 12}`)}\n`,
  `Datum;Zeit;Akku Spannung;PV Leistung\n${rows((h) => `${two(day(h))}.10.2026;${two(h % 24)}:00;13,${two(h)};${h},5`)}\n`,
  `meter 7\n\ntimestamp\tbattery current\tload current\n${rows((h) => `${1_791_450_000 + h * 3600}\t${h / 10}\t1.${h}`)}\n`,
];
const MAPPING = {
  delimiter: ",",
  decimal: ".",
  timeForm: "yearFirst",
  zone: "UTC",
  shiftMinutes: 0,
  columns: { time: "time", charge: "charge %" },
};
const WEATHER = [
  `# latitude: 46.95\n# longitude: 15.6\n# utcOffset: 1\ntime,ghi,dni,dhi,temp_c,wind_ms\n${rows((h) => `2026-10-${two(day(h))}T${two(h % 24)}:00,${h},${h},${h},12.5,2`)}\n`,
  `LOCATION,Somewhere,,,,,46.9,15.6,1,300\n${"X\n".repeat(6)}DATA PERIODS,1,1,Data\n${rows((h) => `2012,10,${day(h)},${1 + (h % 24)},60,x,12,8,70,95000,0,0,300,${h},${h},${h},0,0,0,0,180,2`)}\n`,
  `1,Somewhere,XX,1,46.9,15.6,300\nDate (MM/DD/YYYY),Time (HH:MM),GHI (W/m^2),DNI (W/m^2),DHI (W/m^2),Dry-bulb (C),Wspd (m/s)\n${rows((h) => `10/${day(h)}/2012,${two(1 + (h % 24))}:00,${h},${h},${h},12,2`)}\n`,
];

const asText = () => ({ text: "…", state: "stale" });

/** Opens what reads as a notebook as far as can be done without a page. */
function openNotebook(text: string): void {
  const read = readNotebook(text);
  if (!read.ok) {
    mustBeSentences(read.sentences);
    return;
  }
  if (Number.isNaN(workSteps(read.notebook))) throw new Error("the work it asks for is no number");
  for (const { id } of read.notebook.scenarios) {
    const found = scenarioDocument(read.notebook, id);
    if (found.ok) readsWell(() => readScenario(found.document));
    else mustBeSentences([found.sentence]);
  }
  for (const entry of read.notebook.entries) if (entry.kind === "note") noteHtml(entry.doc.text, asText);
}

/** A link whose letters were changed on the way, or that carries a broken notebook. */
const links = fc.record({
  document: fc.oneof(fc.constant(notebook), brokenDocument([notebook])),
  cuts: fc.array(fc.record({ at: fc.nat(), letter: fc.constantFrom("A", "_", "%", "", "1.", "=") }), { maxLength: 2 }),
});

/** A notebook that a report of is quickly made. */
const example = exampleNotebook("example");
const isQuick = ({ kind }: { kind: string }) => ["note", "forecast", "scenario", "run", "ledger"].includes(kind);
const small = { ...example, members: 20, entries: example.entries.filter(isQuick) };
const calls = callsWith(small, readings, LOGS, WEATHER);

/** What takes too long for `npm test`: calls as programs of their own. */
export const LONG_PROMISES: readonly Promised[] = [
  promised("a call of the built command", 5, calls, (call) => callWell(call, answerApart)),
];

export const PROMISES: readonly Promised[] = [
  promised("one run of an extreme scenario", 60, extremeScenario, askOneRun),
  promised("the odds of an extreme scenario", 25, extremeScenario, askTheOdds),
  promised("drivers, readings and a log of an extreme scenario", 6, extremeScenario, askTheRest),
  promised("a broken scenario", 300, brokenDocument(scenarios), askOneRun),
  promised("broken readings", 500, brokenDocument([readings]), (document) => {
    readsWell(() => readReadings(document, grid));
  }),
  promised(
    "a broken log",
    300,
    fc.record({ text: brokenText(LOGS), zone: fc.constantFrom("UTC", "Europe/Vienna", "Nowhere/At") }),
    ({ text, zone }) => {
      const read = readsWell(() => readMeterLog(text, {}, zone));
      if (read !== null) mustBeNumbers([read.log.timeMs, read.log.usualMs], "the log's times");
    },
  ),
  promised("a broken mapping of a log", 300, brokenDocument([MAPPING]), (document) => {
    const read = readsWell(() => readMeterMapping(document));
    if (read !== null) readsWell(() => readMeterLog(LOGS[0]!, read.mapping));
  }),
  promised("broken weather", 300, brokenText(WEATHER), (text) => {
    for (const name of ["a.csv", "a.epw"]) {
      const read = readsWell(() => readWeatherFile(text, name));
      if (read !== null) mustBeNumbers([read.file.ghiWm2, read.file.startMs, read.file.tempC], "the weather");
    }
  }),
  promised("a broken notebook", 150, brokenDocument([notebook]), (document) =>
    openNotebook(JSON.stringify(document) ?? ""),
  ),
  promised("a broken link", 60, links, async ({ document, cuts }) => {
    const made = await shareFragment(document as never);
    if (!made.ok) return mustBeSentences([made.sentence]);
    let { fragment } = made;
    for (const { at, letter } of cuts)
      fragment = fragment.slice(0, at % fragment.length) + letter + fragment.slice((at % fragment.length) + 1);
    const unpacked = await textOfFragment(fragment);
    if (unpacked.ok) openNotebook(unpacked.text);
    else mustBeSentences(unpacked.sentences);
  }),
  promised(
    "broken measured gear, and any words to look for",
    300,
    fc.record({ document: brokenDocument([measured]), words: fc.string({ unit: "binary" }) }),
    ({ document, words }) => {
      searchGear(words);
      const read = readMeasuredGear(JSON.stringify(document) ?? "");
      if (!read.ok) mustBeSentences(read.sentences);
    },
  ),
  promised("a call of the command line", 120, calls, (call) => callWell(call, answerHere)),
  promised("any text at all", 200, fc.oneof(fc.string({ unit: "binary", maxLength: 300 }), fc.json()), (text) => {
    readsWell(() => readScenario(text));
    readsWell(() => readReadings(text, grid));
    readsWell(() => readMeterLog(text));
    readsWell(() => readWeatherFile(text, "a.csv"));
    const read = readNotebook(text);
    if (!read.ok) mustBeSentences(read.sentences);
    noteHtml(text, asText);
  }),
];
