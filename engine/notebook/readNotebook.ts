import type * as z from "zod";
import { DEEPEST, LONGEST_READ, MOST_VALUES } from "../answers/notebookLimits.ts";
import { plainExpectation } from "../scenario/plainExpectation.ts";
import { figure } from "../words/numbers.ts";
import { scenariosOf } from "./asked.ts";
import { measured } from "./measured.ts";
import { migrateNotebook } from "./migrateNotebook.ts";
import { Notebook } from "./notebook.ts";
import { whyMisshapen } from "./whyMisshapen.ts";

const MOST_SENTENCES = 8;
const LONGEST_SENTENCE = 300;

export type ReadNotebook =
  | { readonly ok: true; readonly notebook: Notebook }
  | {
      readonly ok: false;
      readonly sentences: readonly string[];
      /** Whether nothing of it is to be looked at any further: it is no JSON, or its size, its depth or a field is meant to do harm. */
      readonly isHarmful: boolean;
    };

const refused = (...sentences: string[]): ReadNotebook => ({ ok: false, sentences, isHarmful: false });
const harmful = (sentence: string): ReadNotebook => ({ ok: false, sentences: [sentence], isHarmful: true });

/**
 * Reads a notebook file. Nothing in it is trusted: size, depth and number of values are bounded, unknown fields are refused, and what
 * its scenarios say is read by the engine's own schema before anything is worked out.
 */
export function readNotebook(text: string): ReadNotebook {
  if (text.length > LONGEST_READ) {
    return harmful(
      `The file has ${(text.length / 1e6).toFixed(1)} million characters; a notebook has at most 2 million.`,
    );
  }
  let value: unknown;
  try {
    value = JSON.parse(text);
  } catch (error) {
    return harmful(`The file is not JSON (${(error as Error).message}); was it saved by this page?`);
  }
  return notebookFrom(value);
}

/** Reads a notebook from a value that was parsed already, such as one out of the browser's store. */
export function notebookFrom(value: unknown): ReadNotebook {
  const harm = whatIsHarmful(value);
  if (harm !== null) return harmful(harm);
  const current = migrateNotebook(value);
  if (!current.ok) return refused(current.sentence);
  const parsed = Notebook.safeParse(current.document, { error: plainExpectation });
  if (!parsed.success) return refused(...problemSentences(parsed.error));
  const wrong = whatIsLost(parsed.data);
  return wrong.length > 0
    ? refused(...counted(wrong.slice(0, MOST_SENTENCES), wrong.length))
    : { ok: true, notebook: parsed.data };
}

function whatIsHarmful(root: unknown): string | null {
  const { values, levels, badField } = measured(root, MOST_VALUES, DEEPEST);
  if (values > MOST_VALUES) return `The file holds more than ${MOST_VALUES} values; no notebook needs as many.`;
  if (levels > DEEPEST) return `The file nests deeper than ${DEEPEST} levels; no notebook does.`;
  return badField === null ? null : `The file has a field named ${badField}, which no notebook has; it is not opened.`;
}

/** What is wrong with a document, a sentence for each place; beyond a few they are counted. */
export function problemSentences(error: z.ZodError): string[] {
  return counted(sentencesOf(error.issues.slice(0, MOST_SENTENCES), []), error.issues.length);
}

function sentencesOf(issues: readonly z.core.$ZodIssue[], above: readonly PropertyKey[]): string[] {
  return issues.flatMap((issue) => {
    const path = [...above, ...issue.path];
    if (issue.code === "invalid_union" && issue.errors.length > 0) {
      // Of several shapes that it could have, the one that it comes nearest to.
      const nearest = issue.errors.reduce((best, each) => (each.length < best.length ? each : best));
      return sentencesOf(nearest.slice(0, 1), path);
    }
    const place = path.length === 0 ? "" : `${path.map(String).join(".")}: `;
    const message = issue.message.replace(/^Invalid input: /, "");
    // The engine's own schemas say what is expected, as the second half of a sentence.
    const told = /^(a|an|one|text)\b/.test(message) ? `must be ${message}` : message;
    // A sentence about fields that no notebook has names every one of them.
    const said = told.length > LONGEST_SENTENCE ? `${told.slice(0, LONGEST_SENTENCE - 1)}…` : told;
    return [`${place}${said}.`.replace(/\.\.$/, ".")];
  });
}

/** The sentences, and how many more there are. */
function counted(sentences: readonly string[], all: number): string[] {
  const more = all - sentences.length;
  return more > 0 ? [...sentences, `And ${figure(more)} more.`] : [...sentences];
}

/** Ids that stand twice, references to what is not there, and documents that are none. */
export function whatIsLost(notebook: Notebook): string[] {
  const known = new Set(notebook.scenarios.map((scenario) => scenario.id));
  const sentences: string[] = [];
  const unique = (ids: readonly string[], what: string) => {
    const twice = ids.find((id, i) => ids.indexOf(id) !== i);
    if (twice !== undefined) sentences.push(`Two ${what} have the id ${twice}; each needs its own.`);
  };
  unique([...notebook.scenarios.map(({ id }) => id)], "scenarios");
  unique([...notebook.entries.map(({ id }) => id)], "entries");
  unique(
    (notebook.weatherFiles ?? []).map(({ name }) => name),
    "weather files",
  );
  for (const scenario of notebook.scenarios) {
    const misshapen = "document" in scenario ? whyMisshapen(scenario.document) : null;
    if (misshapen !== null) sentences.push(`Scenario ${scenario.name}: ${misshapen}`);
    const seen = new Set<string>();
    let at: Notebook["scenarios"][number] | undefined = scenario;
    while (at !== undefined && "basedOn" in at) {
      if (seen.has(at.id)) {
        sentences.push(`Scenario ${scenario.id} is based on itself, by way of others.`);
        break;
      }
      seen.add(at.id);
      const baseId: string = at.basedOn;
      at = notebook.scenarios.find(({ id }) => id === baseId);
      if (at === undefined)
        sentences.push(`Scenario ${scenario.id} is based on ${baseId}, which is not in the notebook.`);
    }
  }
  const looked = (notebook.looks ?? []).filter((id) => id !== null);
  const twice = looked.find((id, k) => looked.indexOf(id) !== k);
  if (twice !== undefined) sentences.push(`Scenario ${twice} has two looks; each scenario has one at most.`);
  for (const entry of notebook.entries) {
    for (const id of scenariosOf(entry)) {
      if (!known.has(id)) sentences.push(`Entry ${entry.id} shows scenario ${id}, which is not in the notebook.`);
    }
  }
  return sentences;
}
