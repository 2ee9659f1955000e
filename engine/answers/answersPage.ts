import type { Change } from "../scenario/change.ts";
import type { ScenarioInput } from "../scenario/scenario.ts";
import type { Look } from "../words/look.ts";
import type { Asked } from "./asked.ts";
import type { Found } from "./found.ts";

/** A scenario of a notebook: with a document of its own, or based on another. */
export type NotebookScenario =
  | { readonly id: string; readonly name: string; readonly document: ScenarioInput }
  | { readonly id: string; readonly name: string; readonly basedOn: string; readonly changes: readonly Change[] };

/** What answers are told from: scenarios and what was worked out for them. The page in the browser is one, a report's `stillPage` another. */
export interface AnswersPage {
  /** The seed that members are drawn from, and how many. */
  drawn(): { readonly seed: string; readonly members: number };
  scenarios(): readonly NotebookScenario[];
  scenario(id: string): NotebookScenario | null;
  /** How a scenario is drawn, the same in all of the notebook. */
  look(id: string): Look;
  /** The scenario's whole document, base and changes worked together; null when its base is gone or a change finds no place. */
  document(id: string): ScenarioInput | null;
  /** The document of what it is based on; null for one with a document of its own. */
  baseDocument(id: string): ScenarioInput | null;
  /** What is known of something asked. */
  find<Picture>(asked: Asked<Picture>): Found<Picture>;
}

/** What a scenario is called; its id where it has gone. */
export function nameOf(page: Pick<AnswersPage, "scenario">, id: string): string {
  return page.scenario(id)?.name ?? id;
}
