import { plain } from "../answers/column.ts";
import { KINDS } from "../answers/kinds.ts";
import { gainsWords } from "../answers/versus/gainsWords.ts";
import type { PlanColumn } from "../answers/versus/planColumns.ts";
import { type DecisionRow, decisionTable } from "../answers/versus/rows.ts";
import type { Side, VersusPicture } from "../answers/versus/versusPicture.ts";
import { differenceInWords, differences } from "../scenario/differences.ts";
import { MINUTES_A_TURN } from "../versus/turns.ts";
import { comparisonSentence } from "../versus/versus.ts";
import { LOOKS } from "../words/look.ts";
import type { Words } from "../words/said.ts";
import { answerTo } from "./answerTo.ts";
import { CallError } from "./callError.ts";
import { memberRange, seedOf } from "./memberRange.ts";
import { type Opened, type OpenedDocument, openDocument } from "./openScenario.ts";
import { textTable } from "./textTable.ts";
import type { Verb, VerbCall } from "./verb.ts";

export const versusVerb: Verb = {
  name: "versus",
  usage: "versus SCENARIO [SCENARIO …] [--variants ID,ID] [--members N|FROM:TO] [--seed TEXT] [--json]",
  purpose: "Holds scenarios, or a scenario and its variants, against the first under the same skies and operators.",
  takesSeveral: true,
  options: {
    variants: { type: "string", help: "variants of the first scenario; all of them when only one scenario is named" },
    members: { type: "string", help: "how many, or which, such as 500:1000 (1000 when left out)" },
    seed: { type: "string", help: "any text; the same seed gives the same members" },
    json: { type: "boolean", help: "print it as JSON" },
  },
  run: async ({ values, print, ...call }) => {
    const seed = seedOf(values.seed);
    const range = memberRange(values.members);
    const opened = await contendersOf(call, values.variants);
    if (!opened.ok) return opened;
    const [first, ...others] = opened.value;
    if (first === undefined || others.length === 0) {
      throw new CallError("versus needs something to compare with: name a second scenario, or one that has variants.");
    }
    const comparisons: Comparison[] = [];
    for (const other of others) {
      const found = await answerTo(KINDS.versus, [first, other], { isUndrawn: true }, { seed, ...range });
      if (!found.ok) return found;
      comparisons.push(comparisonOf(first, other, found.value));
    }
    const drawn = { seed, members: range.to - range.from };
    print(
      values.json === true
        ? JSON.stringify(versusJson(first.name, comparisons, drawn))
        : versusText(first.name, comparisons, drawn),
    );
    return { ok: true };
  },
};

interface Contender extends OpenedDocument {
  readonly name: string;
}

/** The scenario that others are held against, and these. */
async function contendersOf(
  { scenario, others, variant, context }: Pick<VerbCall, "scenario" | "others" | "variant" | "context">,
  variants: string | boolean | undefined,
): Promise<Opened<readonly Contender[]>> {
  const isAlone = others.length === 0 && variant === undefined;
  const first = await openDocument(scenario, variant, context);
  if (!first.ok) return first;
  const contenders = [{ ...first.value, name: isAlone ? "the plan as it is" : first.value.scenario.name }];
  const known = first.value.scenario.variants;
  const all = others.length === 0 ? known.map(({ id }) => id) : [];
  const ids = typeof variants === "string" ? variants.split(",") : all;
  for (const { path, id } of [
    ...ids.map((id) => ({ path: scenario, id })),
    ...others.map((path) => ({ path, id: undefined })),
  ]) {
    const opened = await openDocument(path, id, context);
    if (!opened.ok) return opened;
    const name = known.find((each) => each.id === id)?.name ?? opened.value.scenario.name;
    contenders.push({ ...opened.value, name });
  }
  return { ok: true, value: contenders };
}

/** One scenario against the first, in figures and in words. */
interface Comparison {
  readonly name: string;
  readonly picture: VersusPicture;
  readonly changes: readonly string[];
  readonly sentence: string;
}

function comparisonOf(first: Contender, { name, scenario }: Contender, picture: VersusPicture): Comparison {
  const side = (of: string, report: Side) => ({ name: of, report });
  return {
    name,
    picture,
    changes: differences(first.scenario, scenario).map(differenceInWords),
    sentence: comparisonSentence(side(first.name, picture.first), side(name, picture.second), picture, picture.end),
  };
}

