import { clockAt } from "../../time/localClock.ts";
import type { Words } from "../../words/answerOf.ts";
import { percent } from "../../words/numbers.ts";
import { inHundred, oddsRange } from "../../words/oddsWords.ts";
import type { Series } from "./forecastLayout.ts";

/** What a forecast says, first as one sentence: the words that name a scenario are drawn in its own line. */
export function forecastSentence(series: readonly Series[]): Words[] {
  const [first, second] = series;
  if (first === undefined) return [];
  const { picture } = first;
  const end = clockAt(picture.ruler, picture.startMs + picture.steps * picture.stepMs);
  const words: Words[] = [
    { text: first.name, as: "plan" },
    { text: `: the bank holds to ${end.weekday} ${end.clock} in ` },
    { text: `${inHundred(picture.report.holds)} of 100`, as: "figure" },
    { text: " skies" },
  ];
  if (second === undefined) return [...words, { text: "." }];
  return [
    ...words,
    { text: "; " },
    { text: second.name, as: "other" },
    { text: ", in " },
    { text: inHundred(second.picture.report.holds), as: "figure" },
    { text: "." },
  ];
}

/** How sure that is, and what "holds" means. */
export function forecastMore(series: readonly Series[], seed: string): string {
  const [first, second] = series;
  if (first === undefined) return "";
  const { report, reserveShare, members } = first.picture;
  const ranges = [report, ...(second === undefined ? [] : [second.picture.report])].map(({ holds }) =>
    oddsRange(holds),
  );
  return `Holds: never under the ${percent(reserveShare)} reserve and nothing left without power. By the size of the sample, ${ranges.join(" and ")}: ${members} skies, seed ${seed}.`;
}

/** Where it fails, when it does. */
export function failsWords({ picture, name }: Series): string | null {
  const fails = picture.report.failsMostly;
  if (fails === null || picture.report.holds.share > 0.995) return null;
  return `${name}, when it fails, falls under the reserve most often between ${fails.from.words} and ${fails.to.clock}.`;
}

/** One instant of a forecast in words. */
export function forecastInstant(series: readonly Series[], ms: number): string {
  const [first] = series;
  if (first === undefined) return "";
  const { day, clock } = clockAt(first.picture.ruler, ms);
  const parts = series.map(({ name, picture }) => {
    const i = Math.min(picture.steps, Math.max(0, Math.round((ms - picture.startMs) / picture.stepMs)));
    const { p5, p50, p95 } = picture.charge;
    return `${name} half the skies over ${percent(p50[i]!)}, nine in ten between ${percent(p5[i]!)} and ${percent(p95[i]!)}`;
  });
  return `${day} ${clock}: ${parts.join("; ")}.`;
}
