import type { Want } from "../../engine/answers/asked.ts";
import type { Pass } from "../../engine/answers/kind.ts";
import { kindOf } from "../../engine/answers/kinds.ts";
import { makeShop, type ShopVisit, type ShopWorks } from "../../engine/answers/makeShop.ts";
import type { WeatherText } from "../../engine/answers/makeSurroundings.ts";
import { Refused } from "../../engine/answers/refused.ts";
import type { Surroundings } from "../../engine/run/surroundings.ts";
import type { Scenario } from "../../engine/scenario/scenario.ts";
import type { SizeWish } from "../../engine/size/sizeAxis.ts";
import { type CancelSignal, TaskCancelled, type TaskPool } from "../../engine/task/taskRun.ts";
import type { Answer, Orders } from "./desk.ts";
import { type Tell, tellProgress, tellTogether } from "./tellings.ts";

/** Members of the first pass. */
const COARSE_MEMBERS = 100;
/** Members of one stretch: few enough that two workers end together, many enough that parts cost little to put together. */
const STRETCH_MEMBERS = 450;
const COARSE_STRETCH_MEMBERS = 50;

export interface DeskWorks {
  readonly pool: TaskPool;
  /** @param axes what a map over the scenario varies */
  readonly surroundings: (
    scenario: Scenario,
    files: readonly WeatherText[],
    axes: readonly (SizeWish | null)[],
  ) => Promise<Surroundings>;
  readonly tell: Tell;
  readonly nowMs: () => number;
  /** Comes back when the page has had the processors to itself for as long as it takes to draw what it was told. */
  readonly whileItDraws: () => Promise<void>;
  /** Comes back when messages that wait have been taken. */
  readonly turn: ShopWorks["turn"];
  /** Makes what tells work that nobody wants it any more. */
  readonly makeCancel: () => { readonly signal: CancelSignal; abort(): void };
}

/** How members are cut into stretches, and which worker has the first of them. */
type Cut = ShopVisit["cut"];
const WHOLE_CUT: Cut = { most: STRETCH_MEMBERS, fewest: STRETCH_MEMBERS };

/** Where there are several, each is left whole: preparing it in two workers takes longer than its members do. */
function coarseCut(k: number, of: number): Cut {
  const most = of > 1 ? COARSE_MEMBERS : COARSE_STRETCH_MEMBERS;
  return { most, fewest: most, home: k };
}

/** What one answer is worked out with: how many members now, whether better follows, how they are cut. */
interface Turn {
  readonly upTo: number;
  readonly isCoarse: boolean;
  readonly cut: Cut;
  readonly signal: CancelSignal;
}

const passOf = ({ kind }: Want): Pass => kindOf(kind).question!.pass;

/**
 * Works out what the page wants: a coarse pass over all odds, then all members and single runs meanwhile, then what takes seconds. The newest
 * orders take the place of older ones at once, except for a coarse pass, which is let finish: else somebody who drags would see nothing.
 */
