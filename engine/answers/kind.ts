import type * as z from "zod";
import type { Drawing } from "../drawing/drawing.ts";
import type { Markup } from "../drawing/html.ts";
import type { ScenarioInput } from "../scenario/scenario.ts";
import type { Words } from "../words/said.ts";
import type { AnswersPage } from "./answersPage.ts";
import type { Asked, Want } from "./asked.ts";
import type { Shop } from "./shop.ts";
import type { SlideContent } from "./slide.ts";

/**
 * When a question has its turn: `skies` share members with one another and are answered first in a coarse pass; `glance` takes
 * milliseconds; `seconds` and `map` wait for all of these, and the last for everything.
 */
export type Pass = "skies" | "glance" | "seconds" | "map";

/** How a question is worked out. @throws Refused where a scenario is wrong; TaskCancelled once nobody wants it */
export type Work<Choices, Picture> = (want: Want<Choices>, shop: Shop) => Promise<Picture>;

/** What can be asked of scenarios. */
export interface Question<Doc, Choices, Picture> {
  readonly pass: Pass;
  /** What of the document decides the answer besides its scenarios; null where there is nothing to ask yet. */
  readonly choices: (doc: Doc) => Choices | null;
  /** How many members it runs of those that a notebook draws; left out where nothing is drawn. */
  readonly members?: (drawn: number) => number;
  /** What of the choices makes an older answer no stand-in for the new one while that is in work. */
  readonly place?: (choices: Choices) => unknown;
  /** Runs of one member that it takes for each member drawn; left out: one for each scenario. */
  readonly runsPerMember?: (choices: Choices) => number;
  readonly work: () => Promise<Work<Choices, Picture>>;
}

/** How a kind is told: its part of a report, its picture, its slide. Loaded when asked for. */
export interface Tell<Doc> {
  readonly section: (page: AnswersPage, doc: Doc) => Markup;
  /** As it would stand in a report; null while nothing is known. */
  readonly drawing?: (page: AnswersPage, doc: Doc) => Drawing | null;
  /** Left out: the section. */
  readonly slide?: (page: AnswersPage, doc: Doc) => SlideContent;
}

/** The sentence that heads a notebook. */
export interface Headline {
  /** Null while it is in work. */
  readonly words: readonly Words[] | null;
  readonly more: string;
  readonly stale: boolean;
}

/** A kind of entry, as far as it needs no screen. One folder each under `answers/`, listed in `kinds.ts`. */
export interface Kind<Doc = unknown, Choices = unknown, Picture = unknown> {
  readonly doc: z.ZodType<Doc>;
  /** Ids of the scenarios that an entry shows. */
  readonly scenarios: (doc: Doc) => readonly string[];
  /** Ids of scenarios that its text mentions; taking one of them out would leave it without. */
  readonly mentions?: (doc: Doc) => readonly string[];
  /** What has to be worked out before it can be shown. */
  readonly asks: (doc: Doc) => readonly Asked[];
  /** The question that this kind owns; left out where it shows what other kinds ask. */
  readonly question?: Question<Doc, Choices, Picture>;
  /** What it shows in a notebook that has just been made, or null; left out by kinds that such a notebook does not open on. */
  readonly first?: (
    scenarios: readonly [string, ...string[]],
    base: Pick<ScenarioInput, "obstacles">,
  ) => { readonly title: string; readonly doc: Doc } | null;
  /** Why a document is longer than one entry may be, in a sentence; null where it is not. Left out by kinds that have no such limit. */
  readonly whyTooLong?: (doc: Doc) => string | null;
  /** A document that is too long for one entry, as several; left out by kinds that have nothing to divide. */
  readonly inParts?: (doc: unknown) => readonly object[];
  /** The document without scenarios that are gone; left out by kinds that cannot do without one. */
  readonly without?: (doc: Doc, lost: ReadonlySet<string>) => Doc | null;
  /** Whether entries of this kind edit a scenario and go with it. */
  readonly goesWithScenario?: boolean;
  /** Whether it has a picture that can be saved. */
  readonly isDrawn?: boolean;
  /** What it says at the head of a notebook, where it can head one. */
  readonly headline?: (page: AnswersPage, doc: Doc) => Headline;
  readonly tell: () => Promise<Tell<Doc>>;
}

/** A kind as it was written, its types kept. */
export function kind<Doc, Choices, Picture>(of: Kind<Doc, Choices, Picture>): Kind<Doc, Choices, Picture> {
  return of;
}
