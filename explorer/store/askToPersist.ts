let isAsked = false;

/** Asks the browser, once, not to throw away what is kept when room gets short. Some ask the person; so it waits for a first change. */
export function askToPersist(): void {
  if (isAsked) return;
  isAsked = true;
  void navigator.storage?.persist?.().catch(() => false);
}
