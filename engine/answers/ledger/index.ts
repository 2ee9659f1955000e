/** answers/ledger: where the energy of one run went. What other folders may take of it. */
export { ledgerKind } from "./kind.ts";
export { ledgerWords } from "./ledgerWords.ts";
export { allLoads, HARVEST, LOADS, ledgerCsv } from "./rows.ts";
