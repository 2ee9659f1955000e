import type * as z from "zod";
import { kindOf } from "../../engine/answers/kinds.ts";
import {
  DEEPEST,
  LONGEST_TEXT,
  MOST_CHANGES,
  MOST_ENTRIES,
  MOST_SCENARIOS,
  MOST_VALUES,
  MOST_WEATHER_FILES,
} from "../../engine/answers/notebookLimits.ts";
import { type Measured, measured } from "../../engine/notebook/measured.ts";
import { ChangedScenario, EntryShape, Notebook, WeatherShape, WholeScenario } from "../../engine/notebook/notebook.ts";
import { problemSentences, whatIsLost } from "../../engine/notebook/readNotebook.ts";
import { figure } from "../../engine/words/numbers.ts";

/** Levels of a notebook above its scenarios, entries and weather files. */
const LEVELS_ABOVE = 2;

interface Size extends Measured {
  readonly characters: number;
}

/** Parts of a notebook are never changed but replaced: what was measured of one holds for as long as it lives. */
const sizes = new WeakMap<object, Size>();

function sizeOf(part: object): Size {
  const known = sizes.get(part);
  if (known !== undefined) return known;
  const size = {
    ...measured(part, Number.POSITIVE_INFINITY, Number.POSITIVE_INFINITY),
    characters: JSON.stringify(part).length,
  };
  sizes.set(part, size);
  return size;
}

const partsOf = ({ scenarios, entries, weatherFiles = [] }: Notebook): readonly object[] => [
  ...scenarios,
  ...entries,
  ...weatherFiles,
];

/**
 * Why an edit is not made: the notebook that it leads to could not be opened again. Only what the edit brings is looked at, and
 * a notebook that is over a limit already (an older duskline met none) may be made smaller.
 * @returns a sentence, or null where nothing stands against it
 */
export function whyNotKept(next: Notebook, before: Notebook): string | null {
  return tooMany(next, before) ?? wrongPart(next, before) ?? tooLarge(next, before) ?? wrongHead(next, before);
}

function tooMany(next: Notebook, before: Notebook): string | null {
  const over = (of: (notebook: Notebook) => readonly unknown[], most: number) =>
    of(next).length > most && of(next).length > of(before).length;
  if (over(({ entries }) => entries, MOST_ENTRIES)) {
    return `A notebook holds ${MOST_ENTRIES} entries at most; remove one first, or begin another notebook.`;
  }
  if (over(({ scenarios }) => scenarios, MOST_SCENARIOS)) {
    return `A notebook holds ${MOST_SCENARIOS} scenarios at most; delete one first, or begin another notebook.`;
  }
  if (over(({ weatherFiles = [] }) => weatherFiles, MOST_WEATHER_FILES)) {
    return `A notebook keeps ${MOST_WEATHER_FILES} weather files at most; give another scenario the same file first.`;
  }
  return null;
}

function wrongPart(next: Notebook, before: Notebook): string | null {
  const old = new Set(partsOf(before));
  const fresh = <Part extends object>(parts: readonly Part[]) => parts.filter((part) => !old.has(part));
  for (const part of [...fresh(next.scenarios), ...fresh(next.entries), ...fresh(next.weatherFiles ?? [])]) {
    const { levels, badField } = sizeOf(part);
    if (badField !== null) return `A field named ${badField} cannot be kept in a notebook; call it something else.`;
    if (levels + LEVELS_ABOVE > DEEPEST) {
      return `A notebook nests at most ${DEEPEST} levels deep, and this would be ${levels + LEVELS_ABOVE}.`;
    }
  }
  for (const scenario of fresh(next.scenarios)) {
    const changes = "changes" in scenario ? scenario.changes.length : 0;
    if (changes > MOST_CHANGES) {
      return `${scenario.name} would have ${figure(changes)} changes, and a scenario has ${MOST_CHANGES} at most; base another on it.`;
    }
    const wrong = sentenceOf("document" in scenario ? WholeScenario : ChangedScenario, scenario, scenario.name);
    if (wrong !== null) return wrong;
  }
  for (const entry of fresh(next.entries)) {
    const wrong = kindOf(entry.kind).whyTooLong?.(entry.doc) ?? sentenceOf(EntryShape, entry, entry.title);
    if (wrong !== null) return wrong;
  }
  for (const file of fresh(next.weatherFiles ?? [])) {
    const wrong = sentenceOf(WeatherShape, file, file.name);
    if (wrong !== null) return wrong;
  }
  return null;
}

function tooLarge(next: Notebook, before: Notebook): string | null {
  const [now, was] = [whole(next), whole(before)];
  if (now.characters > LONGEST_TEXT && now.characters > was.characters) {
    return `A notebook has ${LONGEST_TEXT / 1e6} million characters at most as a file, and this would be ${(now.characters / 1e6).toFixed(2)} million: take out a weather file, a log or old notes, or begin another notebook.`;
  }
  if (now.values > MOST_VALUES && now.values > was.values) {
    return `A notebook holds ${figure(MOST_VALUES)} figures and texts at most, and this would be ${figure(now.values)}: take out a log, or begin another notebook.`;
  }
  return null;
}

/** Not less than the notebook's own size, by a comma or two. */
function whole(notebook: Notebook): { characters: number; values: number } {
  const head = { ...notebook, scenarios: [], entries: [], weatherFiles: [] };
  return partsOf(notebook).reduce<{ characters: number; values: number }>(
    (sum, part) => {
      const { characters, values } = sizeOf(part);
      return { characters: sum.characters + characters + 1, values: sum.values + values };
    },
    { characters: JSON.stringify(head).length, values: Object.keys(head).length + 1 },
  );
}

/** Title, seed, number of skies; and whatever would point to nothing. */
function wrongHead(next: Notebook, before: Notebook): string | null {
  const head = { ...next, scenarios: before.scenarios, entries: [], weatherFiles: undefined };
  const shape = Notebook.omit({ scenarios: true, entries: true, weatherFiles: true }).loose();
  const wrong = sentenceOf(shape, head, "The notebook");
  if (wrong !== null) return wrong;
  const known = new Set(whatIsLost(before));
  return whatIsLost(next).find((sentence) => !known.has(sentence)) ?? null;
}

/** Read as it will be once it has been written down: without what is undefined. */
function sentenceOf(shape: z.ZodType, value: object, name: string): string | null {
  const parsed = shape.safeParse(JSON.parse(JSON.stringify(value)));
  return parsed.success ? null : `${name}: ${problemSentences(parsed.error)[0]} It stays as it was.`;
}
