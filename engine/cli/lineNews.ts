/** What the thread that answers a call is started with. */
export interface LineCall {
  readonly args: readonly string[];
}

/** What it tells the one that started it: each time one thing. */
export type LineNews =
  | { readonly print: string }
  | { readonly complain: string }
  | { readonly progress: number }
  | { readonly drafting: string | null }
  | { readonly wantsInput: true }
  | { readonly code: number };
