import type { Page } from "playwright-core";

/** Puts a notebook into the store past every check, as an older duskline or another hand may have. */
export function putIntoStore(page: Page, id: string, title: string, notebook: unknown): Promise<void> {
  return page.evaluate(
    (kept) =>
      new Promise<void>((resolve) => {
        const opening = indexedDB.open("duskline");
        opening.onsuccess = () => {
          const change = opening.result.transaction("notebooks", "readwrite");
          change.objectStore("notebooks").put(kept);
          change.oncomplete = () => {
            opening.result.close();
            resolve();
          };
        };
      }),
    { id, title, changedMs: Date.now() + 60_000, revision: 3, notebook },
  );
}
