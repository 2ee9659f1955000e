import { createSignal } from "solid-js";

/** Edits that follow one another within this time and touch the same field are one step back. */
const MERGE_MS = 1500;

/**
 * A value that remembers what it was. Typing one number is one step, however many keys it took.
 * @param nowMs a clock, so that tests need not wait
 */
export function makeHistory<T>(first: T, nowMs: () => number = () => performance.now()) {
  const [state, setState] = createSignal({ past: [] as readonly T[], now: first, future: [] as readonly T[] });
  /** What stood there before the last act, undoing included; what "before" means in the picture. */
  const [before, setBefore] = createSignal<T | null>(null);
  let lastField: string | null = null;
  let lastMs = Number.NEGATIVE_INFINITY;

  /** Puts a new value in place; `field` names what was touched. */
  function edit(field: string, value: T): void {
    const merges = field === lastField && nowMs() - lastMs < MERGE_MS;
    lastField = field;
    lastMs = nowMs();
    const { past, now } = state();
    if (!merges) setBefore(() => now);
    setState({ past: merges ? past : [...past.slice(-199), now], now: value, future: [] });
  }

  /** Ends a run of edits to one field: the next one is a step of its own. */
  function settle(): void {
    lastField = null;
  }

  function undo(): void {
    const { past, now, future } = state();
    if (past.length === 0) return;
    settle();
    setBefore(() => now);
    setState({ past: past.slice(0, -1), now: past.at(-1)!, future: [now, ...future] });
  }

  function redo(): void {
    const { past, now, future } = state();
    if (future.length === 0) return;
    settle();
    setBefore(() => now);
    setState({ past: [...past, now], now: future[0]!, future: future.slice(1) });
  }

  return {
    now: () => state().now,
    before,
    canUndo: () => state().past.length > 0,
    canRedo: () => state().future.length > 0,
    edit,
    settle,
    undo,
    redo,
  };
}
