/** A page that nobody sees has no frames; what it learns meanwhile is taken in all the same. */
const UNSEEN_MS = 100;

/** Does something when the next frame is drawn, or soon where none is. */
export function atNextFrame(work: () => void): void {
  let isDone = false;
  const once = () => {
    if (isDone) return;
    isDone = true;
    cancelAnimationFrame(frame);
    clearTimeout(timer);
    work();
  };
  const frame = requestAnimationFrame(once);
  const timer = setTimeout(once, UNSEEN_MS);
}
