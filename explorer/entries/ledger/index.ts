/**
 * ledger: where the energy goes, on the page.
 */
export { ledgerEntry } from "./entry.ts";
