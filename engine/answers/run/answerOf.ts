import type { Ruler } from "../../ruler/ruler.ts";
import { clockAt, moment } from "../../ruler/rulerClock.ts";
import type { Verdict } from "../../run/verdict.ts";
import { voltsLostWords } from "../../run/voltsLost.ts";
import type { Look } from "../../words/look.ts";
import { ampHours, energy, figure, hours, percent, THIN, volts } from "../../words/numbers.ts";
import type { Words } from "../../words/said.ts";

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
  readonly reserveShare: number;
  /** Over the whole event: what the panels give, what of it cannot be used, what the loads want. */
  readonly solarWh: number;
  readonly spilledWh: number;
  readonly wantedWh: number;
  /** Names of the variants that are in. */
  readonly withWords: readonly string[];
  readonly look: Look;
}

const capital = (text: string) => text.charAt(0).toUpperCase() + text.slice(1);
const plain = (text: string): Words => ({ text });
const heavy = (text: string): Words => ({ text, as: "figure" });

/** The verdict's figures as the sentence that heads the page. */
export function answerOf(facts: AnswerFacts): Answer {
  const { verdict, ruler, endMs, reserveShare, solarWh, spilledWh, wantedWh, withWords, look } = facts;
  const end = clockAt(ruler, endMs);
  const named: Words[] =
    withWords.length > 0
      ? [{ text: capital(withWords.join(", ")), as: look }, plain(": the bank ")]
      : [{ text: "The bank", as: look }, plain(" ")];
  return {
    sentence: [...named, ...(verdict.holds ? holds(facts) : fails(facts))],
    more: [
      ...(verdict.belowReserveFromMs === null
        ? []
        : [
            `Lowest ${percent(verdict.lowestShare)} (${ampHours(verdict.lowestAh)}) on ${moment(ruler, verdict.lowestMs)}; ${hours(verdict.belowReserveH)} under the ${percent(reserveShare)} reserve.`,
          ]),
      ...(verdict.dark ? [`${energy(verdict.unservedWh)} unserved.`] : []),
      ...(percent(verdict.endShare) === percent(verdict.lowestShare)
        ? []
        : [`${percent(verdict.endShare)} is left on ${end.day} ${end.clock}.`]),
      `The sun gives ${energy(solarWh)}${spilledWh < 0.5 ? "" : `, of which ${energy(spilledWh)} is spilled`}; the loads want ${energy(wantedWh)}.`,
      ...verdict.radios
        .filter((radio) => radio.dropoutH > 0)
        .map(
          (radio) =>
            `${radio.name} falls to ${volts(radio.lowestV!)} on transmit peaks, under its ${volts(radio.minimumV)}, for ${hours(radio.dropoutH)}: ${voltsLostWords(radio.lost!)}.`,
        ),
    ],
  };
}

/** "Sun 07:40"; "Sun 14 07:40" where the week's days come round again. */
function shortMoment(ruler: Ruler, ms: number): string {
  const { weekday, day, clock } = clockAt(ruler, ms);
  return `${ruler.days.length > 7 ? day : weekday} ${clock}`;
}

function holds({ verdict, ruler, endMs, reserveShare }: AnswerFacts): Words[] {
  const points = Math.round(verdict.marginShare * 100);
  const isAtEnd = verdict.lowestMs === endMs;
  return [
    plain("holds to "),
    heavy(shortMoment(ruler, endMs)),
    plain(isAtEnd ? " and ends at its lowest, " : "; lowest "),
    heavy(percent(verdict.lowestShare)),
    plain(isAtEnd ? ", " : ` on ${shortMoment(ruler, verdict.lowestMs)}, `),
    ...(points === 0
      ? [plain(`right at the ${percent(reserveShare)} reserve.`)]
      : [heavy(`${figure(points)}${THIN}${points === 1 ? "point" : "points"}`), plain(" over the reserve.")]),
  ];
}

function fails({ verdict, ruler, reserveShare }: AnswerFacts): Words[] {
  if (verdict.belowReserveFromMs === null)
    return [
      plain("keeps its reserve, and something goes without from "),
      heavy(shortMoment(ruler, verdict.darkFromMs!)),
      plain(", "),
      heavy(hours(verdict.darkH)),
      plain(` in all; lowest ${percent(verdict.lowestShare)}.`),
    ];
  const under = clockAt(ruler, verdict.belowReserveFromMs);
  const reserve = [plain("is under its "), heavy(percent(reserveShare)), plain(" reserve from ")];
  const from = heavy(shortMoment(ruler, verdict.belowReserveFromMs));
  if (verdict.darkFromMs === null) {
    const when = shortMoment(ruler, verdict.lowestMs);
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
    heavy(dark.day === under.day ? dark.clock : shortMoment(ruler, verdict.darkFromMs)),
    plain(", "),
    heavy(hours(verdict.darkH)),
    plain(" in all."),
  ];
}
