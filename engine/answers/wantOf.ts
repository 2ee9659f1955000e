import type { ScenarioInput } from "../scenario/scenario.ts";
import type { Asked, Want } from "./asked.ts";
import { kindOf } from "./kinds.ts";

/**
 * What something asked wants worked out; null while a scenario has no document, or there is nothing to ask yet.
 * @param documentOf a scenario's whole document
 */
export function wantOf(
  { kind, doc }: Asked,
  documentOf: (id: string) => ScenarioInput | null,
  drawn: { readonly seed: string; readonly members: number },
): Want | null {
  const { question, scenarios } = kindOf(kind);
  if (question === undefined) throw new RangeError(`${kind} asks nothing of its own`);
  const choices = question.choices(doc);
  if (choices === null) return null;
  const documents: ScenarioInput[] = [];
  for (const id of scenarios(doc)) {
    const document = documentOf(id);
    if (document === null) return null;
    documents.push(document);
  }
  const draws = question.members !== undefined;
  const [seed, members] = draws ? [drawn.seed, question.members(drawn.members)] : ["", 0];
  return { key: JSON.stringify([kind, seed, members, choices, documents]), kind, documents, choices, seed, members };
}

/** The place on a page where something asked is shown: what was shown there last stands in until something newer is known. */
export function placeOf({ kind, doc }: Asked): string {
  const { question, scenarios } = kindOf(kind);
  const choices = question?.choices(doc) ?? null;
  const place = choices === null ? undefined : question?.place?.(choices);
  return JSON.stringify([kind, scenarios(doc), place]);
}
