import type { Prepared } from "../run/prepare.ts";

export interface Span {
  readonly startMs: number;
  readonly endMs: number;
}

/** Hours of an event in which no generator may run; none where there is no generator, or one that always may. */
export function quietSpans({ sources, grid }: Pick<Prepared, "sources" | "grid">): Span[] {
  const generators = sources.filter(({ isGenerator }) => isGenerator);
  if (generators.length === 0) return [];
  const spans: Span[] = [];
  let from = -1;
  for (let i = 0; i <= grid.steps; i++) {
    const isQuiet = i < grid.steps && generators.every(({ availableShare }) => availableShare[i]! <= 0);
    if (isQuiet && from < 0) from = i;
    if (isQuiet || from < 0) continue;
    spans.push({ startMs: grid.startMs + from * grid.stepMs, endMs: grid.startMs + i * grid.stepMs });
    from = -1;
  }
  return spans;
}
