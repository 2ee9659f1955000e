import type * as z from "zod";
import { actualKind } from "./actual/kind.ts";
import { cautionsKind } from "./cautions/kind.ts";
import { daysKind } from "./days/kind.ts";
import { driversKind } from "./drivers/kind.ts";
import { forecastKind } from "./forecast/kind.ts";
import type { Kind } from "./kind.ts";
import { ledgerKind } from "./ledger/kind.ts";
import { limitsKind } from "./limits/kind.ts";
import { noteKind } from "./note/kind.ts";
import { packingKind } from "./packing/kind.ts";
import { reachKind } from "./reach/kind.ts";
import { readingsKind } from "./readings/kind.ts";
import { askRun } from "./run/ask.ts";
import { runKind } from "./run/kind.ts";
import { scenarioKind } from "./scenario/kind.ts";
import { shadeKind } from "./shade/kind.ts";
import { sizingKind } from "./sizing/kind.ts";
import { versusKind } from "./versus/kind.ts";

/** Every kind of entry: the one list of them that the engine has. */
export const KINDS = {
  note: noteKind,
  scenario: scenarioKind,
  forecast: forecastKind,
  versus: versusKind,
  sizing: sizingKind,
  drivers: driversKind,
  reach: reachKind,
  packing: packingKind,
  run: runKind,
  days: daysKind,
  ledger: ledgerKind,
  shade: shadeKind,
  limits: limitsKind,
  readings: readingsKind,
  actual: actualKind,
  cautions: cautionsKind,
} as const;

export type KindName = keyof typeof KINDS;
export type DocOf<Name extends KindName> = z.infer<(typeof KINDS)[Name]["doc"]>;

export const KIND_NAMES = Object.keys(KINDS) as readonly KindName[];

/** What a new notebook opens on, in this order. */
export const FIRST_KINDS = [
  "forecast",
  "versus",
  "reach",
  "sizing",
  "shade",
  "scenario",
  "run",
  "ledger",
  "cautions",
] as const satisfies readonly KindName[];

/** Entries in which a scenario is edited. */
export const EDITING_KIND = "scenario" satisfies KindName;

/** What gives a sheet its ruler of days and nights. */
export const askRuler = askRun;

/** What was assumed and what can hurt: the end of every report and of every print. */
export const tellEnd = () => import("./cautions/reportEnd.ts").then(({ reportEnd }) => reportEnd);

/** The kind of an entry, whatever it is; its document fits, for the notebook's schema has seen to that. @throws RangeError */
export function kindOf(name: string): Kind {
  if (!Object.hasOwn(KINDS, name)) throw new RangeError(`there is no kind of entry named ${name}`);
  return KINDS[name as KindName] as unknown as Kind;
}
