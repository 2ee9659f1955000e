import { terminalQr } from "./terminalQr.ts";

/**
 * What `npm start -- --lan` says: where others find the page, the first of those as a QR code, and what browsers hold back over plain http.
 * @param urls one or more, the likeliest first
 * @param isColoured whether the terminal takes colours
 */
export function lanWords(urls: readonly [string, ...string[]], isColoured: boolean): string {
  return `For phones and machines on the same network, the explorer is at ${urls.join(" or ")}  (Ctrl-C stops it)

${terminalQr(urls[0], isColoured)}

While this machine serves it, everything is worked out there: plans, odds, readings, reports, links. Each browser keeps its own notebooks.
This address is plain http, and browsers keep some things for https: the page does not open without this machine, cannot be installed,
cannot ask that notebooks stay when room gets short (save a file before you leave), and a link is copied by hand. docs/hosting.md says
how to have it all. Whoever is on this network can open the page; your notebooks stay in your browser.`;
}
