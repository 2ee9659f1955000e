import type { Verdict } from "../../engine/index.ts";
import { clockAt } from "../time/localClock.ts";
import type { Ruler } from "../time/ruler.ts";
import { ampHours, energy, figure, hours, percent, THIN, volts } from "./numbers.ts";

/** A piece of a sentence: plain, a heavy figure, or the words that name the plan in its line's own stroke. */
export interface Words {
  readonly text: string;
  readonly as?: "figure" | "plan";
}

export interface Answer {
  /** One sentence, the largest thing on the page. */
  readonly sentence: readonly Words[];
  /** What follows from it, in sentences. */
  readonly more: readonly string[];
}

export interface AnswerFacts {
  readonly verdict: Verdict;
  readonly ruler: Ruler;
  readonly endMs: number;
  readonly fullAh: number;
  readonly reserveShare: number;
  /** Names of the variants that are in. */
  readonly withWords: readonly string[];
}

const plain = (text: string): Words => ({ text });
const heavy = (text: string): Words => ({ text, as: "figure" });

/** The verdict's figures as the sentence that heads the page. */
export function answerOf(facts: AnswerFacts): Answer {
  const { verdict, ruler, endMs, reserveShare, withWords } = facts;
  const end = clockAt(ruler, endMs);
  const named: Words[] =
    withWords.length > 0
      ? [plain("With "), { text: withWords.join(" and "), as: "plan" }, plain(" the bank ")]
      : [{ text: "The bank", as: "plan" }, plain(" ")];
  return {
    sentence: [...named, ...(verdict.holds ? holds(facts) : fails(facts))],
    more: [
      ...(verdict.holds
        ? []
        : [
            `Lowest ${percent(verdict.lowestShare)} (${ampHours(verdict.lowestAh)}) on ${moment(ruler, verdict.lowestMs)}; ${hours(verdict.belowReserveH)} under the ${percent(reserveShare)} reserve.`,
          ]),
      ...(verdict.dark ? [`${energy(verdict.unservedWh)} unserved.`] : []),
      `${percent(verdict.endShare)} is left on ${end.day} ${end.clock}.`,
      ...verdict.radios
        .filter((radio) => radio.dropoutH > 0)
        .map(
          (radio) =>
            `${radio.name} falls to ${volts(radio.lowestV!)} on transmit peaks, under its ${volts(radio.minimumV)}, for ${hours(radio.dropoutH)}: look to cable, fuse and pack, not to the charge.`,
        ),
    ],
  };
}

/** "Sun 11 07:40" */
export function moment(ruler: Ruler, ms: number): string {
  const { day, clock } = clockAt(ruler, ms);
  return `${day} ${clock}`;
}

function holds({ verdict, ruler, endMs, reserveShare }: AnswerFacts): Words[] {
  const end = clockAt(ruler, endMs);
  const lowest = clockAt(ruler, verdict.lowestMs);
  const points = Math.round(verdict.marginShare * 100);
  return [
    plain("holds to "),
    heavy(`${end.weekday} ${end.clock}`),
    plain(": at its lowest, "),
    heavy(`${lowest.weekday} ${lowest.clock}`),
    plain(", it has "),
    heavy(percent(verdict.lowestShare)),
    plain(
      points === 0
        ? `, right at the ${percent(reserveShare)} reserve.`
        : `, ${figure(points)}${THIN}points over the reserve.`,
    ),
  ];
}

function fails({ verdict, ruler, reserveShare }: AnswerFacts): Words[] {
  const under = clockAt(ruler, verdict.belowReserveFromMs!);
  const reserve = [plain("is under its "), heavy(percent(reserveShare)), plain(" reserve from ")];
  const from = heavy(`${under.weekday} ${under.clock}`);
  if (verdict.darkFromMs === null) {
    const lowest = clockAt(ruler, verdict.lowestMs);
    const when = `${lowest.weekday} ${lowest.clock}`;
    return [
      ...reserve,
      from,
      plain(" and down to "),
      heavy(percent(verdict.lowestShare)),
      plain(` by ${when}; it never goes dark.`),
    ];
  }
  const dark = clockAt(ruler, verdict.darkFromMs);
  return [
    ...reserve,
    from,
    plain(" and dark from "),
    heavy(dark.weekday === under.weekday ? dark.clock : `${dark.weekday} ${dark.clock}`),
    plain(", "),
    heavy(hours(verdict.darkH)),
    plain(" in all."),
  ];
}
