import type { Problem } from "../../engine/scenario/problem.ts";
import type { ScenarioInput } from "../../engine/scenario/scenario.ts";

/** The field that a problem belongs to: "blockAh", "inParallel", "reservePercent", "sky", "panels.roof"; null for none. */
export function problemPlace(problem: Problem, document: ScenarioInput): string | null {
  const [top, second] = problem.path;
  if (top === "bank") {
    if (second === "blockAh" || second === "inParallel") return second;
    return second === "reserveShare" ? "reservePercent" : null;
  }
  if (top === "weather") return "sky";
  if (top === "panels" && typeof second === "number") {
    const group = document.panels?.[second];
    return group === undefined ? null : `panels.${group.id}`;
  }
  return null;
}

const SPOKEN: readonly (readonly [RegExp, string])[] = [
  [/^bank\.blockAh\b/, "A block"],
  [/^bank\.inParallel\b/, "The number of blocks side by side"],
  [/^bank\.reserveShare\b/, "The reserve (100 % is 1)"],
  [/^panels\.[^.:\s]+\.count\b/, "The number of panels"],
  [/^panels\.[^:\s]+:\s*/, ""],
];

/** The engine's sentence with the document's field name turned into the words that stand on the page. */
export function problemSentence(message: string): string {
  for (const [pattern, words] of SPOKEN) {
    if (!pattern.test(message)) continue;
    const sentence = message.replace(pattern, words);
    return sentence.charAt(0).toUpperCase() + sentence.slice(1);
  }
  return message;
}
