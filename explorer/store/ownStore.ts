/** The browser's own store of short texts, or null where it keeps nothing. */
export function ownStore(): Storage | null {
  try {
    return localStorage;
  } catch {
    return null;
  }
}
