import type { Surroundings } from "../run/surroundings.ts";
import type { Problem } from "../scenario/problem.ts";
import type { Scenario } from "../scenario/scenario.ts";
import type { TaskOptions, TaskPool } from "../task/taskRun.ts";
import { identities } from "../task/taskStore.ts";
import type { Pulls } from "./reachOrder.ts";
import { keyOf } from "./reachPlan.ts";
import type { Held } from "./reachSingles.ts";
import { reachTask } from "./reachTask.ts";

/** Members that hold, by what was pulled: of how many of the first members, how many. Another target asks for many of them again. */
export type HeldMemory = Map<string, readonly Counted[]>;

interface Counted {
  readonly members: number;
  readonly held: number;
}

/** What members are counted with. */
export interface HeldWorks {
  readonly pool: TaskPool;
  readonly base: Scenario;
  readonly surroundings: Surroundings;
  readonly seed: string;
  /** @see makePulled */
  readonly pulled: (pulls: Pulls) => Scenario | null;
  readonly memory: HeldMemory;
  readonly signal?: TaskOptions["signal"];
  /** Told after each task. */
  readonly onDone?: () => void;
}

/** Thrown where a plan, or the plan with a lever pulled, cannot be prepared. */
export class ReachRefused extends Error {
  constructor(readonly problems: readonly Problem[]) {
    super(problems.map(({ message }) => message).join(" "));
  }
}

/** How far apart the levers' places on the workers are: those of one lever go to one worker, which has its panels at hand. */
const EVERY_MEMBER = { fewest: 1_000_000, most: 1_000_000 };

/** Counts members that hold, each way once: what was counted of the first hundred is part of the thousand. */
export function makeHeld({ pool, base, surroundings, seed, pulled, memory, signal, onDone }: HeldWorks): Held {
  const running = new Map<string, Promise<Counted>>();
  // Tables of the whole world's climate go to each worker once. Workers that have the tables themselves are sent none.
  const isHeavy = surroundings.climate !== undefined;
  const surroundingsKey = isHeavy ? JSON.stringify(identities(surroundings)) : null;
  const light = isHeavy ? {} : surroundings;

  /** Counts on until so many members are done, or so many miss that it need not go on. */
  async function count(pulls: Pulls, members: number, mayMiss: number): Promise<Counted> {
    const key = keyOf(pulls);
    const before = furthest(memory.get(key), members);
    if (before.members === members || missing(before) > mayMiss) return before;
    const scenario = pulled(pulls);
    // What would be refused holds nobody.
    if (scenario === null) return { members, held: 0 };
    const [from, to] = [before.members, members];
    const task = { base, scenario, seed, from, to, mayMiss: mayMiss - missing(before), surroundingsKey };
    const options = { ...EVERY_MEMBER, home: pulls[0]?.lever ?? 0, ...(signal === undefined ? {} : { signal }) };
    let run = await pool.run(reachTask, { ...task, surroundings: light }, options);
    if (run.ok && run.part.lacksSurroundings) run = await pool.run(reachTask, { ...task, surroundings }, options);
    if (!run.ok) throw new ReachRefused(run.problems);
    const found = { members: run.part.to, held: before.held + run.part.held };
    memory.set(key, [...(memory.get(key) ?? []), found]);
    onDone?.();
    return found;
  }

  /** One after the other for one way: the later goes on from where the earlier ended. */
  async function inTurn(pulls: Pulls, members: number, mayMiss: number): Promise<Counted> {
    const key = keyOf(pulls);
    const before = running.get(key)?.catch(() => null);
    const found = (before ?? Promise.resolve()).then(() => count(pulls, members, mayMiss));
    running.set(key, found);
    try {
      return await found;
    } finally {
      if (running.get(key) === found) running.delete(key);
    }
  }

  return {
    held: async (pulls, members) => (await inTurn(pulls, members, members)).held,
    reaches: async (pulls, members, need) => (await inTurn(pulls, members, members - need)).held >= need,
  };
}

const missing = ({ members, held }: Counted) => members - held;

/** The most of the first members that were counted, up to so many. */
function furthest(known: readonly Counted[] = [], members: number): Counted {
  return known.reduce((best, each) => (each.members <= members && each.members > best.members ? each : best), {
    members: 0,
    held: 0,
  });
}
