/** A thing of the list that no set takes, by its place, and why; the reason begins small and has no stop. */
export interface LeftOut {
  readonly thing: number;
  readonly why: string;
}
