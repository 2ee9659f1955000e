import "../zonesHere.ts";
import { readScenario } from "../../engine/index.ts";
import { endMs } from "../charts/strataPaths.ts";
import { driversDrawing } from "../drawing/driversDrawing.ts";
import { forecastDrawing } from "../drawing/forecastDrawing.ts";
import { html, Markup } from "../drawing/html.ts";
import { ledgerDrawing } from "../drawing/ledgerDrawing.ts";
import { oddsDrawing } from "../drawing/oddsDrawing.ts";
import { pairedDrawing } from "../drawing/pairedDrawing.ts";
import { runDrawing } from "../drawing/runDrawing.ts";
import { sizeDrawing } from "../drawing/sizeDrawing.ts";
import { sunDrawing } from "../drawing/sunDrawing.ts";
import { tallyDrawing } from "../drawing/tallyDrawing.ts";
import { dayHeads, dayRows } from "../entries/days/dayRows.ts";
import {
  byWeight,
  driversSentence,
  endWords,
  gainedWords,
  inHundredths,
  plusMinus,
  signed,
} from "../entries/drivers/driversWords.ts";
import { forecastHeads, forecastRows } from "../entries/forecast/forecastRows.ts";
import { forecastSeries } from "../entries/forecast/forecastSeries.ts";
import { failsWords, forecastMore, forecastSentence } from "../entries/forecast/forecastWords.ts";
import { ledgerWords } from "../entries/ledger/ledgerWords.ts";
import { figureWords } from "../entries/note/noteFigures.ts";
import { noteHtml } from "../entries/note/noteHtml.ts";
import { hourHeads, hourRows } from "../entries/run/hourRows.ts";
import { changesInWords } from "../entries/scenario/changesInWords.ts";
import { withLabels } from "../entries/scenario/fieldWords.ts";
import { scenarioWords } from "../entries/scenario/scenarioWords.ts";
import { SHADE_HEADS, shadeRows } from "../entries/shade/shadeRows.ts";
import { shadeVerdict } from "../entries/shade/shadeWords.ts";
import { type Sunlight, sunlight } from "../entries/shade/sunlight.ts";
import { axisWords } from "../entries/sizing/sizingWords.ts";
import { versusRows } from "../entries/versus/versusRows.ts";
import { burdenWords, versusSentence } from "../entries/versus/versusWords.ts";
import type { Entry, EntryDoc, EntryKindName } from "../notebook/notebook.ts";
import type { RunPicture } from "../picture/runPicture.ts";
import { type Answer, answerOf, moment } from "../words/answerOf.ts";
import { figure } from "../words/numbers.ts";
import { inHundred, oddsRange } from "../words/oddsWords.ts";
import { actualSection } from "./actualSection.ts";
import { limitsSection } from "./limitsSection.ts";
import { readingsSection } from "./readingsSection.ts";
import type { ReportPage } from "./reportPage.ts";
import { foldedTable, list, missing, picture, saidWords, table } from "./reportParts.ts";

const HOUR_MS = 3_600_000;

/** What a report says of an entry of one kind, below its title. */
type Section<Kind extends EntryKindName> = (page: ReportPage, doc: EntryDoc<Kind>) => Markup;

