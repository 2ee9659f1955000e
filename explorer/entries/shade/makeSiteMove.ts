import { createEffect, createMemo, createSignal, on, onCleanup } from "solid-js";
import type { Change } from "../../../engine/scenario/change.ts";
import type { Scenario } from "../../../engine/scenario/scenario.ts";
import { changesOfMove, type Move, moveWords, thingsOf, withMove } from "./thing.ts";

/** Keys that follow one another within this are one move. */
const KEYS_REST_MS = 700;

/**
 * A thing on its way over the site, told as one change once it has come to rest.
 * @param onChanges called once for each drag or run of keys, with what to change and its name: "old walnut 1.5 m east"
 */
export function makeSiteMove(scenario: () => Scenario, onChanges: (changes: Change[], label: string) => void) {
  const [move, setMove] = createSignal<Move | null>(null);
  /** The site as it is drawn: the document's, with what is on its way. */
  const site = createMemo(() => withMove(scenario(), move()));

  // A new document holds the move already, or has thought better of it.
  createEffect(on(scenario, () => setMove(null), { defer: true }));

  let rest: ReturnType<typeof setTimeout> | undefined;
  function report(): void {
    clearTimeout(rest);
    const to = move();
    if (to === null) return;
    const from = thingsOf(scenario()).find((thing) => thing.key === to.key);
    const changes = from === undefined ? [] : changesOfMove(from, to);
    if (from === undefined || changes.length === 0) setMove(null);
    else onChanges(changes, `${from.name} ${moveWords(from, to).replaceAll("\u202f", " ")}`);
  }
  onCleanup(report);
  return {
    site,
    onMove(next: Move): void {
      const before = move();
      if (before !== null && before.key !== next.key) report();
      setMove(next);
    },
    onRest(how: "key" | "drop"): void {
      clearTimeout(rest);
      if (how === "drop") report();
      else rest = setTimeout(report, KEYS_REST_MS);
    },
    onCancel: () => setMove(null),
  };
}
