import { differenceInUnits } from "../../words/displayUnits.ts";
import { ampHours, energy, figure, percent, THIN } from "../../words/numbers.ts";
import { inHundred } from "../../words/oddsWords.ts";
import type { AnswersPage } from "../answersPage.ts";
import { oddsOf } from "../forecast/ask.ts";
import type { OddsPicture } from "../forecast/oddsPicture.ts";
import type { Found } from "../found.ts";
import { runOf } from "../run/ask.ts";
import type { RunPicture } from "../run/runPicture.ts";
import { versusOf } from "../versus/ask.ts";
import type { VersusPicture } from "../versus/versusPicture.ts";

/**
 * A figure that a note quotes from the results, written between braces: what is wanted, then whose it is.
 * `{holds, meadow}`: of one scenario. `{saved, meadow over plan}`: of one scenario held against another. Scenarios are named by their ids.
 */
export interface NoteFigure {
  /** The text between the braces. */
  readonly text: string;
  readonly want: string;
  readonly scenario: string;
  /** The scenario that it is held against; null for a figure of one scenario. */
  readonly over: string | null;
  /** What has to be worked out for it. */
  readonly of: "run" | "odds" | "versus";
}

export const FIGURE_PATTERN = /^\{([a-z ]{1,30}), ?([a-z0-9-]{1,40})(?: over ([a-z0-9-]{1,40}))?\}/;

type Says<Picture> = { readonly means: string; readonly say: (picture: Picture) => string };

/** Figures of an ensemble. */
export const ODDS_FIGURES: Readonly<Record<string, Says<OddsPicture>>> = {
  holds: { means: "skies of 100 in which the bank holds", say: ({ report }) => `${inHundred(report.holds)} of 100` },
  dark: { means: "skies of 100 in which loads ever go dark", say: ({ report }) => `${inHundred(report.dark)} of 100` },
  lowest: { means: "lowest charge, median", say: ({ report }) => percent(report.lowestShare.p50) },
  worst: { means: "lowest charge, one sky in twenty is worse", say: ({ report }) => percent(report.lowestShare.p5) },
  left: { means: "charge at the end, median", say: ({ report }) => percent(report.endShare.p50) },
  sun: { means: "energy from the sun over the event, median", say: ({ report }) => energy(report.solarWh.p50) },
  wanted: { means: "energy that the loads want, median", say: ({ report }) => energy(report.demandWh.p50) },
  unserved: { means: "energy that loads go without, mean", say: ({ report }) => energy(report.unservedWh.mean) },
  bank: { means: "what the bank holds when full", say: ({ fullAh }) => ampHours(fullAh) },
  reserve: { means: "the reserve", say: ({ reserveShare }) => percent(reserveShare) },
  members: { means: "skies that were drawn", say: ({ members }) => figure(members) },
};

/** Figures of one run under the sky as written. */
export const RUN_FIGURES: Readonly<Record<string, Says<RunPicture>>> = {
  "usual lowest": {
    means: "lowest charge under the sky as written",
    say: ({ verdict }) => percent(verdict.lowestShare),
  },
  "usual sun": { means: "energy from the sun under the sky as written", say: ({ ledger }) => energy(ledger.solarWh) },
};

/** Figures of one scenario held against another. */
export const VERSUS_FIGURES: Readonly<Record<string, Says<VersusPicture>>> = {
  saved: {
    means: "skies of 100 that hold only with the first-named",
    say: ({ tally, members }) => `${figure((100 * tally.onlySecond) / members)} of 100`,
  },
  more: {
    means: "difference in skies of 100 that hold",
    say: ({ holds }) => `${holds.mean < 0 ? "" : "+"}${figure(100 * holds.mean)} in 100`,
  },
  lift: {
    means: "difference in the lowest charge, mean",
    say: ({ margin }) => `${margin.mean < 0 ? "" : "+"}${figure(100 * margin.mean)}${THIN}points`,
  },
  "more mass": {
    means: "difference in mass",
    say: ({ more }) => apart(more.massKg, "kg"),
  },
  "more work": {
    means: "difference in minutes of setting up and re-aiming",
    say: ({ more }) => apart(more.minutes, "min"),
  },
  "more cost": {
    means: "difference in cost",
    say: ({ more }) => apart(more.cost, ""),
  },
};

function apart(value: number | null, unit: string): string {
  if (value === null) return "not stated";
  return `${value < 0 ? "" : "+"}${unit === "" ? figure(value, 1) : differenceInUnits(value, unit)}`;
}

/** A note's words before it is set: no marks of emphasis, and dots for its figures. */
export function plainNote(text: string): string {
  return text.replace(/\{[a-z ]{1,30}, ?[a-z0-9-]{1,40}(?: over [a-z0-9-]{1,40})?\}/g, "…").replace(/[*_`#]+/g, "");
}

/** Reads one figure at the start of a text; null when there is none. */
export function figureAt(text: string): { readonly raw: string; readonly figure: NoteFigure } | null {
  const match = FIGURE_PATTERN.exec(text);
  if (match === null) return null;
  const [raw, want, scenario, over] = match as unknown as [string, string, string, string | undefined];
  const of = over !== undefined ? "versus" : Object.hasOwn(RUN_FIGURES, want) ? "run" : "odds";
  return { raw, figure: { text: raw.slice(1, -1), want, scenario, over: over ?? null, of } };
}

/** All figures that a note quotes. */
export function figuresIn(text: string): NoteFigure[] {
  const found: NoteFigure[] = [];
  for (let at = text.indexOf("{"); at >= 0; at = text.indexOf("{", at + 1)) {
    const next = figureAt(text.slice(at, at + 130));
    if (next !== null) found.push(next.figure);
  }
  return found;
}

/** What a figure says now. */
export interface FigureWords {
  readonly text: string;
  /** `awaited` before there is any, `unknown` for one that nothing answers to. */
  readonly state: "fresh" | "stale" | "awaited" | "unknown";
}

/** What a figure says now; a dash where its scenario cannot be worked out. */
export function figureWords(page: Pick<AnswersPage, "scenario" | "find">, wanted: NoteFigure): FigureWords {
  const { want, scenario, over } = wanted;
  const unknown = { text: `{${wanted.text}}`, state: "unknown" as const };
  if (page.scenario(scenario) === null || (over !== null && page.scenario(over) === null)) return unknown;
  const told = <Picture>(table: Readonly<Record<string, Says<Picture>>>, found: () => Found<Picture>) => {
    if (!Object.hasOwn(table, want)) return unknown;
    const { result, stale, problems } = found();
    if (result === null && problems.length > 0) return { text: "–", state: "stale" as const };
    if (result === null) return { text: "…", state: "awaited" as const };
    return { text: table[want]!.say(result), state: stale ? ("stale" as const) : ("fresh" as const) };
  };
  if (over !== null) return told(VERSUS_FIGURES, () => versusOf(page, over, scenario));
  if (Object.hasOwn(RUN_FIGURES, want)) return told(RUN_FIGURES, () => runOf(page, scenario));
  return told(ODDS_FIGURES, () => oddsOf(page, scenario));
}
