/** What tabs tell one another of the store. */
export interface News {
  /** Tells the others that a notebook was changed, or taken off the shelf. */
  tell(id: string): void;
  /** Calls for what others told; for null when something may have been missed. @returns the end of it */
  hear(listener: (id: string | null) => void): () => void;
}

/** News by way of the browser, and a look around whenever the tab is looked at again: a tab that slept has heard nothing. */
export function makeNews(name: string): News {
  const channel = typeof BroadcastChannel === "undefined" ? null : new BroadcastChannel(`${name}-notebooks`);
  return {
    tell: (id) => channel?.postMessage(id),
    hear(listener) {
      const told = ({ data }: MessageEvent<unknown>) => listener(typeof data === "string" ? data : null);
      const looked = () => document.visibilityState === "visible" && listener(null);
      channel?.addEventListener("message", told);
      document.addEventListener("visibilitychange", looked);
      addEventListener("pageshow", looked);
      return () => {
        channel?.removeEventListener("message", told);
        document.removeEventListener("visibilitychange", looked);
        removeEventListener("pageshow", looked);
      };
    },
  };
}
