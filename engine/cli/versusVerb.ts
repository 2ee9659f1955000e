import { KINDS } from "../answers/kinds.ts";
import { VERSUS_COLUMNS } from "../answers/versus/rows.ts";
import type { Side, VersusPicture } from "../answers/versus/versusPicture.ts";
import { differenceInWords, differences } from "../scenario/differences.ts";
import { comparisonSentence } from "../versus/versus.ts";
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
  { scenario, others, variant }: Pick<VerbCall, "scenario" | "others" | "variant">,
  variants: string | boolean | undefined,
): Promise<Opened<readonly Contender[]>> {
  const isAlone = others.length === 0 && variant === undefined;
  const first = await openDocument(scenario, variant);
  if (!first.ok) return first;
  const contenders = [{ ...first.value, name: isAlone ? "the plan as it is" : first.value.scenario.name }];
  const known = first.value.scenario.variants;
  const all = others.length === 0 ? known.map(({ id }) => id) : [];
  const ids = typeof variants === "string" ? variants.split(",") : all;
  for (const { path, id } of [
    ...ids.map((id) => ({ path: scenario, id })),
    ...others.map((path) => ({ path, id: undefined })),
  ]) {
    const opened = await openDocument(path, id);
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

/** What `versus --json` prints, documented in `docs/command-line.md`; bands stay with `odds`. */
function versusJson(first: string, comparisons: readonly Comparison[], drawn: Drawn): unknown {
  const sideJson = (name: string, { burden, ...report }: Side) => ({ name, report, burden });
  return {
    format: "duskline-versus",
    version: 1,
    ...drawn,
    first: sideJson(first, comparisons[0]!.picture.first),
    others: comparisons.map(({ name, picture, sentence, changes }) => {
      const { second, holds, margin, gained, lost } = picture;
      const { both, onlySecond, onlyFirst, neither } = picture.tally;
      const tally = { both, onlyThis: onlySecond, onlyFirst, neither };
      return { ...sideJson(name, second), holds, margin, tally, gained, lost, sentence, changes };
    }),
  };
}

function versusText(first: string, comparisons: readonly Comparison[], { seed, members }: Drawn): string {
  const rows = [
    { name: first, side: comparisons[0]!.picture.first },
    ...comparisons.map(({ name, picture }) => ({ name, side: picture.second })),
  ];
  const { solar: _, unserved: __, ...columns } = VERSUS_COLUMNS;
  const signed = (share: number) => `${share >= 0 ? "+" : "−"}${Math.abs(100 * share).toFixed(1)}`;
  return [
    ...comparisons.map(({ sentence }) => sentence),
    "",
    textTable(rows, [
      { head: "scenario", cell: ({ name }) => name, isWords: true },
      ...Object.values(columns).map(({ head, cell }) => ({ head, cell: ({ side }: { side: Side }) => cell(side) })),
    ]),
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
    `The same ${members} members each, seed ${seed}; in brackets what the sample leaves open. Cost, mass and work are those stated for blocks, panels and sources.`,
  ].join("\n");
}
