import type { Ledger } from "../../run/ledger.ts";
import type { ScenarioInput } from "../../scenario/scenario.ts";
import { energy, THIN } from "../../words/numbers.ts";
import { inHundred } from "../../words/oddsWords.ts";
import type { Words } from "../../words/said.ts";
import type { Series } from "./forecastLayout.ts";
import { forecastSentence } from "./forecastWords.ts";
import type { OddsPicture } from "./oddsPicture.ts";

/** A plan that holds in fewer skies than this has something to explain; one that does not, has not. */
const SAFE_SHARE = 0.95;
/** One in a hundred skies more is worth naming. */
const WORTH_NAMING_SHARE = 0.01;

/** What the reason is looked for in; null while it is not known. */
export interface PlanFacts {
  readonly ledger: Ledger;
  readonly document: ScenarioInput;
}

/**
 * What heads a notebook. Where the plan is safe, the forecast's own sentence; where it is not: how often it holds, when it first fails and by
 * how much, the main reason, and which of the other scenarios does better.
 * @param series the forecast's scenarios; @param plan which of them the others are variants of
 */
export function forecastHeadline(series: readonly Series[], plan: string, facts: PlanFacts | null): Words[] {
  const first = series.find(({ id }) => id === plan) ?? series[0];
  if (first === undefined || first.picture.report.holds.share >= SAFE_SHARE) return forecastSentence(series);
  const others = series.filter((each) => each !== first);
  return [...forecastSentence([first]), ...failsFirst(first.picture, facts), ...betterWords(first, others)];
}

function failsFirst(picture: OddsPicture, facts: PlanFacts | null): Words[] {
  const { failsMostly: fails, lowestShare, reserveShare } = picture.report;
  if (fails === null) return [];
  const [weekday] = fails.from.words.split(" ");
  const how = fails.by === "reserve" ? "It fails first" : "Something goes without first";
  const points = Math.round(100 * (reserveShare - lowestShare.p50));
  const half = fails.by === "dark" || points < 1 ? "" : `, by ${points}${THIN}points or more in half the skies`;
  const why = facts === null ? null : mainReason(picture, facts);
  return [
    { text: ` ${how} on ` },
    { text: `${weekday} ${fails.from.clock}–${fails.to.clock}`, as: "figure" },
    { text: `${half}${why === null ? "" : `: ${why}`}.` },
  ];
}

/** Shade that takes less than this of the panels' sun is not the main reason. */
const MUCH_SHADE_SHARE = 0.3;

/** Why a plan fails, in half a sentence. */
export function mainReason({ report }: Pick<OddsPicture, "report">, { ledger, document }: PlanFacts): string {
  if (report.failsMostly?.by === "dark") return "the bank is short of current or volts, or too cold, and not of charge";
  const unshadedWh = ledger.harvest.reduce((sum, line) => sum + line.unshadedWh, 0);
  const shadeWh = ledger.harvest.reduce((sum, line) => sum + line.shadeLossWh, 0);
  if (unshadedWh > 0 && shadeWh >= MUCH_SHADE_SHARE * unshadedWh) {
    return `${shadersOf(document)} ${tenths(shadeWh / unshadedWh)} of the sun`;
  }
  if (unshadedWh === 0) return `no sun comes in, and the loads want ${energy(ledger.wantedWh)}`;
  return `the sun brings ${energy(report.solarWh.p50)} of the ${energy(report.demandWh.p50)} that the loads want`;
}

function shadersOf({ obstacles = [] }: ScenarioInput): string {
  const near = obstacles.filter(({ kind }) => kind !== "horizon");
  const trees = near.filter(({ kind }) => kind === "tree").length;
  if (trees === 0) return near.length > 0 ? "what stands about takes" : "the skyline takes";
  return trees === 1 ? "the tree takes" : "the trees take";
}

const TENTHS = ["", "a tenth", "two tenths", "three tenths", "four tenths", "half", "six tenths", "seven tenths"];
function tenths(share: number): string {
  const count = Math.round(10 * share);
  return TENTHS[count] ?? (count === 8 ? "eight tenths" : count === 9 ? "nine tenths" : "all");
}

/** The others, best first where that is better than the plan. */
function betterWords({ picture }: Series, others: readonly Series[]): Words[] {
  const sorted = [...others].sort((a, b) => b.picture.report.holds.share - a.picture.report.holds.share);
  const better = sorted.filter(
    (other) => other.picture.report.holds.share - picture.report.holds.share >= WORTH_NAMING_SHARE,
  );
  return (better.length > 0 ? better : sorted).flatMap((other, k): Words[] => [
    { text: k === 0 ? " " : ", " },
    { text: other.name, as: other.look },
    { text: ": " },
    { text: inHundred(other.picture.report.holds), as: "figure" },
    { text: k === (better.length > 0 ? better : sorted).length - 1 ? "." : "" },
  ]);
}
