/** What is over within this is not spoken of. */
const QUIET_MS = 1000;
const EVERY_MS = 250;
/** Back to the line's beginning, and what stands there away (ECMA-48). */
const CLEAR = "\r\u001b[K";

/** A terminal's last line. */
export interface ProgressLine {
  /** Takes how far the work is, 0…1. */
  readonly at: (share: number) => void;
  /** Takes the line away, so that something else can be written; it comes again while the work goes on. */
  readonly clear: () => void;
  readonly end: () => void;
}

/**
 * Says in a terminal's last line that a verb is at work and how far, once it takes over a second.
 * @param write null where no terminal listens
 */
export function makeProgressLine(verb: string, write: ((text: string) => void) | null): ProgressLine {
  if (write === null) return { at: () => {}, clear: () => {}, end: () => {} };
  const began = performance.now();
  let share = 0;
  let isShown = false;
  const show = () => {
    const passedMs = performance.now() - began;
    if (passedMs < QUIET_MS) return;
    isShown = true;
    write(`${CLEAR}${progressWords(verb, share, passedMs)}`);
  };
  const timer = setInterval(show, EVERY_MS);
  const clear = () => {
    if (isShown) write(CLEAR);
    isShown = false;
  };
  return {
    at: (next) => {
      share = Math.max(0, Math.min(1, next));
    },
    clear,
    end: () => {
      clearInterval(timer);
      clear();
    },
  };
}

/** "odds: 34 %, 5 s (Ctrl-C stops it)"; without the percent while nothing is known of it. */
export function progressWords(verb: string, share: number, passedMs: number): string {
  const seconds = `${Math.floor(passedMs / 1000)} s`;
  const far = share > 0 ? `${Math.floor(100 * share)} %, ` : "";
  return `${verb}: ${far}${seconds} (Ctrl-C stops it)`;
}
