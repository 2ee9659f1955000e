import type { ScenarioInput } from "../scenario/scenario.ts";

/** Something to be worked out: a question, by the kind that owns it, and its document. `Picture` is what the answer will be. */
export interface Asked<Picture = unknown> {
  readonly kind: string;
  readonly doc: unknown;
  /** Never there: carries the answer's type. */
  readonly picture?: Picture;
}

/** A question with the documents it is about: plain data whose `key` is its whole content, so that equal wants have equal keys. */
export interface Want<Choices = unknown> {
  readonly key: string;
  readonly kind: string;
  readonly documents: readonly ScenarioInput[];
  readonly choices: Choices;
  readonly seed: string;
  /** Members, or rows of a sample, that it is worked out with; 0 where nothing is drawn. */
  readonly members: number;
}
