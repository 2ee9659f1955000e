import type { Page } from "playwright-core";

/** All notebooks that this page's browser keeps, as JSON. */
export function keptText(page: Page): Promise<string> {
  return page.evaluate(
    () =>
      new Promise<string>((resolve, reject) => {
        const opening = indexedDB.open("duskline");
        opening.onerror = () => reject(opening.error);
        opening.onsuccess = () => {
          const all = opening.result.transaction("notebooks").objectStore("notebooks").getAll();
          all.onsuccess = () => {
            opening.result.close();
            resolve(JSON.stringify(all.result));
          };
        };
      }),
  );
}
