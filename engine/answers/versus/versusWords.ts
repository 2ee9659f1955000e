import { differenceInUnits } from "../../words/displayUnits.ts";
import type { Look } from "../../words/look.ts";
import { figure } from "../../words/numbers.ts";
import { inHundred } from "../../words/oddsWords.ts";
import type { Words } from "../../words/said.ts";
import type { VersusPicture } from "./versusPicture.ts";

/** Fewer than these make no difference that anybody would carry something for: 1 in 100 skies, 1 point of charge. */
const WORTH_CARRYING_SHARE = 0.01;

/** Strokes of a tally of 100: hold either way, only with the second, only with the first, neither way; they sum to 100. */
export function tallyOf100({ tally, members }: VersusPicture): readonly [number, number, number, number] {
  const counts = [tally.both, tally.onlySecond, tally.onlyFirst, tally.neither];
  const exact = counts.map((count) => (100 * count) / members);
  const strokes = exact.map(Math.floor);
  const byRest = exact.map((value, k) => ({ k, rest: value - Math.floor(value) })).sort((a, b) => b.rest - a.rest);
  const missing = 100 - strokes.reduce((sum, count) => sum + count, 0);
  for (const { k } of byRest.slice(0, missing)) strokes[k]!++;
  return strokes as unknown as [number, number, number, number];
}

/** What a scenario is called, and how it is drawn. */
export interface Named {
  readonly name: string;
  readonly look: Look;
}

/** Whether the second is worth it, in one sentence. */
export function versusSentence(picture: VersusPicture, first: Named, second: Named): Words[] {
  const { holds, margin, tally, members } = picture;
  const saved = Math.round((100 * tally.onlySecond) / members);
  const lost = Math.round((100 * tally.onlyFirst) / members);
  const darkMore = picture.second.dark.share - picture.first.dark.share;
  const isSmall =
    Math.abs(holds.mean) < WORTH_CARRYING_SHARE &&
    Math.abs(margin.mean) < WORTH_CARRYING_SHARE &&
    Math.abs(darkMore) < WORTH_CARRYING_SHARE;
  const names: Words[] = [
    { text: second.name, as: second.look },
    { text: " against " },
    { text: first.name, as: first.look },
    { text: ": " },
  ];
  if (isSmall) return [...names, { text: "no difference worth carrying." }];
  const isDarkOther = Math.abs(darkMore) >= WORTH_CARRYING_SHARE;
  if (holds.low <= 0 && holds.high >= 0) {
    if (isDarkOther) return [...names, { text: "it holds about as often, but " }, ...darkWords(picture)];
    const points = `${margin.mean < 0 ? "" : "+"}${figure(100 * margin.mean, 1)}`;
    return [
      ...names,
      { text: "these skies cannot tell whether it holds more often; the lowest charge moves by " },
      { text: `${points} points`, as: "figure" },
      { text: " on average." },
    ];
  }
  // Fewer failures go with fewer dark skies; where they do not, that is said.
  const turn =
    isDarkOther && darkMore > 0 === holds.mean > 0 ? [{ text: "; but " }, ...darkWords(picture)] : [{ text: "." }];
  if (holds.mean > 0) {
    return [
      ...names,
      { text: "in " },
      { text: `${saved} of 100`, as: "figure" },
      { text: " skies it turns a bank that fails into one that holds" },
      { text: lost > 0 ? `, in ${lost} the other way round` : "" },
      ...turn,
    ];
  }
  return [
    ...names,
    { text: "in " },
    { text: `${lost} of 100`, as: "figure" },
    { text: " skies it turns a bank that holds into one that fails" },
    { text: saved > 0 ? `, in ${saved} the other way round` : "" },
    ...turn,
  ];
}

/** How often loads go dark, where that goes another way than holding does. */
function darkWords({ first, second }: VersusPicture): Words[] {
  return [
    { text: "loads go dark in " },
    { text: `${inHundred(second.dark)} of 100`, as: "figure" },
    { text: `, not ${inHundred(first.dark)}.` },
  ];
}

/** What else has to be carried, paid and put up: "+14 kg, +24 min of work, +260 in cost". */
export function burdenWords({ first, second }: VersusPicture): string {
  const more = (pick: (side: VersusPicture["first"]) => number | null, say: (value: number) => string) => {
    const [a, b] = [pick(first), pick(second)];
    if (a === null && b === null) return [];
    const value = (b ?? 0) - (a ?? 0);
    return value === 0 ? [] : [`${value > 0 ? "+" : ""}${say(value)}`];
  };
  const parts = [
    ...more(
      (side) => side.burden.massKg,
      (kg) => differenceInUnits(kg, "kg"),
    ),
    ...more(
      (side) => side.burden.setupMinutes,
      (minutes) => `${figure(minutes, 1)} min of work`,
    ),
    ...more(
      (side) => side.burden.cost,
      (cost) => `${figure(cost, 1)} in cost`,
    ),
  ];
  return parts.length === 0
    ? "As far as it is stated, neither costs, weighs or takes more."
    : `${parts.join(", ")}, as stated.`;
}
