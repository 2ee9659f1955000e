import type { Problem } from "../scenario/problem.ts";

/** Thrown where a scenario is wrong; whoever asked is told the problems. */
export class Refused extends Error {
  constructor(readonly problems: readonly Problem[]) {
    super(problems.map(({ message }) => message).join(" "));
  }
}

type Ready<T> =
  | { readonly ok: true; readonly value: T }
  | { readonly ok: false; readonly problems: readonly Problem[] };

/** The value. @throws Refused where there is none */
export function valueOrRefused<T>(ready: Ready<T>): T {
  if (!ready.ok) throw new Refused(ready.problems);
  return ready.value;
}
