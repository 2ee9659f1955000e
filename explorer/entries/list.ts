import type { EntryKindName } from "../../engine/notebook/notebook.ts";
import type { EntryKind } from "../notebook/entryKind.ts";
import { actualEntry } from "./actual/entry.ts";
import { cautionsEntry } from "./cautions/entry.ts";
import { daysEntry } from "./days/entry.ts";
import { driversEntry } from "./drivers/entry.ts";
import { forecastEntry } from "./forecast/entry.ts";
import { ledgerEntry } from "./ledger/entry.ts";
import { limitsEntry } from "./limits/entry.ts";
import { noteEntry } from "./note/entry.ts";
import { packingEntry } from "./packing/entry.ts";
import { reachEntry } from "./reach/entry.ts";
import { readingsEntry } from "./readings/entry.ts";
import { runEntry } from "./run/entry.ts";
import { scenarioEntry } from "./scenario/entry.ts";
import { shadeEntry } from "./shade/entry.ts";
import { sizingEntry } from "./sizing/entry.ts";
import { versusEntry } from "./versus/entry.ts";

/** Every kind of entry that a notebook can hold, in the order in which they are offered: the one list of them that the page has. */
export const ENTRY_KINDS: { readonly [Kind in EntryKindName]: EntryKind<Kind> } = {
  note: noteEntry,
  forecast: forecastEntry,
  versus: versusEntry,
  sizing: sizingEntry,
  drivers: driversEntry,
  reach: reachEntry,
  packing: packingEntry,
  scenario: scenarioEntry,
  shade: shadeEntry,
  run: runEntry,
  days: daysEntry,
  ledger: ledgerEntry,
  limits: limitsEntry,
  readings: readingsEntry,
  actual: actualEntry,
  cautions: cautionsEntry,
};

/** The kind of an entry, whatever it is; its document fits, for the notebook's schema has seen to that. */
export function entryKindOf(name: EntryKindName): EntryKind<EntryKindName> {
  return ENTRY_KINDS[name] as unknown as EntryKind<EntryKindName>;
}
