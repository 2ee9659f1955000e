import type { EntryKindName, Notebook } from "../../engine/notebook/notebook.ts";
import { ActualEntry, actualSummary } from "../entries/actual/ActualEntry.tsx";
import { CautionsView } from "../entries/cautions/CautionsView.tsx";
import { DaysView, daysSummary } from "../entries/days/DaysView.tsx";
import { DriversView, driversSummary } from "../entries/drivers/DriversView.tsx";
import { ForecastView, forecastSummary } from "../entries/forecast/ForecastView.tsx";
import { LedgerView, ledgerSummary } from "../entries/ledger/LedgerView.tsx";
import { LimitsEntry, limitsSummary } from "../entries/limits/LimitsEntry.tsx";
import { NoteView, noteSummary } from "../entries/note/NoteView.tsx";
import { ReadingsEntry, readingsSummary } from "../entries/readings/ReadingsEntry.tsx";
import { RunView, runSummary } from "../entries/run/RunView.tsx";
import { ScenarioView, scenarioSummary } from "../entries/scenario/ScenarioView.tsx";
import { ShadeEntry, shadeSummary } from "../entries/shade/ShadeEntry.tsx";
import { SizingEntry, sizingSummary } from "../entries/sizing/SizingEntry.tsx";
import { VersusView, versusSummary } from "../entries/versus/VersusView.tsx";
import type { EntryKind } from "./entryKind.ts";

const firstOf = (notebook: Notebook) => notebook.scenarios[0]!.id;
const secondOf = (notebook: Notebook) => notebook.scenarios[1]?.id ?? firstOf(notebook);

/** Every kind of entry that a notebook can hold, in the order in which they are offered. */
export const REGISTRY: { readonly [Kind in EntryKindName]: EntryKind<Kind> } = {
  note: {
    kind: "note",
    title: "Note",
    purpose: "text with figures quoted from the results",
    make: () => ({ title: "Note", doc: { text: "" } }),
    summary: noteSummary,
    View: NoteView,
  },
  forecast: {
    kind: "forecast",
    title: "Forecast",
    purpose: "will it hold: charge in bands over many skies",
    make: (notebook) => ({ title: "Will it hold?", doc: { scenarios: [firstOf(notebook)] } }),
    summary: forecastSummary,
    View: ForecastView,
  },
  versus: {
    kind: "versus",
    title: "Versus",
    purpose: "two scenarios held against one another",
    make: (notebook) => ({
      title: "Is it worth it?",
      doc: { first: firstOf(notebook), second: secondOf(notebook) },
    }),
    summary: versusSummary,
    View: VersusView,
  },
  sizing: {
    kind: "sizing",
    title: "Sizing",
    purpose: "how big a bank, how much panel: the odds over two numbers",
    make: (notebook) => ({
      title: "How big a bank?",
      doc: { scenario: firstOf(notebook), targetIn100: 95, autonomyDays: 2 },
    }),
    summary: sizingSummary,
    View: SizingEntry,
  },
  drivers: {
    kind: "drivers",
    title: "Drivers",
    purpose: "what decides it, and what to switch off first",
    make: (notebook) => ({ title: "What decides it?", doc: { scenario: firstOf(notebook) } }),
    summary: driversSummary,
    View: DriversView,
  },
  scenario: {
    kind: "scenario",
    title: "Scenario",
    purpose: "what is planned, and every field of it",
    make: (notebook) => ({ title: "The plan", doc: { scenario: firstOf(notebook) } }),
    summary: scenarioSummary,
    View: ScenarioView,
  },
  shade: {
    kind: "shade",
    title: "Shade",
    purpose: "who gets the sun: site and sky",
    make: (notebook) => ({ title: "Who gets the sun?", doc: { scenario: firstOf(notebook) } }),
    summary: shadeSummary,
    View: ShadeEntry,
  },
  run: {
    kind: "run",
    title: "One run",
    purpose: "charge, sun, loads and volts, step by step",
    make: (notebook) => ({ title: "One run, step by step", doc: { scenario: firstOf(notebook) } }),
    summary: runSummary,
    View: RunView,
  },
  days: {
    kind: "days",
    title: "Days",
    purpose: "the days of one run in figures",
    make: (notebook) => ({ title: "The same days in figures", doc: { scenario: firstOf(notebook) } }),
    summary: daysSummary,
    View: DaysView,
  },
  ledger: {
    kind: "ledger",
    title: "Ledger",
    purpose: "where the energy went",
    make: (notebook) => ({ title: "Where the energy went", doc: { scenario: firstOf(notebook) } }),
    summary: ledgerSummary,
    View: LedgerView,
  },
  limits: {
    kind: "limits",
    title: "Wiring and limits",
    purpose: "fuses, wires, panel volts, volts at the radios: what is over and what to change",
    make: (notebook) => ({ title: "Wiring and limits", doc: { scenario: firstOf(notebook) } }),
    summary: limitsSummary,
    View: LimitsEntry,
  },
  readings: {
    kind: "readings",
    title: "Readings",
    purpose: "what was read off the station, and the forecast that learns from it",
    make: (notebook) => ({ title: "Where do we stand?", doc: { scenario: firstOf(notebook), readings: [] } }),
    summary: readingsSummary,
    View: ReadingsEntry,
  },
  actual: {
    kind: "actual",
    title: "Plan against actual",
    purpose: "a meter's log over the plan: what it missed, and which figures to correct",
    make: (notebook) => ({ title: "How good was the plan?", doc: { scenario: firstOf(notebook) } }),
    summary: actualSummary,
    View: ActualEntry,
  },
  cautions: {
    kind: "cautions",
    title: "Cautions",
    purpose: "what is left out, and what can hurt",
    make: () => ({ title: "What this leaves out, and cautions", doc: {} }),
    summary: () => "and what is left out",
    View: CautionsView,
  },
};

/** The kind of an entry, whatever it is; its document fits, for the notebook's schema has seen to that. */
export function kindOf(name: EntryKindName): EntryKind<EntryKindName> {
  return REGISTRY[name] as unknown as EntryKind<EntryKindName>;
}
