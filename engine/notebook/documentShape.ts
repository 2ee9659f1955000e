import shape from "./documentShape.json";

/**
 * What a scenario's document is made of: which fields are lists, things with fields of their own, texts and numbers, and which cannot be
 * left out ("?" marks those that can). It is the frame of the engine's own schema without what values may be,
 * which `npm run docs` writes, and it is small enough to be at hand before anything is shown.
 */
export type Shape =
  | "text"
  | "number"
  | "number or nothing"
  | "yes or no"
  | "anything"
  | readonly [Shape]
  | { readonly [field: string]: Shape }
  | Kinds;

/** A thing that comes in several kinds, by the word in its field `kind`. */
export interface Kinds {
  readonly kinds: { readonly [kind: string]: { readonly [field: string]: Shape } };
}

export const DOCUMENT_SHAPE = shape as unknown as Shape;
