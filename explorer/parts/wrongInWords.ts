import { fieldLabel, withLabels } from "../../engine/fields/fieldWords.ts";
import { pattern } from "../../engine/fields/formPath.ts";
import { isShare, numberPart, type SchemaNode } from "../../engine/fields/formSchema.ts";
import { plainFigure, shownUnit, toShown } from "../../engine/fields/shownValue.ts";
import type { Problem } from "../../engine/scenario/problem.ts";
import { THIN } from "../../engine/words/numbers.ts";
import { likelyMeant } from "./likelyMeant.ts";

/** One sentence beside a field, and the value that was probably meant, as the document would store it. */
export interface Wrong {
  readonly sentence: string;
  readonly meant: number | null;
}

const withUnit = (value: number, unit: string) =>
  unit === "" ? plainFigure(value) : unit === "°" ? `${plainFigure(value)}°` : `${plainFigure(value)}${THIN}${unit}`;

/**
 * What is wrong with a field, in the words of the page.
 * @param value what stands in the document
 * @param usual what stood there before, or stands in the base; null when nothing does
 */
export function wrongInWords(problem: Problem, value: unknown, node: SchemaNode | undefined, usual: unknown): Wrong {
  const facts = node === undefined ? undefined : numberPart(node).quantity;
  if (problem.code === "missing")
    return { sentence: `${fieldLabel(pattern(problem.path))} is still to be filled in.`, meant: null };
  if (problem.code !== "not-allowed" || node === undefined || facts === undefined) {
    return { sentence: spokenSentence(problem), meant: null };
  }
  const unit = shownUnit(node);
  if (typeof value !== "number") {
    const example = usual ?? facts.typical?.[0] ?? facts.low;
    return {
      sentence: `\u201c${String(value).slice(0, 40)}\u201d is no number; write one such as ${plainFigure(toShown(Number(example), node))}.`,
      meant: null,
    };
  }
  // Two slips are looked for: in what the page shows, which is what was typed.
  const seen = (number: number) => toShown(number, node);
  const limits = { ...facts, unit, low: seen(facts.low), high: seen(facts.high) };
  const typical =
    facts.typical === undefined ? {} : { typical: [seen(facts.typical[0]), seen(facts.typical[1])] as const };
  const meant = likelyMeant(seen(value), { ...limits, ...typical }, typeof usual === "number" ? seen(usual) : null);
  const end =
    seen(value) > limits.high ? `stops at ${withUnit(limits.high, unit)}` : `starts at ${withUnit(limits.low, unit)}`;
  const isBroken = node.type === "integer" && !Number.isInteger(value) && value >= facts.low && value <= facts.high;
  const subject = isShare(node) ? "A share here" : "This";
  const said = isBroken ? `${plainFigure(value)} is not a whole number` : `${subject} ${end}`;
  const guess = isBroken ? Math.round(value) : meant;
  return {
    sentence: guess === null ? `${said}.` : `${said}. Did you mean ${withUnit(guess, unit)}?`,
    meant: guess === null ? null : isShare(node) ? Number((guess / 100).toPrecision(12)) : guess,
  };
}

/** The engine's sentence with the document's names turned into those of the page. */
function spokenSentence({ path, message }: Problem): string {
  const last = fieldLabel(pattern(path));
  const bare = message
    .replace(/^\S+: /, "")
    .replace(/^[\w$]+(?:\.[\w-]+)* (is|has|names|puts) /, (_, verb: string) => `${last} ${verb} `)
    .replace(/,? such as \{[^}]*\}/g, "");
  const said = withLabels(bare);
  return said.charAt(0).toUpperCase() + said.slice(1);
}
