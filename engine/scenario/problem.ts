/** What is wrong with something a user gave: code acts on `code`, people read `message`. */
export interface Problem {
  readonly code: string;
  readonly path: readonly (string | number)[];
  readonly message: string;
}
