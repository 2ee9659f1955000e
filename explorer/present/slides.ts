import { stepAt } from "../charts/bandPaths.ts";
import { readingAt } from "../charts/readingAt.ts";
import { RULER_PX } from "../charts/rulerPx.ts";
import { strataLayout } from "../charts/strataLayout.ts";
import { endMs } from "../charts/strataPaths.ts";
import { type TimeScale, timeScale } from "../charts/timeScale.ts";
import { actualDrawing } from "../drawing/actualDrawing.ts";
import type { Drawing } from "../drawing/drawing.ts";
import { driversDrawing } from "../drawing/driversDrawing.ts";
import { forecastDrawing } from "../drawing/forecastDrawing.ts";
import { html, Markup } from "../drawing/html.ts";
import { learnedDrawing } from "../drawing/learnedDrawing.ts";
import { ledgerDrawing } from "../drawing/ledgerDrawing.ts";
import type { DrawingRoom } from "../drawing/rulerDrawing.ts";
import { runDrawing } from "../drawing/runDrawing.ts";
import { sizeDrawing } from "../drawing/sizeDrawing.ts";
import { sunDrawing } from "../drawing/sunDrawing.ts";
import { tallyDrawing } from "../drawing/tallyDrawing.ts";
import { actualLayout } from "../entries/actual/actualLayout.ts";
import { actualSentence } from "../entries/actual/actualWords.ts";
import { CAUTIONS, NO_PERMIT } from "../entries/cautions/cautionWords.ts";
import { driversSentence } from "../entries/drivers/driversWords.ts";
import { forecastLayout, type Series } from "../entries/forecast/forecastLayout.ts";
import { forecastSeries } from "../entries/forecast/forecastSeries.ts";
import { forecastSentence } from "../entries/forecast/forecastWords.ts";
import { ledgerWords } from "../entries/ledger/ledgerWords.ts";
import { briefQuantity, limitsSentence, limitWords, VERDICTS, valueWords } from "../entries/limits/limitsWords.ts";
import { figureWords } from "../entries/note/noteFigures.ts";
import { noteHtml } from "../entries/note/noteHtml.ts";
import { learnedSentence } from "../entries/readings/learnedWords.ts";
import { changesInWords } from "../entries/scenario/changesInWords.ts";
import { scenarioWords } from "../entries/scenario/scenarioWords.ts";
import { shadeVerdict } from "../entries/shade/shadeWords.ts";
import { axisWords } from "../entries/sizing/sizingWords.ts";
import { burdenWords, versusSentence } from "../entries/versus/versusWords.ts";
import { letterOf } from "../notebook/letterOf.ts";
import type { Entry, EntryDoc, EntryKindName } from "../notebook/notebook.ts";
import type { RunPicture } from "../picture/runPicture.ts";
import { reportAnswer } from "../report/reportAnswer.ts";
import type { ReportPage } from "../report/reportPage.ts";
import { list, table } from "../report/reportParts.ts";
import { changesOf, lightOf, reportSection, runAnswer } from "../report/reportSections.ts";
import type { TimePicture } from "../results/answers.ts";
import { dateSpan, dayName } from "../time/localClock.ts";
import type { Words } from "../words/answerOf.ts";
import { figure, percent } from "../words/numbers.ts";

/** A drawing on the ruler, with what the pointer line reads there. */
export interface SlideChart {
  readonly drawing: Drawing;
  readonly time: TimePicture;
  readonly scale: TimeScale;
  /** Where the days begin, from the drawing's left. */
  readonly leftPx: number;
  /** The lines' heights and values at an instant. */
  marks(ms: number): readonly { readonly y: number; readonly text: string; readonly look: "first" | "second" }[];
}

/** One slide: a sentence, and one chart or a few lines. */
export interface Slide {
  readonly id: string;
  /** Letter of the entry; empty for the first slide. */
  readonly letter: string;
  readonly title: string;
  readonly words: readonly Words[];
  readonly chart: SlideChart | null;
  readonly body: Markup | null;
}

type Content = Partial<Pick<Slide, "words" | "chart" | "body">>;
type MakeSlide<Kind extends EntryKindName> = (page: ReportPage, doc: EntryDoc<Kind>) => Content;

/** At 1024 px a slide's drawing is shown half as large again, so that its 16 px text is 24 px high. */
export const SLIDE_ROOM: DrawingRoom = { daysPx: 432, axisPx: 40, labelsPx: 214, isShort: true };
const SLIDE_PX = SLIDE_ROOM.daysPx + SLIDE_ROOM.axisPx + SLIDE_ROOM.labelsPx;
const CHARGE_PX = 168;
const MOST_LINES = 7;
/** Height at which `actualDrawing` draws the charge. */
const ACTUAL_CHARGE_PX = 220;
/** What `reportSection` wants to know of an entry besides its kind and document. */
const ENTRY_SHELL = { id: "slide", title: "Slide" };

