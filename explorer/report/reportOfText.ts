import {
  drivers,
  limits,
  type OddsPart,
  oddsReport,
  type PreparedEnsemble,
  type Problem,
  prepareEnsemble,
  prepareSizes,
  readScenario,
  type Scenario,
  type ScenarioInput,
  type Surroundings,
  sizeMembers,
  sizeReport,
  trace,
  usualWishes,
} from "../../engine/index.ts";
import { actualPicture } from "../entries/actual/actualPicture.ts";
import { limitOptions } from "../entries/limits/limitsWords.ts";
import { learnedPicture } from "../entries/readings/learnedPicture.ts";
import { type Asked, askedByAll } from "../notebook/asked.ts";
import type { EntryDoc, Notebook } from "../notebook/notebook.ts";
import { readNotebook } from "../notebook/readNotebook.ts";
import { scenarioDocument } from "../notebook/scenarioDocument.ts";
import { runPicture } from "../picture/runPicture.ts";
import type { Answer } from "../results/desk.ts";
import { oddsPicture } from "../results/oddsPicture.ts";
import { sizePicture } from "../results/sizePicture.ts";
import { versusPicture } from "../results/versusPicture.ts";
import { driversWanted, learnedWanted, sizesWanted } from "../results/wanted.ts";
import { makeSurroundings } from "../weather/makeSurroundings.ts";
import { reportHtml } from "./reportHtml.ts";
import { answerKey, stillPage } from "./stillPage.ts";

type Got<T> = { readonly ok: true; readonly value: T } | { readonly ok: false; readonly problems: readonly Problem[] };

/** What a report needs from where it is made. */
export interface ReportWorks {
  /** Climate, and the weather file that a scenario names where the notebook does not keep it. */
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
  const surroundingsKept = makeSurroundings();
  const contestants = new Map<string, Got<Contestant>>();

  async function scenarioOf(
    id: string,
  ): Promise<Got<{ document: ScenarioInput; scenario: Scenario; surroundings: Surroundings }>> {
    const document = scenarioDocument(notebook, id);
    if (!document.ok) return { ok: false, problems: [{ code: "no-document", path: [], message: document.sentence }] };
    const found = readScenario(document.document);
    if (!found.ok) return found;
    const kept = await surroundingsKept(found.scenario, notebook.weatherFiles ?? []);
    const isLacking = found.scenario.weather.kind === "file" && kept.weatherFile === undefined;
    const surroundings: Got<Surroundings> = isLacking
      ? await works.surroundings(found.scenario)
      : { ok: true, value: kept };
    return surroundings.ok
      ? { ok: true, value: { document: document.document, scenario: found.scenario, surroundings: surroundings.value } }
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

  async function runOf(id: string): Promise<Answer> {
    const found = await scenarioOf(id);
    if (!found.ok) return refusal(found.problems);
    const run = trace(found.value.scenario, found.value.surroundings);
    return run.ok ? { kind: "run", picture: runPicture(run.trace) } : refusal(run.problems);
  }

  async function oddsOf(id: string): Promise<Answer> {
    const found = await contestantOf(id);
    if (!found.ok) return refusal(found.problems);
    const { ensemble, part } = found.value;
    return { kind: "odds", picture: oddsPicture(ensemble, oddsReport(ensemble, part)) };
  }

  async function versusOf(firstId: string, secondId: string): Promise<Answer> {
    const [first, second] = [await contestantOf(firstId), await contestantOf(secondId)];
    return first.ok && second.ok
      ? { kind: "versus", picture: versusPicture(first.value, second.value) }
      : refusal([first, second].flatMap((each) => (each.ok ? [] : each.problems)));
  }

  async function sizesOf(id: string, doc: EntryDoc<"sizing">): Promise<Answer> {
    const found = await scenarioOf(id);
    if (!found.ok) return refusal(found.problems);
    const { document, scenario, surroundings } = found.value;
    const want = sizesWanted(document, doc, notebook);
    if (want.kind !== "sizes") throw new Error("a map is wanted");
    const usual = usualWishes(scenario);
    const x = want.x ?? usual.x;
    const ready = prepareSizes(
      document,
      x,
      want.y ?? (x.at === usual.y?.at ? usual.x : usual.y),
      surroundings,
      want.seed,
    );
    if (!ready.ok) return refusal(ready.problems);
    const part = sizeMembers(ready.map, 0, want.members);
    return { kind: "sizes", picture: sizePicture(ready.map, sizeReport(ready.map, part, want.aims)) };
  }

  async function driversOf(id: string): Promise<Answer> {
    const found = await scenarioOf(id);
    if (!found.ok) return refusal(found.problems);
    const ready = prepareEnsemble(found.value.scenario, found.value.surroundings, notebook.seed);
    if (!ready.ok) return refusal(ready.problems);
    const want = driversWanted(found.value.document, notebook);
    const report = drivers(ready.ensemble, want.kind === "drivers" ? want.members : notebook.members)!; // nothing gives it up
    return { kind: "drivers", picture: { report, remarks: ready.ensemble.remarks } };
  }

  async function limitsOf(id: string, doc: EntryDoc<"limits">): Promise<Answer> {
    const found = await scenarioOf(id);
    if (!found.ok) return refusal(found.problems);
    const run = trace(found.value.scenario, found.value.surroundings);
    return run.ok ? { kind: "limits", picture: limits(run.trace, limitOptions(doc)) } : refusal(run.problems);
  }

  async function learnedOf(id: string, doc: EntryDoc<"readings">): Promise<Answer> {
    const found = await scenarioOf(id);
    if (!found.ok) return refusal(found.problems);
    const want = learnedWanted(found.value.document, doc, notebook);
    if (want?.kind !== "learned") throw new Error("readings are wanted");
    const ready = prepareEnsemble(found.value.scenario, found.value.surroundings, want.seed);
    if (!ready.ok) return refusal(ready.problems);
    const learned = await learnedPicture(ready.ensemble, want.readings, want.members, {}, () => {});
    return learned.ok ? { kind: "learned", picture: learned.picture } : refusal(learned.problems);
  }

  async function actualOf(id: string, { log }: EntryDoc<"actual">): Promise<Answer> {
    const found = await scenarioOf(id);
    if (!found.ok) return refusal(found.problems);
    if (log === undefined) throw new Error("a log is wanted");
    const { scenario, surroundings } = found.value;
    const against = actualPicture(scenario, log, surroundings, notebook.seed);
    return against.ok ? { kind: "actual", picture: against.picture } : refusal(against.problems);
  }

  function answerTo(asked: Asked): Promise<Answer> {
    switch (asked.kind) {
      case "run":
        return runOf(asked.scenario);
      case "odds":
        return oddsOf(asked.scenario);
      case "versus":
        return versusOf(asked.first, asked.second);
      case "sizes":
        return sizesOf(asked.scenario, asked.doc);
      case "drivers":
        return driversOf(asked.scenario);
      case "limits":
        return limitsOf(asked.scenario, asked.doc);
      case "learned":
        return learnedOf(asked.scenario, asked.doc);
      case "actual":
        return actualOf(asked.scenario, asked.doc);
    }
  }

  for (const asked of askedByAll(notebook)) {
    const answer = await answerTo(asked);
    answers.set(answerKey(asked), answer);
    if (answer.kind === "problems") wrong.push(...answer.problems.map(({ message }) => message));
  }
  return { ok: true, html: reportHtml(stillPage(notebook, answers)), notebook, wrong: [...new Set(wrong)] };
}

function refusal(problems: readonly Problem[]): Answer {
  return { kind: "problems", problems };
}
