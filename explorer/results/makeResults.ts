import { batch, createSignal } from "solid-js";
import type { Want } from "../../engine/answers/asked.ts";
import type { Found, ScenarioProblem } from "../../engine/answers/found.ts";
import type { WeatherText } from "../../engine/answers/makeSurroundings.ts";
import type { Answer, Desk, Report } from "./desk.ts";

const KEPT_ANSWERS = 80;

/**
 * Keeps what was worked out by its content, asks the desk for what is missing, and knows for each place on the page ("slot") what was
 * last shown there: that stays, dimmed, until something newer is known.
 */
export function makeResults(desk: Desk, weatherFiles: () => readonly WeatherText[] | undefined = () => undefined) {
  const answers = new Map<string, { answer: Answer; whole: boolean }>();
  /** What each slot has asked for, last of all what it asks for now: of these the newest that is known is shown. */
  const askedFor = new Map<string, string[]>();
  const [news, setNews] = createSignal(0);
  const [progress, setProgress] = createSignal<{ key: string; done: number; of: number } | null>(null);
  const [isIdle, setIdle] = createSignal(true);
  const [isStopped, setStopped] = createSignal(false);
  const [failure, setFailure] = createSignal<string | null>(null);
  let wanted: readonly Want[] = [];
  let round = 0;
  let sentFiles: readonly WeatherText[] | undefined;

  function pictureOf<Picture>(key: string | null | undefined): Picture | null {
    const found = key == null ? undefined : answers.get(key)?.answer;
    return found?.ok ? (found.picture as Picture) : null;
  }

  function missing(): Want[] {
    return wanted.filter((want) => answers.get(want.key)?.whole !== true);
  }

  function post(wants: readonly Want[]): void {
    round++;
    setStopped(false);
    setIdle(wants.length === 0);
    const files = weatherFiles();
    desk.postMessage(files === sentFiles ? { round, wants } : { round, wants, weatherFiles: files ?? [] });
    sentFiles = files;
  }

  function take(report: Report): void {
    if (report.say === "progress") setProgress({ key: report.key, done: report.done, of: report.of });
    else if (report.say === "idle") {
      if (report.round !== round) return;
      setIdle(true);
      setProgress(null);
    } else {
      answers.delete(report.key);
      answers.set(report.key, { answer: report.answer, whole: report.whole });
      const oldest = answers.keys().next().value;
      if (answers.size > KEPT_ANSWERS && oldest !== undefined) answers.delete(oldest);
      setNews((count) => count + 1);
    }
  }

  // All that was said at one time is drawn once.
  desk.onmessage = ({ data }: MessageEvent<readonly Report[]>) => batch(() => data.forEach(take));
  desk.onerror = (event) =>
    setFailure(
      `The part of the page that works things out has stopped (${event.message ?? "no reason given"}); load the page again.`,
    );

  return {
    /** Says what the page shows now; whatever else was in work is dropped. */
    want(wants: readonly Want[]): void {
      const before = new Set(missing().map((want) => want.key));
      wanted = wants;
      const now = missing();
      if (now.length === before.size && now.every((want) => before.has(want.key)) && !isIdle()) return;
      if (now.length === 0 && before.size === 0) return;
      post(now);
    },
    /** Stops whatever is in work; what is known so far stays. */
    stop(): void {
      const isOpen = missing().length > 0;
      post([]);
      setProgress(null);
      setStopped(isOpen);
    },
    /** Takes up again what was stopped. */
    goOn(): void {
      post(missing());
    },
    isIdle,
    /** Whether something was stopped that could go on. */
    isStopped,
    failure,
    progress,
    /** What is known for a key, without asking for it. */
    known<Picture>(key: string): Picture | null {
      news();
      return pictureOf<Picture>(key);
    },
    /**
     * What is known of something wanted.
     * @param slot the place on the page where it is shown: only one kind of picture is ever asked for there
     */
    find<Picture>(slot: string, key: string | null): Found<Picture> {
      news();
      const held = key === null ? undefined : answers.get(key);
      const fresh = pictureOf<Picture>(key);
      const problems: readonly ScenarioProblem[] =
        failure() !== null
          ? [{ code: "stopped", path: [], message: failure()! }]
          : held?.answer.ok === false
            ? held.answer.problems
            : [];
      const asked = askedFor.get(slot) ?? [];
      if (key !== null && asked.at(-1) !== key) {
        // What was asked before the last good answer can be no newer than it.
        const lastGood = asked.findLastIndex((each) => pictureOf(each) !== null);
        askedFor.set(slot, [...asked.slice(Math.max(0, lastGood)), key]);
      }
      const before = () => (askedFor.get(slot) ?? []).findLast((each) => pictureOf(each) !== null);
      return {
        result: fresh ?? pictureOf<Picture>(before()),
        stale: fresh === null,
        // Read only by whoever shows it: what comes of a result need not be worked out again whenever some more members are done.
        get progress() {
          if (held?.whole === true || key === null || isIdle()) return null;
          const runs = progress();
          return runs?.key === key ? { done: runs.done, of: runs.of } : { done: 0, of: 1 };
        },
        problems,
      };
    },
  };
}

export type Results = ReturnType<typeof makeResults>;
