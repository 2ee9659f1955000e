import { type Accessor, createEffect, createSignal, onCleanup } from "solid-js";
import type { Odds, Scenario, TaskPool } from "../../engine/index.ts";
import { wilson } from "../../engine/run/wilson.ts";

/** The same seed and members as the command line takes when it is told nothing, so that both say the same. */
const SEED = "duskline";
const MEMBERS = 1000;
/** A plan that is still being changed is left alone. */
const QUIET_MS = 250;

/** What is known of the other skies. */
export type Skies =
  | { readonly kind: "working"; readonly done: number }
  | { readonly kind: "known"; readonly holds: Odds }
  | { readonly kind: "failed"; readonly sentence: string };

/**
 * In how many skies the plan holds, worked out after its picture and dropped at the next edit.
 * @param scenario of the plan that is shown; null while a newer one is in work
 */
export function makeSkies(pool: TaskPool, scenario: Accessor<Scenario | null>): Accessor<Skies> {
  const [skies, setSkies] = createSignal<Skies>({ kind: "working", done: 0 });

  async function workOut(plan: Scenario, signal: AbortSignal): Promise<void> {
    const onProgress = (done: number) => signal.aborted || setSkies({ kind: "working", done: done / MEMBERS });
    try {
      const task = { scenario: plan, surroundings: {}, seed: SEED, from: 0, to: MEMBERS };
      const run = await pool.runOdds(task, { signal, onProgress });
      if (signal.aborted) return;
      if (!run.ok) return void setSkies({ kind: "failed", sentence: run.problems[0]!.message });
      const holding = run.part.outcomes.belowFromStep.reduce((sum, step) => sum + (step < 0 ? 1 : 0), 0);
      setSkies({ kind: "known", holds: wilson(holding, MEMBERS) });
    } catch (error) {
      if (signal.aborted) return;
      setSkies({ kind: "failed", sentence: error instanceof Error ? error.message : String(error) });
    }
  }

  createEffect(() => {
    const plan = scenario();
    setSkies({ kind: "working", done: 0 });
    if (plan === null) return;
    const cancel = new AbortController();
    const timer = setTimeout(() => void workOut(plan, cancel.signal), QUIET_MS);
    onCleanup(() => {
      clearTimeout(timer);
      cancel.abort();
    });
  });
  onCleanup(() => pool.close());
  return skies;
}
