import { kind } from "../kind.ts";
import { askSizes, type SizeChoices } from "./ask.ts";
import { SizingDoc } from "./doc.ts";

/** Members of a map: the notebook's own, so that a scenario has one number everywhere; beyond this it would take minutes. */
const MOST_MAP_MEMBERS = 2000;
/** Cells of a map whose sizes are left to the program. */
const USUAL_CELLS = 28;
const USUAL_CELLS_ALONG = 7;

/** How big a bank, how much panel: the odds over two numbers. */
export const sizingKind = kind({
  doc: SizingDoc,
  scenarios: ({ scenario }) => [scenario],
  asks: (doc) => [askSizes(doc)],
  isDrawn: true,
  question: {
    pass: "map",
    choices: ({ across, up, targetIn100, autonomyDays }): SizeChoices => ({
      ...(across === undefined ? {} : { x: across }),
      ...(up === undefined ? {} : { y: up }),
      aims: { targetShare: targetIn100 / 100, autonomyDays },
    }),
    members: (drawn) => Math.min(MOST_MAP_MEMBERS, drawn),
    place: ({ x, y }) => [x?.at, y?.at],
    runsPerMember: ({ x, y }) =>
      x === undefined && y === undefined
        ? USUAL_CELLS
        : (x?.values.length ?? USUAL_CELLS_ALONG) * (y?.values.length ?? USUAL_CELLS_ALONG),
    work: () => import("./work.ts").then(({ workSizes }) => workSizes),
  },
  first: ([scenario]) => ({ title: "How big a bank, how many panels?", doc: SizingDoc.parse({ scenario }) }),
  tell: () => import("./tell.ts").then(({ tellSizing }) => tellSizing),
});
