import { createEffect, createMemo, createSignal, on, onCleanup } from "solid-js";

/** What ends sooner was never so to anybody's eye. */
export const LATE_MS = 250;

/**
 * Whether something is so and has been for a quarter of a second: work that is done before that is not worth the flicker of saying so.
 * What is so from the start counts at once.
 */
export function makeLasting(isSo: () => boolean): () => boolean {
  const now = createMemo(isSo);
  const [lasts, setLasts] = createSignal(now());
  createEffect(
    on(
      now,
      (so) => {
        if (!so) return setLasts(false);
        const timer = setTimeout(() => setLasts(true), LATE_MS);
        onCleanup(() => clearTimeout(timer));
      },
      { defer: true },
    ),
  );
  return () => now() && lasts();
}
