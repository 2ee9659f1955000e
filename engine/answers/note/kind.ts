import type { Asked } from "../asked.ts";
import { askOdds } from "../forecast/ask.ts";
import { kind } from "../kind.ts";
import { askRun } from "../run/ask.ts";
import { askVersus } from "../versus/ask.ts";
import { NoteDoc } from "./ask.ts";
import { figuresIn } from "./noteFigures.ts";
import { notePieces, whyNoteTooLong } from "./notePieces.ts";

/** Text with figures quoted from the results. */
export const noteKind = kind({
  doc: NoteDoc,
  scenarios: () => [],
  mentions: ({ text }) =>
    figuresIn(text).flatMap(({ scenario, over }) => (over === null ? [scenario] : [scenario, over])),
  whyTooLong: ({ text }) => whyNoteTooLong(text.length),
  inParts: notePieces,
  asks: ({ text }) =>
    figuresIn(text).map(({ scenario, over, of }): Asked => {
      if (over !== null) return askVersus(over, scenario);
      return of === "run" ? askRun(scenario) : askOdds(scenario);
    }),
  tell: () => import("./tell.ts").then(({ tellNote }) => tellNote),
});
