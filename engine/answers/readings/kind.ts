import { kind } from "../kind.ts";
import { MOST_READINGS } from "../notebookLimits.ts";
import { askRun } from "../run/ask.ts";
import { askLearned } from "./ask.ts";
import { ReadingsDoc } from "./doc.ts";
import { readingsPieces } from "./readingsPieces.ts";

/** Particles of a forecast that learns: fewer make its bands jump, more take longer than they are worth. */
const PARTICLES = { fewest: 100, most: 2000 };

/** What was read off the station, and the forecast that learns from it. */
export const readingsKind = kind({
  doc: ReadingsDoc,
  scenarios: ({ scenario }) => [scenario],
  whyTooLong: ({ readings }) =>
    readings.length <= MOST_READINGS
      ? null
      : `An entry holds ${MOST_READINGS} readings at most; remove old ones, or go on in a second entry.`,
  inParts: readingsPieces,
  asks: (doc) => (doc.readings.length === 0 ? [askRun(doc.scenario)] : [askRun(doc.scenario), askLearned(doc)]),
  isDrawn: true,
  question: {
    pass: "seconds",
    choices: ({ readings }) => (readings.length === 0 ? null : readings),
    place: () => null,
    members: (drawn) => Math.min(PARTICLES.most, Math.max(PARTICLES.fewest, drawn)),
    work: () => import("./work.ts").then(({ workLearned }) => workLearned),
  },
  tell: () => import("./tell.ts").then(({ tellReadings }) => tellReadings),
});