const NOT_YET: Content = { body: html`<p>Not worked out yet.</p>` };

const SLIDES: { readonly [Kind in EntryKindName]?: MakeSlide<Kind> } = {
  note: (page, { text }) => ({
    body: html`<div class="slide-text">${new Markup(noteHtml(text, (wanted) => figureWords(page, wanted)))}</div>`,
  }),
  forecast: (page, doc) => {
    const series = forecastSeries(page, doc);
    return series.length === 0 ? NOT_YET : { words: forecastSentence(series), chart: forecastChart(series) };
  },
  versus: (page, { first, second }) => {
    const { result } = page.versus(first, second);
    if (result === null) return NOT_YET;
    const names = { first: page.scenario(first)?.name ?? first, second: page.scenario(second)?.name ?? second };
    const [from, to] = [page.document(first), page.document(second)];
    const differs = from === null || to === null ? [] : changesInWords([], from, to);
    return {
      words: versusSentence(result, names.first, names.second),
      body: html`<div class="slide-pair"><div>${list(shortened(differs))}<p>${burdenWords(result)}</p></div>${wide(tallyDrawing(result, names))}</div>`,
    };
  },
  sizing: (page, doc) => {
    const { result } = page.sizes(doc);
    const document = page.document(doc.scenario);
    if (result === null || document === null) return NOT_YET;
    const { x, y } = result.report;
    const up = y === null ? null : axisWords(document, y);
    const name = page.scenario(doc.scenario)?.name ?? doc.scenario;
    const map = sizeDrawing(result, axisWords(document, x), up, name, [440, 310]);
    const options = html`<ol class="slide-text">${result.options.map(({ sentence }) => html`<li>${sentence}</li>`)}</ol>`;
    return {
      words: [{ text: result.answer }],
      body: map === null ? options : html`<div class="slide-pair slide-pair-map">${wide(map)}${options}</div>`,
    };
  },
  drivers: (page, { scenario }) => {
    const { result } = page.drivers(scenario);
    if (result === null) return NOT_YET;
    return {
      words: [{ text: driversSentence(result.report) }],
      body: wide(driversDrawing(result.report, SLIDE_PX, 9)),
    };
  },
  limits: (page, doc) => {
    const { result } = page.limits(doc);
    if (result === null) return NOT_YET;
    const word = (verdict: string) => VERDICTS.find((each) => each.verdict === verdict)?.word ?? verdict;
    return {
      words: [{ text: limitsSentence(result) }],
      body: table(
        "The lines that are nearest to a limit or over it",
        ["Where and what", "State", "Value", "Limit"],
        result.lines.slice(0, MOST_LINES).map((line) => ({
          name: `${line.about}, ${briefQuantity(line)}`,
          figures: [word(line.verdict), valueWords(line.value, line.unit), limitWords(line)],
        })),
      ),
    };
  },
  readings: (page, doc) => {
    const { result } = page.learned(doc);
    if (result === null) return { body: reportSection(page, { ...ENTRY_SHELL, kind: "readings", doc }, "") };
    const name = page.scenario(doc.scenario)?.name ?? doc.scenario;
    return {
      words: learnedSentence(result, name),
      chart: onRuler(learnedDrawing(result, SLIDE_ROOM), result.time),
    };
  },
  actual: (page, doc) => {
    const { result } = page.actual(doc);
    if (result === null) return { body: reportSection(page, { ...ENTRY_SHELL, kind: "actual", doc }, "") };
    const name = page.scenario(doc.scenario)?.name ?? doc.scenario;
    const drawing = actualDrawing(result, page.odds(doc.scenario).result, SLIDE_ROOM);
    // One chart to a slide: the charge, without load and sun beneath it.
    const heightPx = RULER_PX + actualLayout(result, ACTUAL_CHARGE_PX).charge.bottom + 12;
    return {
      words: actualSentence(result, name),
      chart: onRuler({ ...drawing, heightPx }, result.time),
    };
  },
  scenario: (page, { scenario }) => {
    const document = page.document(scenario);
    const changed = changesOf(page, scenario);
    return {
      body: html`<div class="slide-text">${document !== null && list(scenarioWords(document).split(" · "))}${
        changed !== null && html`<p>Based on <strong>${changed.base}</strong>:</p>${list(shortened(changed.lines))}`
      }</div>`,
    };
  },
  run: (page, { scenario }) => {
    const { result } = page.run(scenario);
    if (result === null) return NOT_YET;
    return {
      words: runAnswer(result, page.scenario(scenario)?.name ?? scenario).sentence,
      chart: runChart(result),
    };
  },
  days: (page, { scenario }) => {
    const { result } = page.run(scenario);
    if (result === null) return NOT_YET;
    const share = (value: number | null) => (value === null ? "–" : figure(value * 100));
    return {
      body: table(
        "Each day of the event in figures",
        ["Day", "Sun, Wh", "Loads want, Wh", "Unserved, Wh", "At dusk, %", "At dawn, %", "Lowest, %"],
        result.days.map((day) => ({
          name: dayName(day.date),
          figures: [
            figure(day.groupWh.reduce((sum, wh) => sum + wh, 0)),
            figure(day.demandWh),
            figure(day.unservedWh),
            share(day.duskShare),
            share(day.dawnShare),
            share(day.lowestShare),
          ],
        })),
      ),
    };
  },
  ledger: (page, { scenario }) => {
    const { result } = page.run(scenario);
    if (result === null) return NOT_YET;
    return { words: [{ text: `${ledgerWords(result)}.` }], body: wide(ledgerDrawing(result, SLIDE_PX, 9)) };
  },
  shade: (page, { scenario }) => {
    const light = lightOf(page, scenario);
    if (light === null) return NOT_YET;
    return { words: [{ text: shadeVerdict(light) }], chart: onRuler(sunDrawing(light, SLIDE_ROOM), light) };
  },
  cautions: () => ({
    body: html`<div class="slide-text"><p><strong>${NO_PERMIT.head}</strong> ${NO_PERMIT.rest}</p>${list(CAUTIONS)}</div>`,
  }),
};