export function makeDeskWork(works: DeskWorks): (orders: Orders) => void {
  const { tell, turn, pool } = works;
  let weatherFiles: readonly WeatherText[] = [];
  let next: Orders | null = null;
  let present: { cancel: ReturnType<DeskWorks["makeCancel"]>; isCoarse: boolean } | null = null;
  const shop = makeShop({
    pool,
    turn,
    workersHaveClimate: true,
    surroundings: (scenario, axes) => works.surroundings(scenario, weatherFiles, axes),
  });

  /** Works an answer out and says it; @returns whether there is more to it */
  async function deliver(want: Want, { upTo, isCoarse, cut, signal }: Turn, say: Tell = tell): Promise<boolean> {
    const early = (picture: unknown) =>
      tell({ say: "answer", key: want.key, answer: { ok: true, picture }, whole: false });
    const tick = tellProgress(want.key, upTo * want.documents.length, tell, works.nowMs);
    const visit = { upTo, cut, signal, tick, early };
    const answer = await answerOf(want, visit);
    const whole = !isCoarse || !answer.ok;
    say({ say: "answer", key: want.key, answer, whole });
    return !whole;
  }

  async function answerOf(want: Want, visit: ShopVisit): Promise<Answer> {
    try {
      const work = await kindOf(want.kind).question!.work();
      return { ok: true, picture: await work(want, shop.visit(visit)) };
    } catch (error) {
      if (error instanceof TaskCancelled) throw error;
      if (error instanceof Refused) return { ok: false, problems: error.problems };
      const message = `This could not be worked out: ${error instanceof Error ? error.message : String(error)}`;
      return { ok: false, problems: [{ code: "fault", path: [], message }] };
    }
  }

  async function coarsePass(skies: readonly Want[], signal: CancelSignal): Promise<readonly boolean[]> {
    const { say, end } = tellTogether(tell, works.nowMs);
    const coarse = skies.map((want, k) => {
      if (want.members <= COARSE_MEMBERS) return Promise.resolve(true);
      return deliver(want, { upTo: COARSE_MEMBERS, isCoarse: true, cut: coarseCut(k, skies.length), signal }, say);
    });
    return Promise.all(coarse).finally(end);
  }

  async function wholePass(skies: readonly Want[], areOpen: readonly boolean[], signal: CancelSignal): Promise<void> {
    const { say, end } = tellTogether(tell, works.nowMs);
    const whole = skies.map((want, k) =>
      areOpen[k] ? deliver(want, { upTo: want.members, isCoarse: false, cut: WHOLE_CUT, signal }, say) : false,
    );
    await Promise.all(whole).finally(end);
  }

  async function work({ wants, round }: Orders, signal: CancelSignal): Promise<void> {
    const of = (pass: Pass) => wants.filter((want) => passOf(want) === pass);
    const whole = (want: Want) => deliver(want, { upTo: want.members, isCoarse: false, cut: {}, signal });
    const skies = of("skies");
    // What works the first answers out is fetched meanwhile; where that fails, its own turn says so.
    for (const { kind } of [...skies, ...of("glance")]) {
      kindOf(kind)
        .question!.work()
        .catch(() => {});
    }
    shop.expect(wants.length + skies.length);
    const areOpen = await coarsePass(skies, signal);
    if (present !== null) present.isCoarse = false;
    if (areOpen.includes(true)) await works.whileItDraws();
    const goesOn = next === null && !signal.aborted;
    const rest = goesOn ? wholePass(skies, areOpen, signal) : Promise.resolve();
    rest.catch(() => {}); // awaited below; until then nobody has to hear of it
    await turn(); // so that the workers have their stretches before this thread is busy
    // Single runs are delivered whatever comes: else somebody who drags would not see them move.
    for (const want of of("glance")) {
      await whole(want);
      await turn();
    }
    if (!goesOn) return;
    await rest;
    for (const want of [...of("seconds"), ...of("map")]) {
      if (signal.aborted) return;
      await whole(want);
      await turn();
    }
    if (!signal.aborted) tell({ say: "idle", round });
  }

  async function workOff(): Promise<void> {
    while (next !== null) {
      const orders = next;
      next = null;
      if (orders.weatherFiles !== undefined) {
        weatherFiles = orders.weatherFiles;
        shop.forget();
      }
      const cancel = works.makeCancel();
      present = { cancel, isCoarse: orders.wants.length > 0 };
      try {
        await work(orders, cancel.signal);
      } catch (error) {
        if (!(error instanceof TaskCancelled)) throw error;
      }
    }
    present = null;
  }

  return (orders) => {
    // Orders that brought weather files and were never begun hand them on.
    const weather = orders.weatherFiles ?? next?.weatherFiles;
    next = weather === undefined ? orders : { ...orders, weatherFiles: weather };
    if (present === null) void workOff();
    else if (!present.isCoarse || orders.wants.length === 0) present.cancel.abort();
  };
}
