import { clockAt } from "../../ruler/rulerClock.ts";
import type { Look } from "../../words/look.ts";
import { hours, percent, THIN } from "../../words/numbers.ts";
import { inHundred, oddsRange, withoutWords } from "../../words/oddsWords.ts";
import type { Words } from "../../words/said.ts";
import type { LearnedPicture } from "./learnedPicture.ts";

const plain = (text: string): Words => ({ text });
const heavy = (text: string): Words => ({ text, as: "figure" });

/** Where it stands after the last reading: the answer before anything else. */
export function learnedSentence({ report, time }: LearnedPicture, name: string, look: Look): Words[] {
  const end = clockAt(time.ruler, time.startMs + time.steps * time.stepMs);
  const { holdsBefore, holdsAfter, now } = report;
  return [
    { text: name, as: look },
    plain(`: from ${clockWords(time, now.ms)} on the bank holds to ${end.weekday} ${end.clock} in `),
    heavy(`${inHundred(holdsAfter)} of 100`),
    plain(" skies"),
    plain("; before the readings the plan held in "),
    heavy(inHundred(holdsBefore)),
    plain("."),
  ];
}

/** Hours left, and how sure all that is. */
export function learnedMore({ report, goesWithoutAfter }: LearnedPicture): string {
  const { chargeNow, endBefore, endAfter, reserveShare } = report;
  const { p10, p50, p90 } = report.hoursLeft;
  const reserve = `the ${percent(reserveShare)} reserve`;
  const left =
    p10 === null
      ? `Fewer than one in ten reach ${reserve} before the end.`
      : p50 === null
        ? `One in ten reaches ${reserve} within ${hours(p10)}; half do not before the end.`
        : `Hours left above ${reserve}: ${hours(p50)} in the middle, under ${hours(p10)} in one of ten${p90 === null ? "" : `, over ${hours(p90)} in another`}.`;
  const range = ({ p10, p90 }: { p10: number; p90: number }) => `${percent(p10)} to ${percent(p90)}`;
  const sizes = `By the size of the sample, ${oddsRange(report.holdsAfter)} of 100, before ${oddsRange(report.holdsBefore)}; ${report.members} members, seed ${report.seed}.`;
  const without = withoutWords({ holds: report.holdsAfter, goesWithout: goesWithoutAfter });
  return `${without === null ? "" : `${without} `}${left} Charge now ${range(chargeNow)}, at the end ${range(endAfter)} in eight of ten (before the readings ${range(endBefore)}). ${sizes}`;
}

/** What the engine says of members that are worth less than their number: never left out. */
export function roughWords({ report }: LearnedPicture): string[] {
  return report.sentences.filter((sentence) => sentence.startsWith("At one reading the members"));
}

/** What has been learned of the plan's figures, one sentence each. */
export function lessonWords({ report }: LearnedPicture): string[] {
  return report.lessons.flatMap(({ sentence }) => (sentence === null ? [] : [sentence]));
}

const FIGURE_NAMES: Record<LearnedPicture["report"]["lessons"][number]["name"], string> = {
  load: "Load as a whole",
  idleDraw: "Draw between transmissions",
  keenness: "Sending",
  canopy: "Light through the trees",
  panelYield: "Panels in good light",
  capacity: "What the bank holds",
  startCharge: "Charge at the start",
};

/** What stands over the table of figures. */
export const LESSON_HEADS = ["Figure", "Before, eight in ten", "After, eight in ten"] as const;

/** Every figure before and after, in per cent of plan or of full. */
export function lessonRows({ report }: LearnedPicture): { readonly name: string; readonly figures: string[] }[] {
  return report.lessons.map(({ name, before, after }) => {
    const of = name === "startCharge" ? "of full" : "of plan";
    const range = ({ p10, p90 }: typeof before) => `${Math.round(100 * p10)} to ${Math.round(100 * p90)}${THIN}% ${of}`;
    return { name: FIGURE_NAMES[name], figures: [range(before), range(after)] };
  });
}

/** "Sat 10 08:00" */
function clockWords(time: LearnedPicture["time"], ms: number): string {
  const { day, clock } = clockAt(time.ruler, ms);
  return `${day} ${clock}`;
}

/** One instant in words, for whoever reads the chart by keyboard. */
export function learnedInstant(picture: LearnedPicture, ms: number): string {
  const { time, before, after, report, marks } = picture;
  const at = Math.min(time.steps, Math.max(0, Math.round((ms - time.startMs) / time.stepMs)));
  const since = at - report.now.step;
  const bands = since < 0 ? before : after;
  const i = since < 0 ? at : since;
  const near = marks.find((mark) => Math.abs(mark.ms - ms) <= time.stepMs);
  const read = near === undefined ? "" : ` Read: ${percent(near.share)}.`;
  const which = since < 0 ? "as planned, before the readings" : "after the readings";
  return `${clockWords(time, ms)}, ${which}: half the skies over ${percent(bands.p50[i]!)}, nine in ten between ${percent(bands.p5[i]!)} and ${percent(bands.p95[i]!)}.${read}`;
}
