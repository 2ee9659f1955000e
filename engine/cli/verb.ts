import type { Problem } from "../index.ts";

/** What a verb is called with. */
export interface VerbCall {
  readonly scenario: string;
  readonly variant: string | undefined;
  readonly values: Readonly<Record<string, string | boolean | undefined>>;
  readonly print: (text: string) => void;
}

/** One word of the command line. */
export interface Verb {
  readonly name: string;
  readonly usage: string;
  readonly purpose: string;
  readonly options: Readonly<Record<string, { readonly type: "string" | "boolean"; readonly help: string }>>;
  readonly run: (call: VerbCall) => Promise<{ ok: true } | { ok: false; problems: readonly Problem[] }>;
}
