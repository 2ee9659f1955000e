import type { Problem } from "../scenario/problem.ts";

/** What a verb is called with. */
export interface VerbCall {
  readonly scenario: string;
  /** Further scenario files, for verbs that take several. */
  readonly others: readonly string[];
  readonly variant: string | undefined;
  readonly values: Readonly<Record<string, string | boolean | undefined>>;
  readonly print: (text: string) => void;
}

/** One word of the command line. */
export interface Verb {
  readonly name: string;
  readonly usage: string;
  readonly purpose: string;
  readonly takesSeveral?: boolean;
  /** What stands after the verb where that is no SCENARIO. */
  readonly takes?: "NOTEBOOK" | "WORDS";
  readonly options: Readonly<
    Record<string, { readonly type: "string" | "boolean"; readonly short?: string; readonly help: string }>
  >;
  readonly run: (call: VerbCall) => Promise<{ ok: true } | { ok: false; problems: readonly Problem[] }>;
}
