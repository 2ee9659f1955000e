import { createSignal, onCleanup } from "solid-js";

/** The inner width of an element, kept up to date; 0 until it is in the page. */
export function makeWidth() {
  const [width, setWidth] = createSignal(0);
  const observer = new ResizeObserver(([entry]) => {
    if (entry !== undefined) setWidth(Math.floor(entry.contentRect.width));
  });
  onCleanup(() => observer.disconnect());
  return { width, ref: (element: Element) => observer.observe(element) };
}
