import type { Asked, Want } from "../answers/asked.ts";
import { kindOf } from "../answers/kinds.ts";
import { makeShop, NEVER, type ShopWorks } from "../answers/makeShop.ts";
import { makeSurroundings } from "../answers/makeSurroundings.ts";
import { Refused } from "../answers/refused.ts";
import { wantOf } from "../answers/wantOf.ts";
import { askedByAll } from "../notebook/asked.ts";
import type { Notebook } from "../notebook/notebook.ts";
import { readNotebook } from "../notebook/readNotebook.ts";
import { scenarioDocument } from "../notebook/scenarioDocument.ts";
import type { Surroundings } from "../run/surroundings.ts";
import type { Scenario } from "../scenario/scenario.ts";
import { withZone } from "../scenario/withZone.ts";
import { reportHtml } from "./reportHtml.ts";
import type { ReportPage } from "./reportPage.ts";
import { type Answered, answerKey, stillPage } from "./stillPage.ts";

/** What a report needs from where it is made. */
export interface ReportWorks extends Pick<ShopWorks, "pool" | "turn"> {
  /** The weather file that a scenario names, where the notebook does not keep it. @throws Refused */
  readonly surroundings: (scenario: Scenario) => Promise<Surroundings>;
  /** Told how far the whole report is, 0…1. */
  readonly progress?: (share: number) => void;
  /** Says on what it is at work, and how far. */
  readonly tick?: (asked: Asked, done: number, of: number) => void;
}

export type ReportMade =
  | {
      readonly ok: true;
      readonly html: string;
      readonly notebook: Notebook;
      /** The notebook with all its results, from which the report was written. */
      readonly page: ReportPage;
      readonly wrong: readonly string[];
    }
  | { readonly ok: false; readonly sentences: readonly string[] };

/**
 * Reads a notebook's file, works out everything that its entries show, and makes the report.
 * @returns the report, with what was wrong with single scenarios (the report says that in their place as well); or why the file is no notebook
 */
export async function reportOfText(text: string, works: ReportWorks): Promise<ReportMade> {
  const read = readNotebook(text);
  if (!read.ok) return read;
  const { notebook } = read;
  const kept = makeSurroundings();
  const shop = makeShop({
    ...works,
    workersHaveClimate: false,
    surroundings: async (scenario, axes) => {
      const found = await kept(scenario, notebook.weatherFiles ?? [], axes);
      const isLacking = scenario.weather.kind === "file" && found.weatherFile === undefined;
      return isLacking ? works.surroundings(scenario) : found;
    },
  });
  const documentOf = (id: string) => {
    const found = scenarioDocument(notebook, id);
    return found.ok ? withZone(found.document) : null;
  };
  const answers = new Map<string, Answered>();
  const wrong: string[] = [];
  const all = askedByAll(notebook);
  for (const [k, asked] of all.entries()) {
    works.progress?.(k / all.length);
    await works.turn();
    const want = wantOf(asked, documentOf, notebook);
    if (want === null) {
      wrong.push(...lostSentences(notebook, asked));
      continue;
    }
    const answered = await answerTo(
      want,
      shop.visit(
        visitFor(want, (done) => {
          works.progress?.((k + Math.min(1, done / Math.max(1, want.members))) / all.length);
          works.tick?.(asked, done, want.members);
        }),
      ),
    );
    answers.set(answerKey(asked), answered);
    if (!answered.ok) wrong.push(...answered.problems.map(({ message }) => message));
  }
  const page = stillPage(notebook, answers);
  const html = await reportHtml(page);
  return { ok: true, html, notebook, page, wrong: [...new Set(wrong)] };
}

function visitFor({ members }: Want, tick: (done: number) => void) {
  const early = () => {};
  return {
    upTo: members,
    isCoarse: false,
    signal: NEVER,
    cut: {},
    tick: (_: number, done: number) => tick(done),
    early,
  };
}

async function answerTo(want: Want, shop: ReturnType<ReturnType<typeof makeShop>["visit"]>): Promise<Answered> {
  try {
    const work = await kindOf(want.kind).question!.work();
    return { ok: true, picture: await work(want, shop) };
  } catch (error) {
    if (error instanceof Refused) return { ok: false, problems: error.problems };
    throw error;
  }
}

/** Why scenarios that something is asked of have no document. */
function lostSentences(notebook: Notebook, { kind, doc }: Asked): string[] {
  return kindOf(kind)
    .scenarios(doc)
    .flatMap((id) => {
      const found = scenarioDocument(notebook, id);
      return found.ok ? [] : [found.sentence];
    });
}
