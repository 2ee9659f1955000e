import {
  type OddsPart,
  oddsReport,
  type PreparedEnsemble,
  type Problem,
  prepareEnsemble,
  readScenario,
  type Scenario,
  type Surroundings,
  trace,
} from "../../engine/index.ts";
import { askedByAll } from "../notebook/asked.ts";
import type { Notebook } from "../notebook/notebook.ts";
import { readNotebook } from "../notebook/readNotebook.ts";
import { scenarioDocument } from "../notebook/scenarioDocument.ts";
import { runPicture } from "../picture/runPicture.ts";
import type { Answer } from "../results/desk.ts";
import { oddsPicture } from "../results/oddsPicture.ts";
import { versusPicture } from "../results/versusPicture.ts";
import { reportHtml } from "./reportHtml.ts";
import { stillPage } from "./stillPage.ts";

type Got<T> = { readonly ok: true; readonly value: T } | { readonly ok: false; readonly problems: readonly Problem[] };

/** What a report needs from where it is made. */
export interface ReportWorks {
  /** Climate, and the weather file that a scenario names. */
  surroundings(scenario: Scenario): Promise<Got<Surroundings>>;
  /** Members 0 up to, but not including, `members`. */
  run(ensemble: PreparedEnsemble, members: number): Promise<Got<OddsPart>>;
}

export type ReportMade =
  | { readonly ok: true; readonly html: string; readonly notebook: Notebook; readonly wrong: readonly string[] }
  | { readonly ok: false; readonly sentences: readonly string[] };

interface Contestant {
  readonly ensemble: PreparedEnsemble;
  readonly part: OddsPart;
}

/**
 * Reads a notebook's file, works out everything that its entries show, and makes the report.
 * @returns the report, with what was wrong with single scenarios (the report says that in their place as well); or why the file is no notebook
 */
export async function reportOfText(text: string, works: ReportWorks): Promise<ReportMade> {
  const read = readNotebook(text);
  if (!read.ok) return read;
  const { notebook } = read;
  const answers = new Map<string, Answer>();
  const wrong: string[] = [];
  const contestants = new Map<string, Got<Contestant>>();

  async function scenarioOf(id: string): Promise<Got<{ scenario: Scenario; surroundings: Surroundings }>> {
    const document = scenarioDocument(notebook, id);
    if (!document.ok) return { ok: false, problems: [{ code: "no-document", path: [], message: document.sentence }] };
    const found = readScenario(document.document);
    if (!found.ok) return found;
    const surroundings = await works.surroundings(found.scenario);
    return surroundings.ok
      ? { ok: true, value: { scenario: found.scenario, surroundings: surroundings.value } }
      : surroundings;
  }

  async function contestantOf(id: string): Promise<Got<Contestant>> {
    const known = contestants.get(id);
    if (known !== undefined) return known;
    const fresh = await worked(id);
    contestants.set(id, fresh);
    return fresh;
  }

  async function worked(id: string): Promise<Got<Contestant>> {
    const found = await scenarioOf(id);
    if (!found.ok) return found;
    const ready = prepareEnsemble(found.value.scenario, found.value.surroundings, notebook.seed);
    if (!ready.ok) return ready;
    const part = await works.run(ready.ensemble, notebook.members);
    return part.ok ? { ok: true, value: { ensemble: ready.ensemble, part: part.value } } : part;
  }

  for (const asked of askedByAll(notebook)) {
    if (asked.kind === "run") {
      const found = await scenarioOf(asked.scenario);
      const run = found.ok ? trace(found.value.scenario, found.value.surroundings) : found;
      answers.set(
        `run ${asked.scenario}`,
        run.ok ? { kind: "run", picture: runPicture(run.trace) } : { kind: "problems", problems: run.problems },
      );
      if (!run.ok) wrong.push(...run.problems.map(({ message }) => message));
    } else if (asked.kind === "odds") {
      const found = await contestantOf(asked.scenario);
      answers.set(
        `odds ${asked.scenario}`,
        found.ok
          ? {
              kind: "odds",
              picture: oddsPicture(found.value.ensemble, oddsReport(found.value.ensemble, found.value.part)),
            }
          : { kind: "problems", problems: found.problems },
      );
      if (!found.ok) wrong.push(...found.problems.map(({ message }) => message));
    } else if (asked.kind === "versus") {
      const [first, second] = [await contestantOf(asked.first), await contestantOf(asked.second)];
      const lost = [first, second].flatMap((each) => (each.ok ? [] : each.problems));
      answers.set(
        `versus ${asked.first} ${asked.second}`,
        first.ok && second.ok
          ? { kind: "versus", picture: versusPicture(first.value, second.value) }
          : { kind: "problems", problems: lost },
      );
      wrong.push(...lost.map(({ message }) => message));
    }
  }
  return { ok: true, html: reportHtml(stillPage(notebook, answers)), notebook, wrong: [...new Set(wrong)] };
}