interface Drawn {
  readonly seed: string;
  readonly members: number;
}

/** The columns of the table that the page shows, from the same pairs. */
function columnsOf(first: string, comparisons: readonly Comparison[]): PlanColumn[] {
  const column = (name: string, k: number, side: Side, pair: VersusPicture | null): PlanColumn => {
    return { id: name, name, look: LOOKS[k] ?? "plain", side, pair };
  };
  return [
    column(first, 0, comparisons[0]!.picture.first, null),
    ...comparisons.map(({ name, picture }, k) => column(name, k + 1, picture.second, picture)),
  ];
}

const plainWords = (words: readonly Words[]) => plain(words.map(({ text }) => text).join(""));

/** What `versus --json` prints, documented in `docs/command-line.md`; bands stay with `odds`. */
function versusJson(first: string, comparisons: readonly Comparison[], drawn: Drawn): unknown {
  const sideJson = (name: string, { burden, onAir, burnsFuel: _, reserveShare: __, ...report }: Side) => {
    return { name, report, burden, onAir };
  };
  const columns = columnsOf(first, comparisons);
  const { rows, same } = decisionTable(columns);
  return {
    format: "duskline-versus",
    version: 1,
    ...drawn,
    first: sideJson(first, comparisons[0]!.picture.first),
    others: comparisons.map(({ name, picture, sentence, changes }) => {
      const { second, holds, margin, more, gained, lost } = picture;
      const { both, onlySecond, onlyFirst, neither } = picture.tally;
      const tally = { both, onlyThis: onlySecond, onlyFirst, neither };
      return { ...sideJson(name, second), holds, margin, more, tally, gained, lost, sentence, changes };
    }),
    rows: rows.map(({ id, name, cells }) => ({
      id,
      name,
      cells: cells.map(({ text }) => plain(text)),
      best: cells.map(({ isBest }) => isBest),
    })),
    same: plain(same),
    gains: plainWords(gainsWords(columns)),
  };
}

function versusText(first: string, comparisons: readonly Comparison[], { seed, members }: Drawn): string {
  const columns = columnsOf(first, comparisons);
  const { rows, same } = decisionTable(columns);
  const signed = (share: number) => `${share >= 0 ? "+" : "−"}${Math.abs(100 * share).toFixed(1)}`;
  return [
    ...comparisons.map(({ sentence }) => sentence),
    "",
    textTable(rows, [
      { head: "", cell: ({ name }) => name, isWords: true },
      ...columns.map(({ name }, k) => ({
        head: name,
        cell: ({ cells }: DecisionRow) => `${plain(cells[k]!.text)}${cells[k]!.isBest ? " *" : "  "}`,
      })),
    ]),
    `The same in all: ${plain(same)}`,
    `Who gains: ${plainWords(gainsWords(columns))}`,
    ...comparisons.flatMap(({ name, picture: { holds, margin, tally, gained, lost }, changes }) => [
      "",
      `${name}, against ${first}:`,
      ...changes.map((line) => `  ${line}`),
      `  holds ${signed(holds.mean)} in 100 (${signed(holds.low)} to ${signed(holds.high)}); lowest charge ${signed(margin.mean)} points (${signed(margin.low)} to ${signed(margin.high)})`,
      `  of ${members}: ${tally.both} hold either way, ${tally.onlySecond} only with it, ${tally.onlyFirst} only without, ${tally.neither} neither way`,
      ...(gained.members.length > 0
        ? [`  members that then hold: ${gained.members.slice(0, 8).join(", ")}…, ${gained.why}`]
        : []),
      ...(lost.members.length > 0
        ? [`  members that then fail: ${lost.members.slice(0, 8).join(", ")}…, ${lost.why}`]
        : []),
    ]),
    "",
    `The same ${members} members each, seed ${seed}; in brackets what the sample leaves open; * the best of a row, of what is stated. Money, weight and work are those stated for blocks, panels and sources, and ${MINUTES_A_TURN} min for each re-aiming (our default).`,
  ].join("\n");
}
