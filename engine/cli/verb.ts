import type { Problem } from "../scenario/problem.ts";
import type { CallContext } from "./callContext.ts";
import type { Said } from "./said.ts";

/** What a verb is called with. */
export interface VerbCall extends Pick<Said, "print" | "ask"> {
  /** What stands first behind the verb; empty where it may be left out and is. */
  readonly scenario: string;
  /** Further scenario files, for verbs that take several. */
  readonly others: readonly string[];
  readonly variant: string | undefined;
  readonly values: Readonly<Record<string, string | boolean | undefined>>;
  readonly context: CallContext;
  /** Writes a file that was asked for, as `--force` allows it, and never over what was read. */
  readonly write: (path: string, text: string) => Promise<void>;
  /** Refuses a file that is there already before anything is worked out. @throws CallError */
  readonly requireRoom: (path: string) => Promise<void>;
}

/** One option of a verb. */
export interface VerbOption {
  readonly type: "string" | "boolean";
  readonly short?: string;
  readonly help: string;
  /** What its value is: a file, or one of these words. Left out: a number or a text. */
  readonly takes?: "FILE" | readonly string[];
}

/** One word of the command line. */
export interface Verb {
  readonly name: string;
  readonly usage: string;
  readonly purpose: string;
  readonly takesSeveral?: boolean;
  /** What stands after the verb where that is no SCENARIO: a notebook's file, words to look for, one of some words, or a file to be written, which may be left out. */
  readonly takes?: "NOTEBOOK" | "WORDS" | "FILE" | readonly string[];
  /** Whether it writes what it makes itself; else `-o FILE` keeps what it prints. */
  readonly writesItself?: boolean;
  readonly options: Readonly<Record<string, VerbOption>>;
  readonly run: (call: VerbCall) => Promise<{ ok: true } | { ok: false; problems: readonly Problem[] }>;
}
