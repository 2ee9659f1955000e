import { createEffect, createMemo, onCleanup } from "solid-js";
import { LATE_MS } from "./makeLasting.ts";

/**
 * Marks an element while what it shows is stale, and fades it once that has lasted. By a timer and not by a delayed transition, for which
 * browsers set the element apart at once and draw all that lies over it again.
 * @returns what `ref` takes
 */
export function fadesWhile(isStale: () => boolean): (element: Element) => void {
  return (element) => {
    const stale = createMemo(isStale);
    createEffect(() => {
      element.classList.toggle("entry-stale", stale());
      if (!stale()) return;
      const timer = setTimeout(() => element.classList.add("entry-late"), LATE_MS);
      onCleanup(() => {
        clearTimeout(timer);
        element.classList.remove("entry-late");
      });
    });
  };
}
