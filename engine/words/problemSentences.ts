import type { Problem } from "../scenario/problem.ts";
import { figure } from "./numbers.ts";

/**
 * The first few of a document's problems as sentences, and how many more there are.
 * @param problems as the engine lists them: fifty at most, and then one that counts the rest
 */
export function problemSentences(problems: readonly Problem[], most: number): string[] {
  const sentences = problems.slice(0, most).map(({ message }) => message);
  const isCut = problems.at(-1)?.code === "more-problems";
  const more = problems.length - sentences.length - (isCut ? 1 : 0);
  if (more <= 0) return sentences;
  return [...sentences, `And ${isCut ? "at least " : ""}${figure(more)} more.`];
}
