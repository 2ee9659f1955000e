import { makeKeptMembers } from "../ensemble/keptMembers.ts";
import { type PreparedEnsemble, prepareEnsemble } from "../ensemble/prepareEnsemble.ts";
import { type StepMembers, stepMembers } from "../ensemble/stepMember.ts";
import { type Prepared, prepare } from "../run/prepare.ts";
import { identityOf, makeReuse, type Reuse } from "../run/reuse.ts";
import type { Surroundings } from "../run/surroundings.ts";
import type { Problem } from "../scenario/problem.ts";
import type { Scenario } from "../scenario/scenario.ts";

export type Ready<T> =
  | { readonly ok: true; readonly value: T }
  | { readonly ok: false; readonly problems: readonly Problem[] };

interface OfScenario {
  readonly scenario: Scenario;
  readonly surroundings: Surroundings;
}

/** Parts of scenarios and whole ensembles that one worker keeps from one task to the next, and what each kind of task keeps besides. */
export interface TaskStore {
  /** What was prepared of scenarios; a kind of task that prepares hundreds of them keeps its own and takes from here what it shares with others. */
  readonly parts: Reuse;
  readonly ensemble: (of: OfScenario & { readonly seed: string }) => Ready<PreparedEnsemble>;
  /** The scenario ready for one run. */
  readonly prepared: (of: OfScenario) => Ready<Prepared>;
  /** Runs members side by side, with what is kept of them from other scenarios and earlier times. */
  readonly stepMembers: StepMembers;
  /**
   * What a kind of task keeps for itself.
   * @param make makes it when it is first asked for; the same function stands for the same thing
   */
  readonly own: <T extends object>(make: () => T) => T;
}

/** Some hundred kilobytes each at most; a notebook's scenarios and their last edits. */
const KEPT_PARTS = 160;
const KEPT_ENSEMBLES = 16;

/** @param keptBytes what may be kept of members, in all; 0 keeps nothing */
export function makeTaskStore(keptBytes = 0): TaskStore {
  const parts = makeReuse(KEPT_PARTS);
  const ensembles = makeReuse(KEPT_ENSEMBLES);
  const owned = new Map<() => object, object>();
  return {
    parts,
    ensemble: ({ scenario, surroundings, seed }) =>
      ensembles("ensemble", [scenario, seed, ...identities(surroundings)], () => {
        const ready = prepareEnsemble(scenario, surroundings, seed, parts);
        return ready.ok ? { ok: true, value: ready.ensemble } : ready;
      }),
    prepared: ({ scenario, surroundings }) => {
      const ready = prepare(scenario, surroundings, parts);
      return ready.ok ? { ok: true, value: ready.prepared } : ready;
    },
    stepMembers: keptBytes > 0 ? makeKeptMembers(keptBytes) : stepMembers,
    own: <T extends object>(make: () => T): T => {
      const known = owned.get(make) ?? make();
      owned.set(make, known);
      return known as T;
    },
  };
}

/** What stands for surroundings where something is looked up by them. */
export const identities = ({ climate, weatherFile }: Surroundings) => [identityOf(climate), identityOf(weatherFile)];
