import type { SpotFigure, SpotsReport } from "../../spots/spotsReport.ts";
import { differenceInUnits, inUnits } from "../../words/displayUnits.ts";
import { figure, THIN } from "../../words/numbers.ts";
import type { Words } from "../../words/said.ts";
import type { SpotsPicture } from "./spotsPicture.ts";

/** Two spots bring the same within this share. */
const AS_GOOD = 0.01;
/** Metres that a shorter lead has to save to be spoken of where the panels stand as well as anywhere. */
const WORTH_MOVING_M = 3;
/** What raising roof panels has to gain over turning them to be spoken of. */
const WORTH_RAISING = 1.02;

const heavy = (text: string): Words => ({ text, as: "figure" });
export const whWords = (wh: number) => `${figure(wh)}${THIN}Wh`;
export const leadWords = (metres: number) => inUnits(metres, "m");
/** 0.0135 as "1.4 %" */
export const lossWords = (share: number) => `${(100 * share).toFixed(1)}${THIN}%`;

/** What a figure is for: "a day", or the whole event where that has no whole day. */
export const spanWords = ({ days }: Pick<SpotsReport, "days">) => (days > 0 ? "a day" : "over the event");

interface At {
  readonly eastM: number;
  readonly northM: number;
}
const isSame = (a: At, b: At) => Math.hypot(a.eastM - b.eastM, a.northM - b.northM) < 0.05;

/** "12 m north and 4 m east" from one place to another; "here" for the same. */
export function wayWords(from: At, to: At): string {
  const part = (metres: number, plus: string, minus: string) => {
    const text = differenceInUnits(Math.abs(metres), "m", 0);
    return text.startsWith(`0${THIN}`) ? [] : [`${text} ${metres > 0 ? plus : minus}`];
  };
  const parts = [...part(to.northM - from.northM, "north", "south"), ...part(to.eastM - from.eastM, "east", "west")];
  return parts.length === 0 ? "here" : parts.join(" and ");
}

const BEARINGS = ["north", "north-east", "east", "south-east", "south", "south-west", "west", "north-west"];
export const bearingWords = (deg: number) => BEARINGS[Math.round(deg / 45) % 8]!;

/** What the present spot brings, what the best does, and what a longer or shorter lead does to it. */
export function spotsSentence({ report }: Pick<SpotsPicture, "report">): Words[] {
  const { group, here, lead } = report;
  const now: Words[] = [
    { text: `${group.name}: ` },
    heavy(whWords(here.dayWh)),
    { text: ` ${spanWords(report)} where they are` },
  ];
  return [...now, ...(lead.reachM === null ? driveWords(report) : carryWords(report))];
}

function carryWords({ here, best, asGood, beyond, lead }: SpotsReport): Words[] {
  const isBest = best.dayWh <= here.dayWh * (1 + AS_GOOD);
  const within = `${leadWords(lead.statedM)} of lead`;
  const words: Words[] = isBest
    ? [{ text: `, as much as any spot that ${within} reaches.` }]
    : [
        { text: `. The best spot that ${within} reaches brings ` },
        heavy(whWords(best.dayWh)),
        { text: `: ${wayWords(here, best)} of here${onLead(best, here)}.` },
      ];
  const isNews = isBest ? here.leadM - asGood.leadM >= WORTH_MOVING_M : !isSame(asGood, best);
  if (isNews) {
    const goodness = isBest && asGood.dayWh >= here.dayWh ? "As good and nearer: " : "Nearest as good: ";
    words.push({ text: ` ${goodness}` }, heavy(whWords(asGood.dayWh)), {
      text: `, ${wayWords(here, asGood)}${onLead(asGood, here)}.`,
    });
  }
  if (beyond !== null) {
    words.push({ text: ` On ${leadWords(beyond.leadM)} of lead it would be ` }, heavy(whWords(beyond.dayWh)), {
      text: `, although that lead loses ${lossWords(beyond.leadLossShare)} in place of ${lossWords(here.leadLossShare)}.`,
    });
  }
  return words;
}

/** ", on 9 m of lead, which loses 0.5 % in place of 1.4 %" */
function onLead(there: SpotFigure, here: SpotFigure): string {
  if (Math.abs(there.leadM - here.leadM) < 0.05) return "";
  const [loses, now] = [lossWords(there.leadLossShare), lossWords(here.leadLossShare)];
  return `, on ${leadWords(there.leadM)} of lead${loses === now ? "" : `, which loses ${loses} in place of ${now}`}`;
}

function driveWords(report: SpotsReport): Words[] {
  const { here, best, asGood, heading } = report;
  const isBest = best.dayWh <= here.dayWh * (1 + AS_GOOD);
  const words: Words[] = isBest
    ? [{ text: ", as much as anywhere about." }]
    : [
        { text: ". The nearest spot as good as the best brings " },
        heavy(whWords(asGood.dayWh)),
        { text: `: ${wayWords(here, asGood)} of here.` },
      ];
  if (heading === null) return words;
  const [least, most] = [Math.min(...heading.flatWh), Math.max(...heading.flatWh)];
  words.push({ text: ` Turned about where they are, ${figure(least)} to ${figure(most)}.` });
  const raised = Math.max(...heading.tiltedWh);
  if (raised > most * WORTH_RAISING) {
    const deg = heading.headingDeg[heading.tiltedWh.indexOf(raised)]!;
    words.push({ text: ` Raised ${heading.tiltDeg}° towards the ${bearingWords(deg)}, ` }, heavy(whWords(raised)), {
      text: ".",
    });
  }
  return words;
}

const SKIES: Readonly<Record<SpotsPicture["sky"], string>> = {
  typical: "typical sky",
  clear: "clear sky",
  words: "the sky in words",
  file: "the sky of the weather file",
};

/** Of which sky and days the figures are. */
export function ofWhichSky({ report, sky }: SpotsPicture): string {
  const days =
    report.days === 0
      ? "the whole event"
      : report.days === 1
        ? "the event's one whole day"
        : `mean of the event's ${report.days} whole days`;
  return `${SKIES[sky]}, ${days}`;
}