/** The notebook as slides in order: its answer first, then an entry each. @param lineOf as for `reportHtml` */
export function slidesOf(page: ReportPage, lineOf: (entry: Entry) => string = () => ""): Slide[] {
  const notebook = page.notebook();
  const answer = reportAnswer(page);
  const run = notebook.scenarios.map(({ id }) => page.run(id).result).find((result) => result !== null);
  const first: Slide = {
    id: "answer-slide",
    letter: "",
    title: notebook.title,
    words: answer?.words ?? [],
    chart: null,
    body: html`<div class="slide-text">${answer !== null && html`<p>${answer.more}</p>`}${
      run !== undefined && html`<p>${run.placeName}, ${dateSpan(run.ruler)}</p>`
    }</div>`,
  };
  const others = notebook.entries.map((entry, i): Slide => {
    const make = SLIDES[entry.kind] as MakeSlide<EntryKindName> | undefined;
    const content: Content =
      make === undefined ? { body: reportSection(page, entry, lineOf(entry)) } : make(page, entry.doc as never);
    return {
      id: entry.id,
      letter: letterOf(i),
      title: entry.title,
      words: content.words ?? [],
      chart: content.chart ?? null,
      body: content.body ?? null,
    };
  });
  return [first, ...others];
}

/** A drawing on the ruler whose lines have no values to read. */
function onRuler(drawing: Drawing, time: TimePicture): SlideChart {
  const scale = timeScale(time.ruler, SLIDE_ROOM.daysPx);
  return { drawing, time, scale, leftPx: SLIDE_ROOM.axisPx, marks: () => [] };
}

function forecastChart(series: readonly Series[]): SlideChart | null {
  const time = series[0]!.picture;
  const drawing = forecastDrawing(series, SLIDE_ROOM, { chargePx: CHARGE_PX, hasSun: false });
  if (drawing === null) return null;
  const { y } = forecastLayout(series, CHARGE_PX).charge;
  return {
    drawing,
    time,
    scale: timeScale(time.ruler, SLIDE_ROOM.daysPx),
    leftPx: SLIDE_ROOM.axisPx,
    marks: (ms) =>
      series.map(({ look, picture }) => {
        const share = picture.charge.p50[stepAt(picture, ms, picture.charge.p50.length)]!;
        return { y: RULER_PX + y(share), text: percent(share), look: look === "first" ? "first" : "second" };
      }),
  };
}

function runChart(picture: RunPicture): SlideChart {
  const { y } = strataLayout(picture, CHARGE_PX + 40).charge;
  return {
    drawing: runDrawing(picture, SLIDE_ROOM, { chargePx: CHARGE_PX + 40, isChargeAlone: true }),
    time: picture,
    scale: timeScale(picture.ruler, SLIDE_ROOM.daysPx),
    leftPx: SLIDE_ROOM.axisPx,
    marks: (ms) => {
      if (ms > endMs(picture)) return [];
      const { chargeShare } = readingAt(picture, ms);
      return [{ y: RULER_PX + y(chargeShare), text: percent(chargeShare), look: "first" }];
    },
  };
}

function shortened(lines: readonly string[]): readonly string[] {
  return lines.length <= MOST_LINES
    ? lines
    : [...lines.slice(0, MOST_LINES - 1), `and ${lines.length - MOST_LINES + 1} more`];
}

/** A drawing without time, as large as its place allows. */
function wide({ body, widthPx, heightPx, label }: Drawing): Markup {
  return html`<svg class="slide-drawing" viewBox="0 0 ${widthPx} ${heightPx}" width="${widthPx}" height="${heightPx}" role="img" aria-label="${label}">${body}</svg>`;
}
