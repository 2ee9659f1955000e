import type { PreparedEnsemble } from "../ensemble/prepareEnsemble.ts";
import type { OddsPart } from "../odds/oddsPart.ts";
import { oddsTask } from "../odds/oddsTask.ts";
import { assumedRemarks } from "../run/assumedRemarks.ts";
import type { Surroundings } from "../run/surroundings.ts";
import { checkedScenario } from "../scenario/checkedScenario.ts";
import { eventLeafShare } from "../scenario/leafShareOf.ts";
import type { Scenario, ScenarioInput } from "../scenario/scenario.ts";
import type { SizeWish } from "../size/sizeAxis.ts";
import type { CancelSignal, TaskPool } from "../task/taskRun.ts";
import { makeTaskStore, type TaskStore } from "../task/taskStore.ts";
import { Refused, valueOrRefused } from "./refused.ts";
import type { Opened, Shop, Started } from "./shop.ts";

/** Scenarios whose members are kept. */
export const KEPT_STARTED = 24;
/** More memory than this is given back: a page shows few forecasts at once. */
const KEPT_SPARES = 8;

/** What a shop is made from. */
export interface ShopWorks {
  readonly pool: TaskPool;
  /** @throws Refused where the scenario's weather cannot be had */
  readonly surroundings: (
    scenario: Scenario,
    axes: readonly (SizeWish | null)[],
    document: ScenarioInput,
  ) => Promise<Surroundings>;
  /** Where the files lie that a document names; left out where a name says which file it is. */
  readonly folderOf?: (document: ScenarioInput) => string;
  /** Whether workers have the climate tables and need not be sent them. */
  readonly workersHaveClimate: boolean;
  readonly turn: () => Promise<void>;
}

/** What one piece of work is given besides what is shared. */
export interface ShopVisit extends Pick<Shop, "upTo" | "signal" | "cut" | "tick" | "early"> {
  /** The first member to be run; 0 if left out. */
  readonly from?: number;
}

/** Keeps what was prepared and run from one question to the next. */
export interface ShopKeeper {
  readonly store: TaskStore;
  /** Says how many scenarios are asked about now, so that memory of older ones can be used again. */
  readonly expect: (documents: number) => void;
  /** Forgets all members, as when weather files have changed. */
  readonly forget: () => void;
  readonly visit: (visit: ShopVisit) => Shop;
}

/** @param works workers, weather, and a turn for others */
export function makeShop({ pool, surroundings, folderOf, workersHaveClimate, turn }: ShopWorks): ShopKeeper {
  const store = makeTaskStore();
  const started = new Map<string, Started>();
  /** Of scenarios that are kept no longer: their memory serves the next. */
  const spares: OddsPart[] = [];
  let documentsNow = 0;

  async function open(document: ScenarioInput, axes: readonly (SizeWish | null)[] = []): Promise<Opened> {
    const read = checkedScenario(document);
    if (!read.ok) throw new Refused(read.problems);
    return { scenario: read.scenario, surroundings: await surroundings(read.scenario, axes, document) };
  }

  async function start(document: ScenarioInput, seed: string, most: number, from: number): Promise<Started> {
    const key = JSON.stringify([seed, most, from, document, folderOf?.(document)]);
    let found = started.get(key);
    if (found === undefined) {
      const opened = await open(document);
      found = started.get(key) ?? { ...opened, seed, part: null, running: new Map() };
    }
    started.delete(key);
    started.set(key, found);
    dropOldest();
    return found;
  }

  function dropOldest(): void {
    const [oldest] = started;
    if (started.size <= KEPT_STARTED || oldest === undefined) return;
    started.delete(oldest[0]);
    const { part, running } = oldest[1];
    // Nobody waits for one that is older than all that is asked for now.
    const isLeft = running.size === 0 && documentsNow <= KEPT_STARTED / 2;
    if (part !== null && isLeft && spares.length < KEPT_SPARES) spares.push(part);
  }

  const sent = (of: Surroundings): Surroundings => {
    if (!workersHaveClimate) return of;
    return of.weatherFile === undefined ? {} : { weatherFile: of.weatherFile };
  };

  const ensemble = (of: Opened & { readonly seed: string }): PreparedEnsemble => valueOrRefused(store.ensemble(of));
  const shown = ({ scenario, ...of }: Opened & { readonly seed: string }): PreparedEnsemble => {
    const bare = ensemble({ ...of, scenario: { ...scenario, obstacles: [] } });
    return { ...bare, remarks: remarksWith(scenario, bare) };
  };

  function run(
    of: Started,
    side: number,
    upTo: number,
    { cut, signal, tick, from: first = 0 }: ShopVisit,
  ): Promise<OddsPart> {
    const from = of.part?.to ?? first;
    if (of.part !== null && from >= upTo) return Promise.resolve(of.part);
    const known = of.running.get(upTo);
    if (known !== undefined) return known;
    const running = (async () => {
      try {
        const task = { scenario: of.scenario, surroundings: sent(of.surroundings), seed: of.seed, from, to: upTo };
        // In the coarse part's own memory: whoever shows it takes it from here again.
        const into = of.part === null ? { spare: spares.pop() ?? null } : { before: of.part };
        const onProgress = (done: number) => tick(side, from - first + done);
        const found = await pool.run(oddsTask, task, { signal, ...cut, into, onProgress });
        if (!found.ok) throw new Refused(found.problems);
        of.part = found.part;
        return of.part;
      } finally {
        of.running.delete(upTo);
      }
    })();
    of.running.set(upTo, running);
    return running;
  }

  return {
    store,
    expect: (documents) => {
      documentsNow = documents;
    },
    forget: () => started.clear(),
    visit: (visit) => ({
      ...visit,
      pool,
      store,
      open,
      start: (document, seed, most) => start(document, seed, most, visit.from ?? 0),
      run: (of, side, upTo = visit.upTo) => run(of, side, upTo, visit),
      ensemble,
      shown,
      sent,
      turn,
    }),
  };
}

/** A signal that is never given. */
export const NEVER: CancelSignal = { aborted: false, addEventListener: () => {}, removeEventListener: () => {} };

/** An ensemble's remarks with what was assumed about a scenario as it stands, in the place of what was assumed about the one that was prepared. */
function remarksWith(scenario: Scenario, { prepared, remarks }: PreparedEnsemble): readonly string[] {
  const seasonShare = eventLeafShare(scenario);
  const bare = new Set(assumedRemarks(prepared.scenario, seasonShare));
  const isSaid = (remark: string) => !bare.has(remark);
  const others = remarks.filter(isSaid);
  const at = prepared.remarks.filter(isSaid).length;
  return [...others.slice(0, at), ...assumedRemarks(scenario, seasonShare), ...others.slice(at)];
}
