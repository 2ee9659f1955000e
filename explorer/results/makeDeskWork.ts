import {
  type CancelSignal,
  LearnCancelled,
  makeTaskStore,
  type OddsPart,
  oddsReport,
  type PreparedEnsemble,
  prepareSizes,
  readScenario,
  type Scenario,
  type ScenarioInput,
  type SizeWish,
  type Surroundings,
  TaskCancelled,
  type TaskOptions,
  type TaskPool,
  tracePrepared,
  usualWishes,
} from "../../engine/index.ts";
import type { ScenarioProblem } from "../notebook/notebookPage.ts";
import { runPicture } from "../picture/runPicture.ts";
import type { WeatherText } from "../weather/weatherEdits.ts";
import type { Answer, Orders, Report, Want } from "./desk.ts";
import { oddsPicture } from "./oddsPicture.ts";
import { versusPicture } from "./versusPicture.ts";

/** Members of the first pass. */
const COARSE_MEMBERS = 100;
/** Members of one stretch: few enough that two workers end together, many enough that parts cost little to put together. */
const STRETCH_MEMBERS = 450;
const COARSE_STRETCH_MEMBERS = 50;
const MAP_STRETCH_MEMBERS = 25;
/** Pairs from which the picture of a difference is drawn; odds and intervals come from all of them. */
const PAIRS = 200;
const COARSE_PAIRS = 40;
const KEPT_STARTED = 24;
/** More memory than this is given back: a page shows few forecasts at once. */
const KEPT_SPARES = 8;
/** How long an answer may wait for those that come with it: each that is shown by itself draws the sheet once more. */
const TOGETHER_MS = 60;
/** Between two words about how far it is. */
const TELL_EVERY_MS = 80;

export interface DeskWorks {
  readonly pool: TaskPool;
  /** @param axes what a map over the scenario varies */
  readonly surroundings: (
    scenario: Scenario,
    files: readonly WeatherText[],
    axes?: readonly (SizeWish | null)[],
  ) => Promise<Surroundings>;
  readonly tell: (report: Report) => void;
  readonly nowMs: () => number;
  /** Comes back when the page has had the processors to itself for as long as it takes to draw what it was told. */
  readonly whileItDraws: () => Promise<void>;
  /** Comes back when messages that wait have been taken. */
  readonly turn: () => Promise<void>;
  /** Makes what tells work that nobody wants it any more. */
  readonly makeCancel: () => { readonly signal: CancelSignal; abort(): void };
}

/** How members are cut into stretches, and which worker has the first of them. */
type Cut = Required<Pick<TaskOptions, "most">> & Pick<TaskOptions, "home">;
const WHOLE_CUT: Cut = { most: STRETCH_MEMBERS };

/** Where there are several, each is left whole: preparing it in two workers takes longer than its members do. */
function coarseCut(k: number, of: number): Cut {
  return { most: of > 1 ? COARSE_MEMBERS : COARSE_STRETCH_MEMBERS, home: k };
}

/** A scenario with as many of its members as have been run. */
interface Started {
  readonly scenario: Scenario;
  readonly surroundings: Surroundings;
  readonly seed: string;
  part: OddsPart | null;
  /** What is running, by the number of members that it runs to. */
  readonly running: Map<number, Promise<OddsPart>>;
}

/** Thrown where a scenario is wrong. */
class Refused extends Error {
  constructor(readonly problems: readonly ScenarioProblem[]) {
    super("refused");
  }
}

type Tell = DeskWorks["tell"];
type WantOf<Kind extends Want["kind"]> = Extract<Want, { kind: Kind }>;
type OddsWant = WantOf<"odds" | "versus">;

/**
 * Works out what the page wants: a coarse pass over all odds, then all members and single runs meanwhile, then what takes seconds. The newest
 * orders take the place of older ones at once, but for a coarse pass, which is let finish: else somebody who drags would see nothing.
 */
