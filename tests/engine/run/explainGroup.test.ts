import { describe, expect, test } from "vitest";
import { prepareEnsemble } from "../../../engine/ensemble/prepareEnsemble.ts";
import { replayMember } from "../../../engine/odds/odds.ts";
import { loadClimateTables } from "../../../engine/place/loadClimateTables.ts";
import { explainGroup } from "../../../engine/run/explainGroup.ts";
import type { RunResult } from "../../../engine/run/runResult.ts";
import { trace } from "../../../engine/run/trace.ts";
import { bitScenarios } from "../../bitScenarios.ts";

// `explainGroup` works out the light again in its own words, where `stepDome` and `stepPlane` have worked it out for speed. Here the two are held
// together in every way through the engine: what it says leads to a figure must lead to the one that the step loop noted.

/** Steps between two that are looked at; no factor of a day's steps, so that over days all hours come up. */
const EVERY = 7;
const CLOSE = 1e-9;

/** What is said of each group, by name, for steps in which anything is said of light. */
function lit(run: RunResult): ReadonlyMap<string, number>[] {
  const { groups, grid } = run.prepared;
  return groups.flatMap((_, g) => {
    const steps = Array.from({ length: Math.floor(grid.steps / EVERY) }, (_, k) => k * EVERY);
    return steps
      .map((i) => new Map(explainGroup(run, g, i).map(({ name, value }) => [name, value])))
      .filter((said) => said.has("on the plane, after shade"));
  });
}

/** How far the light that follows from the parts is from what the step loop noted, at most, as a share. */
function farthest(run: RunResult): { readonly steps: number; readonly plane: number; readonly glass: number } {
  const said = lit(run);
  let [plane, glass] = [0, 0];
  for (const numbers of said) {
    const of = (name: string) => numbers.get(name)!;
    const rest = of("sky light on it") + of("ground light on it");
    const past = of("beam on it, no shade") * of("share of the beam that gets past");
    const off = (name: string, follows: number) => Math.abs(of(name) - follows) / Math.max(1, of(name));
    plane = Math.max(plane, off("on the plane, after shade", past + rest));
    glass = Math.max(glass, off("behind the glass", past * of("share of the beam through the glass") + rest));
  }
  return { steps: said.length, plane, glass };
}

const all = bitScenarios(await loadClimateTables());

describe.each(all)("$name", ({ scenario, surroundings }) => {
  test("one run's light follows from what is explained", () => {
    const run = trace(scenario, surroundings);
    if (!run.ok) throw new Error(run.problems[0]!.message);
    const { steps, plane, glass } = farthest(run.trace);
    expect(steps).toBeGreaterThan(0);
    expect(plane).toBeLessThan(CLOSE);
    expect(glass).toBeLessThan(CLOSE);
  });

  test("so does a member's, whose crowns lean", () => {
    const ready = prepareEnsemble(scenario, surroundings, "explained");
    if (!ready.ok) throw new Error(ready.problems[0]!.message);
    const { plane, glass } = farthest(replayMember(ready.ensemble, 3));
    expect(plane).toBeLessThan(CLOSE);
    expect(glass).toBeLessThan(CLOSE);
  });
});