/** Kinds that the report has words and pictures for; of any other it prints the line of the sheet's index. */
const SECTIONS: { readonly [Kind in EntryKindName]?: Section<Kind> } = {
  note: (page, { text }) =>
    html`<div class="note-text">${new Markup(noteHtml(text, (wanted) => figureWords(page, wanted)))}</div>`,
  forecast: (page, doc) => {
    const series = forecastSeries(page, doc);
    const more = [forecastMore(series, page.notebook().seed), ...series.map(failsWords)].filter(Boolean).join(" ");
    return html`${missing(doc.scenarios.map((id) => page.odds(id)))}${
      series.length > 0 &&
      html`<p class="verdict">${saidWords(forecastSentence(series))}</p><p class="more">${more}</p>${picture(forecastDrawing(series))}${foldedTable(
        "Bands in figures, every three hours",
        table(
          "Charge in the bank, five quantiles, and the odds of being dark",
          ["At", ...forecastHeads(series)],
          forecastRows(series, 3 * HOUR_MS).map(({ when, figures }) => ({ name: when, figures })),
        ),
      )}`
    }`;
  },
  versus: (page, { first, second }) => {
    const found = page.versus(first, second);
    const names = { first: nameOf(page, first), second: nameOf(page, second) };
    const [from, to] = [page.document(first), page.document(second)];
    const differs = from === null || to === null ? [] : changesInWords([], from, to);
    const { result } = found;
    return html`${missing([found])}${
      result !== null &&
      html`<p class="verdict">${saidWords(versusSentence(result, names.first, names.second))}</p><div class="versus"><div><h3>What differs</h3>${list(differs.length === 0 ? ["nothing"] : differs)}<p>${burdenWords(result)}</p>${table(
        "Both in figures",
        ["Of both", names.second, names.first],
        versusRows(result).map((row) => ({ name: row.name, figures: [row.second, row.first] })),
      )}</div><div>${picture(oddsDrawing(result, names))}${picture(tallyDrawing(result, names))}</div></div>${picture(pairedDrawing(result))}`
    }`;
  },
  sizing: (page, doc) => {
    const found = page.sizes(doc);
    const document = page.document(doc.scenario);
    const { result } = found;
    if (result === null || document === null) return html`${missing([found])}`;
    const { report } = result;
    const [across, up] = [axisWords(document, report.x), report.y === null ? null : axisWords(document, report.y)];
    return html`${missing([found])}<p class="verdict">${result.answer}</p>${picture(
      sizeDrawing(result, across, up, nameOf(page, doc.scenario)),
    )}<ol>${result.options.map(({ sentence }) => html`<li>${sentence}</li>`)}</ol>${result.more.map(
      (sentence) => html`<p>${sentence}</p>`,
    )}${table(
      `Of 100 skies so many hold. Across: ${across.title}${up === null ? "" : `; down: ${up.title}`}`,
      [up?.title ?? "Holds", ...report.x.values.map(across.tick)],
      [...report.rows].reverse().map((row) => ({
        name: row.y === null || up === null ? "Holds" : up.tick(row.y),
        figures: row.cells.map((cell) => `${briefly(cell.holds)} (${oddsRange(cell.holds)})${cell.meets ? " ✓" : ""}`),
      })),
    )}<p class="more">✓ meets the target. ${withLabels(result.fixed.join(" "))}</p>`;
  },
  drivers: (page, { scenario }) => {
    const found = page.drivers(scenario);
    const { result } = found;
    if (result === null) return html`${missing([found])}`;
    const { report } = result;
    const sampled = (of: { value: number; plusMinus: number } | undefined) =>
      of === undefined ? "–" : `${inHundredths(of.value)} ${plusMinus(of.plusMinus)}`;
    return html`${missing([found])}<p class="verdict">${driversSentence(report)}</p>${report.sentences
      .slice(1)
      .map((sentence) => html`<p>${sentence}</p>`)}${picture(driversDrawing(report))}${table(
      "What the lowest charge hangs on, and how many of 100 hold with one thing at its low or its high end",
      ["What is drawn", "Alone", "With others", "Low end", "holds", "High end", "holds"],
      byWeight(report).map((line) => ({
        name: line.name,
        figures: [
          sampled(line.margin?.first),
          sampled(line.margin?.total),
          ...[line.low, line.high].flatMap((end) =>
            end === null ? ["–", "–"] : [endWords(line, end.value), inHundred(end.holds)],
          ),
        ],
      })),
    )}${
      report.shedding.length > 0 &&
      table(
        "Switched off for the whole event, one at a time",
        ["Off", "Of 100 hold", "Gained, of 100", "Lowest, points", "Until the reserve"],
        report.shedding.map((line) => ({
          name: line.name,
          figures: [
            inHundred(line.holds),
            `${signed(100 * line.holdsGain.value)} ±${(100 * line.holdsGain.plusMinus).toFixed(1)}`,
            signed(100 * line.marginGain.value),
            gainedWords(line),
          ],
        })),
      )
    }`;
  },
  scenario: (page, { scenario }) => {
    const document = page.document(scenario);
    const changed = changesOf(page, scenario);
    return html`${missing([page.run(scenario)])}${
      document !== null && html`<p class="scenario-line">${scenarioWords(document)}</p>`
    }${
      changed !== null &&
      html`<p>Based on <strong>${changed.base}</strong>${changed.lines.length === 0 ? ", with nothing changed." : ", with these changes:"}</p>${list(changed.lines)}`
    }`;
  },
  run: (page, { scenario }) => {
    const found = page.run(scenario);
    const { result } = found;
    if (result === null) return html`${missing([found])}`;
    const { sentence, more } = runAnswer(result, nameOf(page, scenario));
    return html`${missing([found])}<p class="verdict">${saidWords(sentence)}</p><p class="more">${more.join(" ")}</p>${picture(runDrawing(result))}${foldedTable(
      "Hours in figures",
      table(
        "Charge at the start of each hour, powers as means over it, volts as the least in it",
        ["Hour from", ...hourHeads(result)],
        hourRows(result).map(({ ms, figures }) => ({ name: moment(result.ruler, ms), figures })),
      ),
    )}`;
  },
  days: (page, { scenario }) => {
    const found = page.run(scenario);
    const { result } = found;
    return html`${missing([found])}${
      result !== null &&
      table(
        "Each day of the event in figures",
        ["Day", ...dayHeads(result)],
        dayRows(result).map(({ day, figures }) => ({ name: day, figures })),
      )
    }`;
  },
  ledger: (page, { scenario }) => {
    const found = page.run(scenario);
    const { result } = found;
    return html`${missing([found])}${
      result !== null &&
      html`<p class="verdict">${ledgerWords(result)}.</p>${picture(ledgerDrawing(result))}${table(
        "What each load got over the whole event, largest first",
        ["What took it", "Always on, Wh", "When used, Wh", "Together, Wh", "Share, %"],
        result.ledger.loads.map((line) => ({
          name: line.name,
          figures: [line.alwaysWh, line.usedWh, line.totalWh, line.share * 100].map((value) => figure(value)),
        })),
      )}`
    }`;
  },
  shade: (page, { scenario }) => {
    const light = lightOf(page, scenario);
    if (light === null) return html`${missing([page.run(scenario)]) ?? html`<p class="wrong">Not worked out yet.</p>`}`;
    return html`<p class="verdict">${shadeVerdict(light)}</p>${picture(sunDrawing(light))}${table(
      "Hours of sun of each panel group on each day of the event, under a clear sky",
      ["Panels", ...SHADE_HEADS],
      shadeRows(light),
    )}`;
  },
  limits: limitsSection,
  readings: readingsSection,
  actual: actualSection,
  cautions: () => html`<p>They stand at the end of this report, with what was assumed.</p>`,
};

