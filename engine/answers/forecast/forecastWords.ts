import { clockAt } from "../../ruler/rulerClock.ts";
import { percent } from "../../words/numbers.ts";
import { inHundred, oddsRange, withoutWords } from "../../words/oddsWords.ts";
import type { Words } from "../../words/said.ts";
import type { Series } from "./forecastLayout.ts";

/** What a forecast says, first as one sentence: the words that name a scenario are drawn in its own line. */
export function forecastSentence(series: readonly Series[]): Words[] {
  const [first, ...others] = series;
  if (first === undefined) return [];
  const { picture } = first;
  const end = clockAt(picture.ruler, picture.startMs + picture.steps * picture.stepMs);
  const words: Words[] = [
    { text: first.name, as: first.look },
    { text: `: the bank holds to ${end.weekday} ${end.clock} in ` },
    { text: `${inHundred(picture.report.holds)} of 100`, as: "figure" },
    { text: " skies" },
  ];
  const rest = others.flatMap((other): Words[] => [
    { text: "; " },
    { text: other.name, as: other.look },
    { text: ", in " },
    { text: inHundred(other.picture.report.holds), as: "figure" },
  ]);
  return [...words, ...rest, { text: "." }];
}

/** How sure that is, and what "holds" means. */
export function forecastMore(series: readonly Series[], seed: string): string {
  const [first] = series;
  if (first === undefined) return "";
  const { reserveShare, members } = first.picture;
  const ranges = series.map(({ picture }) => oddsRange(picture.report.holds));
  const without = withoutWords(first.picture.report);
  return `${without === null ? "" : `${without} `}Holds: never under the ${percent(reserveShare)} reserve, and nothing planned goes without. By the size of the sample, ${listed(ranges)}: ${members} skies, seed ${seed}.`;
}

const listed = (parts: readonly string[]) =>
  parts.length < 2 ? parts.join("") : `${parts.slice(0, -1).join(", ")} and ${parts.at(-1)}`;

/** Where it fails, when it does. */
export function failsWords({ picture, name }: Series): string | null {
  const fails = picture.report.failsMostly;
  if (fails === null || picture.report.holds.share > 0.995) return null;
  const how = fails.by === "reserve" ? "falls under the reserve" : "goes without something";
  return `${name}, when it fails, ${how} most often between ${fails.from.words} and ${fails.to.clock}.`;
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
