import type { Report } from "./desk.ts";

/** How long an answer may wait for those that come with it: each that is shown by itself draws the sheet once more. */
const TOGETHER_MS = 60;
/** Between two words about how far it is. */
const TELL_EVERY_MS = 80;

export type Tell = (report: Report) => void;

/**
 * Says how far the answer under a key is, from time to time; its sides are added up.
 * @param of members in all
 */
export function tellProgress(
  key: string,
  of: number,
  tell: Tell,
  nowMs: () => number,
): (side: number, done: number) => void {
  const dones: number[] = [];
  let toldMs = nowMs();
  return (side, done) => {
    dones[side] = done;
    const ms = nowMs();
    if (ms - toldMs < TELL_EVERY_MS) return;
    toldMs = ms;
    const sum = dones.reduce((before, each) => before + (each ?? 0), 0);
    tell({ say: "progress", key, done: Math.min(sum, of), of });
  };
}

/** Says answers together, those of one pass at the latest at its end. */
export function tellTogether(tell: Tell, nowMs: () => number): { readonly say: Tell; readonly end: () => void } {
  let held: Report[] = [];
  let sinceMs = 0;
  const end = () => {
    for (const report of held) tell(report);
    held = [];
  };
  const say = (report: Report) => {
    if (held.length === 0) sinceMs = nowMs();
    held.push(report);
    if (nowMs() - sinceMs > TOGETHER_MS) end();
  };
  return { say, end };
}
