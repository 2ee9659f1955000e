import type { Column } from "../answers/column.ts";
import { KINDS } from "../answers/kinds.ts";
import type { ReachPicture } from "../answers/reach/reachPicture.ts";
import { reachSentence } from "../answers/reach/reachWords.ts";
import { ALONE, prices, reachCsv, SPARE, TOGETHER } from "../answers/reach/rows.ts";
import { USUAL_TARGET_SHARE } from "../library/askOptions.ts";
import { REACH_ORDERS, type ReachOrder } from "../reach/reachOrder.ts";
import { reachPlan } from "../reach/reachPlan.ts";
import type { ReachReport, ReachRow, ReachWay } from "../reach/reachReport.ts";
import type { Scenario, ScenarioInput } from "../scenario/scenario.ts";
import { answerTo } from "./answerTo.ts";
import { CallError } from "./callError.ts";
import { sixDecimals } from "./figures.ts";
import { memberRange, seedOf } from "./memberRange.ts";
import { openDocument } from "./openScenario.ts";
import { textTable } from "./textTable.ts";
import type { Verb } from "./verb.ts";

export const reachVerb: Verb = {
  name: "reach",
  usage:
    "reach SCENARIO [--variant ID] [--target 95] [--most money|mass|minutes|hours] [--lock LEVER,LEVER] [--members N] [--seed TEXT] [--json | --csv]",
  purpose:
    "Says what it would take for a plan to hold often enough: the least of each lever that does it alone, the best pairs and threes, what each costs; or what can stay at home.",
  options: {
    target: { type: "string", help: "skies in 100 in which the plan is to hold (95)" },
    most: {
      type: "string",
      takes: REACH_ORDERS,
      help: "what counts most and comes first: money, mass, minutes or hours on the air (money)",
    },
    lock: { type: "string", help: "levers that are not up for debate, by their ids with commas between" },
    members: { type: "string", help: "skies and operators drawn (1000)" },
    seed: { type: "string", help: "any text; the same seed gives the same members" },
    json: { type: "boolean", help: "print it as JSON" },
    csv: { type: "boolean", help: "print every row as CSV" },
  },
  run: async ({ scenario, variant, values, context, print }) => {
    const target = targetOf(values.target);
    const order = orderOf(values.most);
    const { from, to } = memberRange(values.members);
    if (from > 0) throw new CallError(`--members is "${values.members}" but must be one number here, such as 1000.`);
    if (values.json === true && values.csv === true)
      throw new CallError("--json and --csv are two ways to print; give one of them.");
    const opened = await openDocument(scenario, variant, context);
    if (!opened.ok) return opened;
    const locked = lockedOf(values.lock, opened.value.document);
    if (!locked.ok) return locked;
    const choices = { targetShare: target / 100, order, locked: locked.value };
    const found = await answerTo(KINDS.reach, [opened.value], choices, { seed: seedOf(values.seed), to });
    if (!found.ok) return found;
    const { report } = found.value;
    if (values.csv === true) print(reachCsv(report).trimEnd());
    else print((values.json === true ? reachJson : reachText)(opened.value.scenario, found.value));
    return { ok: true };
  },
};

function targetOf(given: string | boolean | undefined): number {
  if (given === undefined) return 100 * USUAL_TARGET_SHARE;
  const target = String(given).trim() === "" ? Number.NaN : Number(given);
  if (!(target >= 1 && target <= 100))
    throw new CallError(`--target is "${given}" but must be a number from 1 to 100, such as 95: skies in 100.`);
  return target;
}

function orderOf(given: string | boolean | undefined): ReachOrder {
  if (given === undefined) return "money";
  const order = REACH_ORDERS.find((each) => each === given);
  if (order === undefined)
    throw new CallError(`--most is "${given}" but must be one of ${REACH_ORDERS.join(", ")}; write one of them.`);
  return order;
}

function lockedOf(given: string | boolean | undefined, document: ScenarioInput) {
  if (typeof given !== "string") return { ok: true as const, value: [] };
  const ready = reachPlan(document);
  if (!ready.ok) return ready;
  const known = ready.plan.levers.map(({ id }) => id);
  const locked = given
    .split(",")
    .map((id) => id.trim())
    .filter((id) => id !== "");
  const unknown = locked.find((id) => !known.includes(id));
  if (unknown !== undefined || locked.length === 0)
    throw new CallError(
      `--lock names "${unknown ?? given}", which is no lever of this plan; its levers are ${known.join(", ")}.`,
    );
  return { ok: true as const, value: locked };
}

/** What `reach --json` prints; documented in `docs/command-line.md`. */
function reachJson({ name, place }: Scenario, { report, levers }: ReachPicture): string {
  const { isOpen: _, ...known } = report;
  return JSON.stringify(
    { format: "duskline-reach", version: 1, scenario: { name, place }, levers, ...known },
    (_key, value: unknown) => (typeof value === "number" ? sixDecimals(value) : value),
  );
}

/** The lever's id, as --lock takes it. */
const ID: Column<ReachRow> = { head: "lever", cell: ({ id }) => id, isWords: true };

function reachText({ name, place }: Scenario, { report }: ReachPicture): string {
  const { alone, pairs, threes, spare } = report;
  const said = reachSentence(report, name, "first").map(({ text }) => text);
  const reaching = alone.filter(({ reaches }) => reaches);
  const others = alone.filter(({ reaches }) => !reaches);
  const rows = [ALONE.name, ALONE.words, ALONE.holds, ALONE.next, ...prices<ReachRow>(), ALONE.lock, ID];
  return [
    `${name} · ${place.name}`,
    "",
    said.join(""),
    ...part("Alone, the smallest amount that reaches it, and what the next smaller one does:", reaching, rows),
    ...part("Not enough alone; at its most:", others, [ALONE.name, ALONE.words, ALONE.holds, ALONE.why, ID]),
    ...ways("Two together:", pairs),
    ...ways("Three together:", threes),
    ...part('What can stay at home or be left undone; without "one further" it may not:', spare, [
      SPARE.name,
      SPARE.words,
      SPARE.holds,
      SPARE.next,
      ...prices<ReachRow>(),
    ]),
    "",
    ...(alone.some(({ kind }) => kind === "reserve") ? ["A smaller reserve is a choice, not a cure."] : []),
    footer(report),
  ].join("\n");
}

function part(title: string, rows: readonly ReachRow[], columns: readonly Column<ReachRow>[]): string[] {
  return rows.length === 0 ? [] : ["", title, textTable(rows, columns)];
}

function ways(title: string, rows: readonly ReachWay[]): string[] {
  return rows.length === 0 ? [] : ["", title, textTable(rows, [TOGETHER.name, TOGETHER.holds, ...prices<ReachWay>()])];
}

const footer = ({ members, seed }: ReachReport) =>
  `Of 100 skies so many hold: never under the reserve, and nothing planned goes without. ${members} members, seed ${seed}, the same for every row. What does without nothing comes first, then by what counts most; what is not stated comes last. A turn of a panel group is counted as 3 min.`;