export function makeDeskWork(works: DeskWorks): (orders: Orders) => void {
  const { pool, tell } = works;
  const store = makeTaskStore();
  const started = new Map<string, Started>();
  /** Of scenarios that are kept no longer: their memory serves the next. */
  const spares: OddsPart[] = [];
  /** How many scenarios the present orders ask about, each as often as it is asked for. */
  let documentsNow = 0;
  let weatherFiles: readonly WeatherText[] = [];
  let next: Orders | null = null;
  let present: { cancel: ReturnType<DeskWorks["makeCancel"]>; isCoarse: boolean } | null = null;

  async function startedOf(document: ScenarioInput, seed: string, most: number): Promise<Started> {
    const key = JSON.stringify([seed, most, document]);
    let found = started.get(key);
    if (found === undefined) {
      const read = readScenario(document);
      if (!read.ok) throw new Refused(read.problems);
      const { scenario } = read;
      const surroundings = await works.surroundings(scenario, weatherFiles);
      found = started.get(key) ?? { scenario, surroundings, seed, part: null, running: new Map() };
    }
    started.delete(key);
    started.set(key, found);
    const [oldest] = started;
    if (started.size > KEPT_STARTED && oldest !== undefined) {
      started.delete(oldest[0]);
      const { part, running } = oldest[1];
      // Nobody waits for one that is older than all that is asked for now.
      const isLeft = running.size === 0 && documentsNow <= KEPT_STARTED / 2;
      if (part !== null && isLeft && spares.length < KEPT_SPARES) spares.push(part);
    }
    return found;
  }

  function ensembleOf(of: Started): PreparedEnsemble {
    const ready = store.ensemble(of);
    if (!ready.ok) throw new Refused(ready.problems);
    return ready.value;
  }

  /**
   * What it takes to say what members came to that the pool has run: all but what stands about, whose shade on the panels takes longest to prepare
   * and which nothing of this reads.
   */
  function shownOf(of: Started): PreparedEnsemble {
    const scenario = { ...of.scenario, obstacles: [] };
    const { surroundings, seed } = of;
    const ready = store.ensemble({ scenario, surroundings, seed });
    if (!ready.ok) throw new Refused(ready.problems);
    return ready.value;
  }

  /** Runs on until a scenario has `members`; several that want the same share it. */
  function partTo(
    of: Started,
    members: number,
    cut: Cut,
    signal: CancelSignal,
    tick: (done: number) => void,
  ): Promise<OddsPart> {
    const from = of.part?.to ?? 0;
    if (of.part !== null && from >= members) return Promise.resolve(of.part);
    const known = of.running.get(members);
    if (known !== undefined) return known;
    const { scenario, seed } = of;
    const onProgress = (done: number) => tick(from + done);
    const running = (async () => {
      try {
        const task = { scenario, surroundings: sent(of.surroundings), seed, from, to: members };
        // In the coarse part's own memory: whoever shows it takes it from here anew.
        const memory = of.part === null ? { spare: spares.pop() ?? null } : { before: of.part };
        const run = await pool.runOdds(task, { signal, fewest: cut.most, ...cut, ...memory, onProgress });
        if (!run.ok) throw new Refused(run.problems);
        of.part = run.part;
        return of.part;
      } finally {
        of.running.delete(members);
      }
    })();
    of.running.set(members, running);
    return running;
  }

  async function quickAnswer(want: WantOf<"run" | "limits">): Promise<Answer> {
    const read = readScenario(want.document);
    if (!read.ok) throw new Refused(read.problems);
    const { scenario } = read;
    const ready = store.prepared({ scenario, surroundings: await works.surroundings(scenario, weatherFiles) });
    if (!ready.ok) throw new Refused(ready.problems);
    const trace = tracePrepared(ready.value);
    if (want.kind === "run") return { kind: "run", picture: runPicture(trace) };
    const { limits } = await import("../../engine/checks/limits.ts");
    return { kind: "limits", picture: limits(trace, want.options) };
  }

  async function oddsAnswer(want: OddsWant, members: number, cut: Cut, signal: CancelSignal): Promise<Answer> {
    const documents = want.kind === "odds" ? [want.document] : want.documents;
    const tick = ticker(want.key, members * documents.length);
    const sides = await Promise.all(documents.map((document) => startedOf(document, want.seed, want.members)));
    const parts = sides.map((side, k) => partTo(side, members, cut, signal, (done) => tick(k, done)));
    const [first, second] = sides;
    if (second === undefined) {
      await parts[0]!;
      const ensemble = shownOf(first!);
      return { kind: "odds", picture: oddsPicture(ensemble, oddsReport(ensemble, first!.part!)) };
    }
    const files = sides.flatMap(({ surroundings }) => surroundings.weatherFile ?? []);
    // Waits in line behind the odds themselves. An order carries one weather file; pairs with two are run where the picture is made.
    const pairs =
      new Set(files).size > 1
        ? undefined
        : pool.runPairs(
            {
              scenario: first!.scenario,
              other: second.scenario,
              surroundings: sent({ ...second.surroundings, ...first!.surroundings }),
              seed: want.seed,
              from: 0,
              to: Math.min(members, members < want.members ? COARSE_PAIRS : PAIRS),
            },
            { signal, fewest: COARSE_PAIRS, most: STRETCH_MEMBERS },
          );
    const settled = pairs === undefined ? undefined : settledPairs(first!, second, pairs);
    const [paired] = await Promise.all([settled, ...parts]);
    // What each has by now: a part that was looked at before may have grown in its memory since. One that other entries have driven
    // further is shown with as many members as both have.
    const [one, other] = [first!.part!, second.part!];
    if (one.to !== other.to) return oddsAnswer(want, Math.max(one.to, other.to), cut, signal);
    // Pairs that are run here need what stands about.
    const ensemble = paired === undefined ? ensembleOf : shownOf;
    const contestants = [
      { ensemble: ensemble(first!), part: one },
      { ensemble: ensemble(second), part: other },
    ] as const;
    return { kind: "versus", picture: versusPicture(...contestants, paired) };
  }

  /** The pairs; null where the two do not last equally long. */
  async function settledPairs(first: Started, second: Started, pairs: ReturnType<TaskPool["runPairs"]>) {
    const when = ({ scenario: { time, place } }: Started) => JSON.stringify([time, place]);
    const isApart = when(first) !== when(second);
    try {
      const run = await pairs;
      if (!run.ok) throw new Refused(run.problems);
      return run.part;
    } catch (error) {
      if (error instanceof TaskCancelled || error instanceof Refused || !isApart) throw error;
      return null;
    }
  }

  async function sizesAnswer(want: WantOf<"sizes">, signal: CancelSignal): Promise<Answer> {
    const read = readScenario(want.document);
    if (!read.ok) throw new Refused(read.problems);
    const usual = usualWishes(read.scenario);
    const x = want.x ?? usual.x;
    const y = want.y ?? (x.at === usual.y?.at ? usual.x : usual.y);
    const surroundings = await works.surroundings(read.scenario, weatherFiles, [x, y]);
    const ready = prepareSizes(want.document, x, y, surroundings, want.seed);
    if (!ready.ok) throw new Refused(ready.problems);
    const task = { document: want.document, x, y, surroundings: sent(surroundings), seed: want.seed };
    const tick = ticker(want.key, want.members);
    const run = await pool.runSizes(
      { ...task, from: 0, to: want.members },
      { signal, fewest: MAP_STRETCH_MEMBERS, most: MAP_STRETCH_MEMBERS, onProgress: (done) => tick(0, done) },
    );
    if (!run.ok) throw new Refused(run.problems);
    const [{ sizeReport }, { sizePicture }] = await Promise.all([
      import("../../engine/run/sizeReport.ts"),
      import("./sizePicture.ts"),
    ]);
    return { kind: "sizes", picture: sizePicture(ready.map, sizeReport(ready.map, run.part, want.aims)) };
  }

  async function driversAnswer(want: WantOf<"drivers">, signal: CancelSignal): Promise<Answer> {
    const ensemble = ensembleOf(await startedOf(want.document, want.seed, want.members));
    const tick = ticker(want.key, 2 * want.members);
    const run = await pool.runDrivers({ ...ensemble, surroundings: sent(ensemble.surroundings) }, want.members, {
      signal,
      fewest: MAP_STRETCH_MEMBERS,
      most: MAP_STRETCH_MEMBERS,
      onProgress: (done) => tick(0, done),
    });
    if (!run.ok) throw new Refused(run.problems);
    return { kind: "drivers", picture: { report: run.part, remarks: ensemble.remarks } };
  }

  /** Learns in this thread, a few particles at a time; what can still be done follows the picture. */
  async function learnedAnswer(want: WantOf<"learned">, signal: CancelSignal): Promise<Answer> {
    const { key, seed, members, readings } = want;
    const ensemble = ensembleOf(await startedOf(want.document, seed, members));
    const tick = ticker(key, members);
    const hooks = {
      progress: (done: number) => tick(0, done),
      pause: works.turn,
      isCancelled: () => signal.aborted,
    };
    const { learnedPicture } = await import("../entries/readings/learnedPicture.ts");
    try {
      const found = await learnedPicture(ensemble, readings, members, hooks, (picture) =>
        tell({ say: "answer", key, answer: { kind: "learned", picture }, whole: false }),
      );
      if (!found.ok) throw new Refused(found.problems);
      return { kind: "learned", picture: found.picture };
    } catch (error) {
      throw error instanceof LearnCancelled ? new TaskCancelled() : error;
    }
  }

  async function actualAnswer(want: WantOf<"actual">): Promise<Answer> {
    const { scenario, surroundings } = await startedOf(want.document, want.seed, 0);
    const { actualPicture } = await import("../entries/actual/actualPicture.ts");
    const found = actualPicture(scenario, want.log, surroundings, want.seed);
    if (!found.ok) throw new Refused(found.problems);
    return { kind: "actual", picture: found.picture };
  }

  /** Says how far a want is, from time to time; its sides are added up. */
  function ticker(key: string, of: number): (side: number, done: number) => void {
    const dones: number[] = [];
    let toldMs = works.nowMs();
    return (side, done) => {
      dones[side] = done;
      const nowMs = works.nowMs();
      if (nowMs - toldMs < TELL_EVERY_MS) return;
      toldMs = nowMs;
      tell({ say: "progress", key, done: dones.reduce((sum, each) => sum + (each ?? 0), 0), of });
    };
  }

  /** Says answers together, those of one pass at the latest at its end. */
  function together(): { readonly say: Tell; readonly end: () => void } {
    let held: Report[] = [];
    let sinceMs = 0;
    const end = () => {
      for (const report of held) tell(report);
      held = [];
    };
    const say = (report: Report) => {
      if (held.length === 0) sinceMs = works.nowMs();
      held.push(report);
      if (works.nowMs() - sinceMs > TOGETHER_MS) end();
    };
    return { say, end };
  }

  /** Works an answer out and says it; @returns whether there is more to it */
  async function deliver(
    want: Want,
    isWhole: boolean,
    answer: () => Promise<Answer>,
    say: Tell = tell,
  ): Promise<boolean> {
    let found: Answer;
    try {
      found = await answer();
    } catch (error) {
      if (error instanceof TaskCancelled) throw error;
      if (error instanceof Refused) found = { kind: "problems", problems: error.problems };
      else {
        const message = `This could not be worked out: ${error instanceof Error ? error.message : String(error)}`;
        found = { kind: "problems", problems: [{ code: "fault", path: [], message }] };
      }
    }
    const whole = isWhole || found.kind === "problems";
    say({ say: "answer", key: want.key, answer: found, whole });
    return !whole;
  }

  async function work({ wants, round }: Orders, signal: CancelSignal): Promise<void> {
    const odds = wants.filter((want): want is OddsWant => want.kind === "odds" || want.kind === "versus");
    documentsNow = wants.length + odds.length;
    const first = together();
    const coarse = odds.map((want, k) => {
      if (want.members <= COARSE_MEMBERS) return Promise.resolve(true);
      const answer = () => oddsAnswer(want, COARSE_MEMBERS, coarseCut(k, odds.length), signal);
      return deliver(want, false, answer, first.say);
    });
    const areOpen = await Promise.all(coarse).finally(first.end);
    if (present !== null) present.isCoarse = false;
    if (areOpen.includes(true)) await works.whileItDraws();
    const goesOn = next === null && !signal.aborted;
    const last = together();
    const answers = odds.map((want, k) => {
      if (!goesOn || !areOpen[k]) return Promise.resolve(false);
      return deliver(want, true, () => oddsAnswer(want, want.members, WHOLE_CUT, signal), last.say);
    });
    const whole = Promise.all(answers).finally(last.end);
    whole.catch(() => {}); // awaited below; until then nobody has to hear of it
    await works.turn(); // so that the workers have their stretches before this thread is busy
    // Single runs are delivered whatever comes: else somebody who drags would not see them move.
    for (const want of wants) {
      if (want.kind !== "run" && want.kind !== "limits") continue;
      await deliver(want, true, () => quickAnswer(want));
      await works.turn();
    }
    if (!goesOn) return;
    await whole;
    for (const want of wants) {
      if (signal.aborted) return;
      if (want.kind === "learned") await deliver(want, true, () => learnedAnswer(want, signal));
      if (want.kind === "actual") await deliver(want, true, () => actualAnswer(want));
      await works.turn();
    }
    for (const want of wants) {
      if (signal.aborted) return;
      if (want.kind === "sizes") await deliver(want, true, () => sizesAnswer(want, signal));
      if (want.kind === "drivers") await deliver(want, true, () => driversAnswer(want, signal));
    }
    if (!signal.aborted) tell({ say: "idle", round });
  }

  async function workOff(): Promise<void> {
    while (next !== null) {
      const orders = next;
      next = null;
      if (orders.weatherFiles !== undefined) {
        weatherFiles = orders.weatherFiles;
        started.clear();
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

/** Without the climate tables: each worker has its own. */
function sent({ weatherFile }: Surroundings): Surroundings {
  return weatherFile === undefined ? {} : { weatherFile };
}
