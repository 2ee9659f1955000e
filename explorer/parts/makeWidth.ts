import { createSignal, onCleanup } from "solid-js";

/** The inner width of an element, kept up to date; the window's until the element is in the page. */
export function makeWidth() {
  const [width, setWidth] = createSignal(document.documentElement.clientWidth);
  const observer = new ResizeObserver(([entry]) => {
    if (entry !== undefined && entry.contentRect.width > 0) setWidth(Math.floor(entry.contentRect.width));
  });
  onCleanup(() => observer.disconnect());
  return { width, ref: (element: Element) => observer.observe(element) };
}
