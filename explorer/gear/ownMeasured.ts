import { makeMeasured } from "./makeMeasured.ts";

/** The browser's own store, or null where it keeps nothing. */
export function ownStore(): Storage | null {
  try {
    return localStorage;
  } catch {
    return null;
  }
}

/** What the person at this browser measured: one for the whole page. */
export const measured = makeMeasured(ownStore(), () => new Date().toISOString().slice(0, 10));
