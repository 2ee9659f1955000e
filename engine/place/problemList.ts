import type { Problem } from "../scenario/problem.ts";

/** Enough to see what is wrong; a bad column would otherwise fill the screen 8,760 times. */
const MOST_SHOWN = 20;

/** Collects problems; the first twenty are kept in words, the rest are counted. */
export interface ProblemList {
  add(code: string, path: (string | number)[], message: string): void;
  isEmpty(): boolean;
  problems(): Problem[];
}

export function makeProblemList(): ProblemList {
  const shown: Problem[] = [];
  let more = 0;
  return {
    add(code, path, message) {
      if (shown.length < MOST_SHOWN) shown.push({ code, path, message });
      else more++;
    },
    isEmpty: () => shown.length === 0,
    problems() {
      if (more === 0) return shown;
      const message = `There are ${more} more problems of this kind; mend these first and read the file again.`;
      return [...shown, { code: "more-problems", path: [], message }];
    },
  };
}
