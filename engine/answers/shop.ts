import type { PreparedEnsemble } from "../ensemble/prepareEnsemble.ts";
import type { OddsPart } from "../odds/oddsPart.ts";
import type { Surroundings } from "../run/surroundings.ts";
import type { Scenario, ScenarioInput } from "../scenario/scenario.ts";
import type { SizeWish } from "../size/sizeAxis.ts";
import type { CancelSignal, TaskOptions, TaskPool } from "../task/taskRun.ts";
import type { TaskStore } from "../task/taskStore.ts";

/** A document that reads, with its climate and weather. */
export interface Opened {
  readonly scenario: Scenario;
  readonly surroundings: Surroundings;
}

/** A scenario with as many of its members as have been run. */
export interface Started extends Opened {
  readonly seed: string;
  part: OddsPart | null;
  /** What is running, by the number of members that it runs to. */
  readonly running: Map<number, Promise<OddsPart>>;
}

/** What is scarce, for whoever works something out: workers, what is prepared, climate and weather, time, patience. */
export interface Shop {
  readonly pool: TaskPool;
  readonly store: TaskStore;
  /** Members of this pass: all that are wanted, or a coarse hundred. */
  readonly upTo: number;
  readonly signal: CancelSignal;
  /** Reads a document and finds its weather. @param axes what a map over it varies @throws Refused */
  readonly open: (document: ScenarioInput, axes?: readonly (SizeWish | null)[]) => Promise<Opened>;
  /** The scenario with what was run of it. @throws Refused */
  readonly start: (document: ScenarioInput, seed: string, most: number) => Promise<Started>;
  /** Runs on until `upTo` members are done (this pass's, if left out); several that want the same share it. */
  readonly run: (of: Started, side: number, upTo?: number) => Promise<OddsPart>;
  /** @throws Refused */
  readonly ensemble: (of: Opened & { readonly seed: string }) => PreparedEnsemble;
  /**
   * What it takes to say what members came to that the pool has run: all but what stands about, whose shade on the panels takes longest to prepare
   * and which nothing of this reads.
   */
  readonly shown: (of: Opened & { readonly seed: string }) => PreparedEnsemble;
  /** Surroundings as they are sent to workers. */
  readonly sent: (surroundings: Surroundings) => Surroundings;
  /** How members are cut into stretches in this pass. */
  readonly cut: Pick<TaskOptions, "most" | "fewest" | "home">;
  /** Says how far one side of the work is. */
  readonly tick: (side: number, done: number) => void;
  /** Comes back when whoever shares the thread has had its turn. */
  readonly turn: () => Promise<void>;
  /** Hands over what is known before the whole answer is. */
  readonly early: (picture: unknown) => void;
}
