import type { BurdenMore } from "../../versus/burden.ts";
import { differenceInUnits } from "../../words/displayUnits.ts";
import { figure, THIN } from "../../words/numbers.ts";
import { inHundred } from "../../words/oddsWords.ts";
import type { Words } from "../../words/said.ts";
import type { PlanColumn } from "./planColumns.ts";
import type { VersusPicture } from "./versusPicture.ts";

/** Fewer than these make no difference that anybody would carry something for: 1 in 100 skies, 1 point of charge. */
const WORTH_CARRYING_SHARE = 0.01;

/** Strokes of a tally of 100: hold either way, only with the second, only with the first, neither way; they sum to 100. */
export function tallyOf100({
  tally,
  members,
}: Pick<VersusPicture, "tally" | "members">): readonly [number, number, number, number] {
  const counts = [tally.both, tally.onlySecond, tally.onlyFirst, tally.neither];
  const exact = counts.map((count) => (100 * count) / members);
  const strokes = exact.map(Math.floor);
  const byRest = exact.map((value, k) => ({ k, rest: value - Math.floor(value) })).sort((a, b) => b.rest - a.rest);
  const missing = 100 - strokes.reduce((sum, count) => sum + count, 0);
  for (const { k } of byRest.slice(0, missing)) strokes[k]!++;
  return strokes as unknown as [number, number, number, number];
}

/** Whether each is worth it, a sentence each; the first of them names what all are held against. */
export function versusSentence(columns: readonly PlanColumn[]): Words[] {
  const [first, ...others] = columns;
  return others.flatMap((other, k): Words[] => [
    ...(k === 0 ? [] : [{ text: " " }]),
    { text: other.name, as: other.look },
    ...(k === 0 ? [{ text: " against " }, { text: first!.name, as: first!.look }] : []),
    { text: ": " },
    ...pairWords(other.pair!),
  ]);
}

/** What the second changes against the first. */
export function pairWords(picture: VersusPicture): Words[] {
  const { holds, margin, tally, members } = picture;
  const saved = Math.round((100 * tally.onlySecond) / members);
  const lost = Math.round((100 * tally.onlyFirst) / members);
  const darkMore = picture.second.dark.share - picture.first.dark.share;
  const isDarkOther = Math.abs(darkMore) >= WORTH_CARRYING_SHARE;
  const isSmall =
    Math.abs(holds.mean) < WORTH_CARRYING_SHARE && Math.abs(margin.mean) < WORTH_CARRYING_SHARE && !isDarkOther;
  const price = priceWords(picture.more);
  if (isSmall) return [{ text: `no difference worth carrying${price}.` }];
  if (holds.low <= 0 && holds.high >= 0) {
    if (isDarkOther) return [{ text: "it holds about as often, but " }, ...darkWords(picture), { text: `${price}.` }];
    const points = `${margin.mean < 0 ? "" : "+"}${figure(100 * margin.mean, 1)}`;
    return [
      { text: "these skies cannot tell whether it holds more often; the lowest charge moves by " },
      { text: `${points} points`, as: "figure" },
      { text: ` on average${price}.` },
    ];
  }
  // Fewer failures go with fewer dark skies; where they do not, that is said.
  const turn = isDarkOther && darkMore > 0 === holds.mean > 0 ? [{ text: "; but " }, ...darkWords(picture)] : [];
  const [count, back, way] =
    holds.mean > 0
      ? [saved, lost, " skies it turns a bank that fails into one that holds"]
      : [lost, saved, " skies it turns a bank that holds into one that fails"];
  return [
    { text: "in " },
    { text: `${count} of 100`, as: "figure" },
    { text: `${way}${back > 0 ? `, in ${back} the other way round` : ""}${price}` },
    ...turn,
    { text: "." },
  ];
}

/** How often loads go dark, where that goes another way than holding does. */
function darkWords({ first, second }: VersusPicture): Words[] {
  return [
    { text: "loads go dark in " },
    { text: `${inHundred(second.dark)} of 100`, as: "figure" },
    { text: `, not ${inHundred(first.dark)}` },
  ];
}

/** ", for 260 in money, 14 kg and 57 min of work", as far as it is stated; empty where it costs nothing. */
function priceWords({ cost, massKg, minutes }: BurdenMore): string {
  const parts = [
    { value: cost, say: (value: number) => `${figure(value, 2)} in money` },
    { value: massKg, say: (value: number) => differenceInUnits(value, "kg") },
    { value: minutes, say: (value: number) => `${figure(value, 1)}${THIN}min of work` },
  ].flatMap(({ value, say }) => (value === null || Math.abs(value) < 0.005 ? [] : [{ value, say }]));
  const list = (of: typeof parts) => {
    const words = of.map(({ value, say }) => say(Math.abs(value)));
    return words.length < 2 ? words.join("") : `${words.slice(0, -1).join(", ")} and ${words.at(-1)}`;
  };
  const more = parts.filter(({ value }) => value > 0);
  const less = parts.filter(({ value }) => value < 0);
  return `${more.length === 0 ? "" : `, for ${list(more)}`}${less.length === 0 ? "" : `, saving ${list(less)}`}`;
}
