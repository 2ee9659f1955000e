import type { Problem } from "../scenario/problem.ts";

/** What a question comes to: its report, or what is wrong with what was given, one sentence for each problem. Look at `ok` first. */
export type Answer<Report> =
  | {
      readonly ok: true;
      readonly report: Report;
      /** What a person should know of how the figures were come by, as sentences: where the weather is from, what had to be assumed. */
      readonly remarks: readonly string[];
    }
  | { readonly ok: false; readonly problems: readonly Problem[] };
