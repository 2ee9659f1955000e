import type { Problem } from "./problem.ts";

/** Enough to see what is wrong; a bad column of a year by the hour would otherwise fill the screen 8,760 times. */
export const MOST_PROBLEMS = 50;

/** Collects problems; the first fifty are kept in words, the rest are counted. */
export interface ProblemList {
  add(code: string, path: Problem["path"], message: string): void;
  isEmpty(): boolean;
  problems(): Problem[];
}

export function makeProblemList(): ProblemList {
  const shown: Problem[] = [];
  let more = 0;
  return {
    add(code, path, message) {
      if (shown.length < MOST_PROBLEMS) shown.push({ code, path, message });
      else more++;
    },
    isEmpty: () => shown.length === 0,
    problems: () => (more === 0 ? shown : [...shown, moreProblems(more)]),
  };
}

/** Problems as they are handed out: the first fifty, and how many more there are. */
export function listedProblems(problems: readonly Problem[]): Problem[] {
  const more = problems.length - MOST_PROBLEMS;
  return more > 0 ? [...problems.slice(0, MOST_PROBLEMS), moreProblems(more)] : [...problems];
}

/** The sentence that stands for problems beyond the first fifty. */
export function moreProblems(more: number): Problem {
  const count = String(more).replace(/\B(?=(?:\d{3})+$)/g, ",");
  const message = `There ${more === 1 ? "is one more problem" : `are ${count} more problems`}; put these right first and read it again.`;
  return { code: "more-problems", path: [], message };
}
