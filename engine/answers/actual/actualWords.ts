import type { Correction, FittedFigure } from "../../actual/fitCorrection.ts";
import type { Miss, MissPartName } from "../../actual/planAgainstActual.ts";
import { clockAt } from "../../ruler/rulerClock.ts";
import type { Look } from "../../words/look.ts";
import { energy, figure, percent, THIN } from "../../words/numbers.ts";
import type { Words } from "../../words/said.ts";
import type { ActualPicture } from "./actualPicture.ts";

const plain = (text: string): Words => ({ text });
const heavy = (text: string): Words => ({ text, as: "figure" });

const PART_NAMES: Record<MissPartName, string> = {
  start: "Charge at the start",
  load: "Load",
  sun: "Sun",
  capacity: "Capacity of the bank",
  rest: "Without a reason",
};

/** "+6.1", "−6.1": points of charge. */
export const points = (share: number) => `${share > 0 ? "+" : ""}${figure(100 * share, 1)}`;

/** Parts that the log can speak of, the largest first; what is without a reason comes last. */
export function partsOf({ parts }: Miss) {
  const told = parts.filter(({ lacking }) => lacking === null);
  const by = (a: (typeof told)[number], b: (typeof told)[number]) =>
    Number(a.name === "rest") - Number(b.name === "rest") || Math.abs(b.share) - Math.abs(a.share);
  return told.sort(by).map((part) => ({ ...part, title: PART_NAMES[part.name] }));
}

/** Charges nearer to one another than this are alike; a bank that ends empty or full either way hides what went before. */
const WIDER_SHARE = 0.02;

/** The miss at the end of the log, or where it was farthest from the plan if that says more; null where the log tells no charge. */
export function leadingMiss({ miss, widest }: Pick<ActualPicture, "miss" | "widest">): Miss | null {
  if (miss === null || widest === null) return miss;
  return Math.abs(widest.share) > Math.abs(miss.share) + WIDER_SHARE ? widest : miss;
}

/** By how much the plan missed, and what did most of it. */
export function actualSentence({ time, ...picture }: ActualPicture, name: string, look: Look): Words[] {
  const miss = leadingMiss(picture);
  if (miss === null) return [{ text: name, as: look }, plain(": the log never tells the charge.")];
  const { day, clock } = clockAt(time.ruler, miss.atMs);
  const words: Words[] = [
    { text: name, as: look },
    plain(`: on ${day} ${clock} the bank had `),
    heavy(percent(miss.actualShare)),
    plain(", planned "),
    heavy(percent(miss.plannedShare)),
  ];
  const [most] = partsOf(miss).filter((part) => part.name !== "rest" && Math.abs(part.share) >= 2 * part.spread);
  if (most === undefined || Math.abs(most.share) < 0.01) return [...words, plain(".")];
  const verb = most.share < 0 ? "took" : "gave";
  return [
    ...words,
    plain(`; ${most.title.toLowerCase()} ${verb} most, `),
    heavy(`${figure(100 * Math.abs(most.share))}${THIN}points`),
    plain("."),
  ];
}

/** How it stood at the end, where the sentence tells of another moment. */
export function endWords(picture: ActualPicture): string {
  const { miss, time } = picture;
  if (miss === null || leadingMiss(picture) === miss) return "";
  const { day, clock } = clockAt(time.ruler, miss.atMs);
  return `That is where it was farthest from the plan; on ${day} ${clock} the bank had ${percent(miss.actualShare)}, planned ${percent(miss.plannedShare)}.`;
}

/** How much of the event the log covers, and the energies over it. */
export function coverWords({ coveredShare, miss }: ActualPicture): string {
  const pair = (name: string, wh: { readonly planned: number; readonly actual: number } | null | undefined) =>
    wh == null ? "" : ` ${name} over the logged steps: ${energy(wh.actual)}, planned ${energy(wh.planned)}.`;
  return `The log covers ${percent(coveredShare)} of the event.${pair("Load", miss?.loadWh)}${pair("Sun", miss?.sunWh)}`;
}

/** Parts of which nothing can be said, and why. */
export function lackingWords({ parts }: Miss): string[] {
  return parts.flatMap(({ name, lacking }) =>
    lacking === null ? [] : [`Of ${PART_NAMES[name].toLowerCase()} nothing can be said: ${lacking}.`],
  );
}

const FIGURE_NAMES: Record<FittedFigure["name"], string> = {
  idle: "Draw between transmissions",
  sending: "Sending",
  yield: "Yield of the panels",
  shade: "Light through the crowns",
  capacity: "Capacity of the bank",
  start: "Charge at the start",
};
const STATUS_WORDS: Record<FittedFigure["status"], string> = {
  found: "found",
  leaning: "leaning",
  open: "stays open",
  missing: "not in the log",
};

/** What stands over the table of figures. */
export const FIGURE_HEADS = ["Figure", "As metered", "Nine times in ten between", "How sure"] as const;

export function figureRow(figure: FittedFigure) {
  const isHeard = figure.status === "found" || figure.status === "leaning";
  const of = figure.name === "start" ? "of full" : "of plan";
  const shown = (value: number) => `${Math.round(100 * value)}`;
  return {
    name: FIGURE_NAMES[figure.name],
    figures: [
      isHeard ? `${shown(figure.value)}${THIN}% ${of}` : "as planned",
      isHeard ? `${shown(figure.low)} and ${shown(figure.high)}${THIN}%` : "–",
      STATUS_WORDS[figure.status],
    ],
  };
}

/** Figures that can be worked into a scenario; the charge at the start is of that event alone. */
export function takeable({ figures }: Correction): FittedFigure[] {
  return figures.filter(({ name, status }) => name !== "start" && (status === "found" || status === "leaning"));
}

/** Why a figure stands where it does, where it was not heard. */
export function openWords({ figures }: Correction): string[] {
  return figures.flatMap(({ status, sentence }) => (status === "open" || status === "missing" ? [sentence] : []));
}

/** One instant in words. */
export function actualInstant({ time, plan, actual }: ActualPicture, ms: number): string {
  const { day, clock } = clockAt(time.ruler, ms);
  const i = Math.min(time.steps, Math.max(0, Math.round((ms - time.startMs) / time.stepMs)));
  const metered = actual.chargeShare?.[i];
  const says = metered === undefined || !Number.isFinite(metered) ? "not metered" : `metered ${percent(metered)}`;
  return `${day} ${clock}: charge planned ${percent(plan.chargeShare[i]!)}, ${says}.`;
}
