import { join } from "node:path";
import type { BrowserContext } from "playwright-core";

/** The built page on another machine, by plain http: an address that a phone could open, and to which browsers give less. */
export const ELSEWHERE = "http://laptop.example/duskline/";

/** Lets the pages of a context find it there. */
export function answerElsewhere(context: BrowserContext): Promise<unknown> {
  return context.route(`${ELSEWHERE}**`, (route) => {
    const file = new URL(route.request().url()).pathname.replace("/duskline/", "");
    return route.fulfill({ path: join("dist/explorer", file || "index.html") });
  });
}