/** ">99" for "more than 99": in a table there is no room for words. */
const briefly = (odds: { readonly share: number }) =>
  inHundred(odds).replace("more than ", ">").replace("fewer than ", "<");

/** The words and pictures of one entry. @param line its line in the sheet's index, for kinds that have nothing else */
export function reportSection(page: ReportPage, entry: Entry, line: string): Markup {
  const section = SECTIONS[entry.kind] as Section<EntryKindName> | undefined;
  if (section !== undefined) return section(page, entry.doc as never);
  return html`<p>${line === "" ? "" : `${line}. `}This entry (${entry.kind}) is drawn in the notebook only.</p>`;
}

function nameOf(page: ReportPage, id: string): string {
  return page.scenario(id)?.name ?? id;
}

/** The name of what a scenario is based on and the changes in words; null for one with a document of its own. */
export function changesOf(
  page: ReportPage,
  id: string,
): { readonly base: string; readonly lines: readonly string[] } | null {
  const scenario = page.scenario(id);
  if (scenario === null || "document" in scenario) return null;
  const [from, to] = [page.baseDocument(id), page.document(id)];
  return {
    base: nameOf(page, scenario.basedOn),
    lines: from === null || to === null ? [] : changesInWords(scenario.changes, from, to),
  };
}

/** What one run says, as its entry says it. */
export function runAnswer(run: RunPicture, name: string): Answer {
  const { verdict, ruler, reserveShare, ledger } = run;
  const { solarWh, spilledWh, wantedWh } = ledger;
  return answerOf({ verdict, ruler, endMs: endMs(run), reserveShare, solarWh, spilledWh, wantedWh, withWords: [name] });
}

/** Who sees the sun in a scenario; null while it does not read. */
export function lightOf(page: ReportPage, id: string): Sunlight | null {
  const document = page.document(id);
  const read = document === null ? null : readScenario(document);
  return read?.ok ? sunlight(read.scenario) : null;
}
