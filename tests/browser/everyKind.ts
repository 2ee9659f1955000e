import type { Entry, Notebook } from "../../engine/notebook/notebook.ts";
import { exampleNotebook } from "../../explorer/notebook/exampleNotebook.ts";

const example = exampleNotebook("example");
/** Kinds of entry that the example does not show. */
const others: Entry[] = [
  { id: "limits", kind: "limits", title: "Wiring and limits", doc: { scenario: "meadow" } },
  { id: "readings", kind: "readings", title: "Readings", doc: { scenario: "meadow", readings: [] } },
  {
    id: "reach",
    kind: "reach",
    title: "What would it take?",
    doc: { scenario: "roof", targetIn100: 95, most: "money", locked: ["bank"], lent: ["meadow"] },
  },
  {
    id: "packing",
    kind: "packing",
    title: "What to pack",
    doc: { scenario: "roof", targetIn100: 90, most: "mass", mostMassKg: 60, mostMinutes: 45, lent: ["meadow"] },
  },
  { id: "actual", kind: "actual", title: "Planned and actual", doc: { scenario: "meadow" } },
];
const shown = new Set(example.entries.map(({ kind }) => kind));
/** The example with every kind of entry, all unfolded, and few skies. */
export const everyKind: Notebook = {
  ...example,
  title: "Everything unfolded",
  members: 100,
  entries: [...example.entries, ...others.filter(({ kind }) => !shown.has(kind))].map((entry) => ({
    ...entry,
    folded: false,
  })),
};
