import { actualDrawing } from "../drawing/actualDrawing.ts";
import type { Drawing } from "../drawing/drawing.ts";
import { driversDrawing } from "../drawing/driversDrawing.ts";
import { forecastDrawing } from "../drawing/forecastDrawing.ts";
import { learnedDrawing } from "../drawing/learnedDrawing.ts";
import { ledgerDrawing } from "../drawing/ledgerDrawing.ts";
import { oddsDrawing } from "../drawing/oddsDrawing.ts";
import { pairedDrawing } from "../drawing/pairedDrawing.ts";
import { runDrawing } from "../drawing/runDrawing.ts";
import { sizeDrawing } from "../drawing/sizeDrawing.ts";
import { stacked } from "../drawing/stacked.ts";
import { sunDrawing } from "../drawing/sunDrawing.ts";
import { tallyDrawing } from "../drawing/tallyDrawing.ts";
import { forecastSeries } from "../entries/forecast/forecastSeries.ts";
import { axisWords } from "../entries/sizing/sizingWords.ts";
import type { Entry, EntryDoc, EntryKindName } from "../notebook/notebook.ts";
import type { ReportPage } from "../report/reportPage.ts";
import { lightOf } from "../report/reportSections.ts";

type Draw<Kind extends EntryKindName> = (page: ReportPage, doc: EntryDoc<Kind>) => Drawing | null;

/** What an entry's picture is; kinds that have none, such as notes and tables, are not here. */
const PICTURES: { readonly [Kind in EntryKindName]?: Draw<Kind> } = {
  forecast: (page, doc) => forecastDrawing(forecastSeries(page, doc)),
  versus: (page, { first, second }) => {
    const { result } = page.versus(first, second);
    if (result === null) return null;
    const name = (id: string) => page.scenario(id)?.name ?? id;
    const names = { first: name(first), second: name(second) };
    const paired = pairedDrawing(result);
    return stacked([oddsDrawing(result, names), tallyDrawing(result, names), ...(paired === null ? [] : [paired])]);
  },
  run: (page, { scenario }) => {
    const { result } = page.run(scenario);
    return result === null ? null : runDrawing(result);
  },
  readings: (page, doc) => {
    const { result } = page.learned(doc);
    return result === null ? null : learnedDrawing(result);
  },
  actual: (page, doc) => {
    const { result } = page.actual(doc);
    return result === null ? null : actualDrawing(result, page.odds(doc.scenario).result);
  },
  ledger: (page, { scenario }) => {
    const { result } = page.run(scenario);
    return result === null ? null : ledgerDrawing(result);
  },
  shade: (page, { scenario }) => {
    const light = lightOf(page, scenario);
    return light === null ? null : sunDrawing(light);
  },
  sizing: (page, doc) => {
    const { result } = page.sizes(doc);
    const document = page.document(doc.scenario);
    if (result === null || document === null) return null;
    const { x, y } = result.report;
    const name = page.scenario(doc.scenario)?.name ?? doc.scenario;
    return sizeDrawing(result, axisWords(document, x), y === null ? null : axisWords(document, y), name);
  },
  drivers: (page, { scenario }) => {
    const { result } = page.drivers(scenario);
    return result === null ? null : driversDrawing(result.report);
  },
};

/** An entry's picture as it would stand in a report; null while nothing is known. */
export function entryPicture(page: ReportPage, entry: Entry): Drawing | null {
  const draw = PICTURES[entry.kind] as Draw<EntryKindName> | undefined;
  return draw?.(page, entry.doc as never) ?? null;
}
