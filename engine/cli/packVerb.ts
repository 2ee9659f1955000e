import { KINDS } from "../answers/kinds.ts";
import type { PackingChoices } from "../answers/packing/ask.ts";
import type { PackingPicture } from "../answers/packing/packingPicture.ts";
import { listSum, packingNotes, packingSentence, pieces, totalFigure } from "../answers/packing/packingWords.ts";
import { frontierColumns, frontierRows, LIST_COLUMNS, packingCsv } from "../answers/packing/rows.ts";
import { readOwnedCsv } from "../packing/ownedCsv.ts";
import { PACK_ORDERS, type PackOrder } from "../packing/thingPrice.ts";
import type { Scenario } from "../scenario/scenario.ts";
import { answerTo } from "./answerTo.ts";
import type { CallContext } from "./callContext.ts";
import { CallError } from "./callError.ts";
import { sixDecimals } from "./figures.ts";
import { memberRange, seedOf } from "./memberRange.ts";
import { openDocument } from "./openScenario.ts";
import { textTable } from "./textTable.ts";
import type { Verb } from "./verb.ts";

/** Skies in 100 in which a set is to hold, where nobody says. */
const USUAL_TARGET = 90;
const MOST_LIMIT = 100_000_000;

export const packVerb: Verb = {
  name: "pack",
  usage:
    "pack SCENARIO --owned FILE.csv [--variant ID] [--target 90] [--most mass|minutes|money] [--max-kg N] [--max-minutes N] [--max-money N] [--members N] [--seed TEXT] [--json | --csv]",
  purpose:
    "Says what to take along of what a club owns: every set that reaches the target and that no other beats in weight, minutes and money, one of them proposed, and the list to pack by.",
  options: {
    owned: {
      type: "string",
      takes: "FILE",
      help: "what the club owns: CSV with a line of titles and a line for each thing",
    },
    target: { type: "string", help: "skies in 100 in which the plan is to hold (90)" },
    most: {
      type: "string",
      takes: PACK_ORDERS,
      help: "what is to be least and comes first: mass, minutes or money (mass)",
    },
    "max-kg": { type: "string", help: "most that may be carried, kg" },
    "max-minutes": { type: "string", help: "most work to set up and take down, minutes" },
    "max-money": { type: "string", help: "most money for what has to be bought or borrowed" },
    members: { type: "string", help: "skies and operators drawn (1000)" },
    seed: { type: "string", help: "any text; the same seed gives the same members" },
    json: { type: "boolean", help: "print it as JSON" },
    csv: { type: "boolean", help: "print every set as CSV" },
  },
  run: async ({ scenario, variant, values, context, print }) => {
    const targetShare = numberOf("target", values.target, 1, 100, "95: skies in 100", USUAL_TARGET)! / 100;
    const order = orderOf(values.most);
    const limit = (name: string) => numberOf(name, values[name], 0, MOST_LIMIT, "60", null);
    const limits = { mass: limit("max-kg"), minutes: limit("max-minutes"), money: limit("max-money") };
    const { from, to } = memberRange(values.members);
    if (from > 0) throw new CallError(`--members is "${values.members}" but must be one number here, such as 1000.`);
    if (values.json === true && values.csv === true)
      throw new CallError("--json and --csv are two ways to print; give one of them.");
    const { things, passedOver } = await ownedOf(values.owned, context);
    const opened = await openDocument(scenario, variant, context);
    if (!opened.ok) return opened;
    const choices: PackingChoices = { targetShare, order, limits, owned: things };
    const found = await answerTo(KINDS.packing, [opened.value], choices, { seed: seedOf(values.seed), to });
    if (!found.ok) return found;
    if (values.csv === true) print(packingCsv(found.value).trimEnd());
    else print((values.json === true ? packJson : packText)(opened.value.scenario, found.value, passedOver));
    return { ok: true };
  },
};

function numberOf(
  name: string,
  given: string | boolean | undefined,
  low: number,
  high: number,
  such: string,
  usual: number | null,
): number | null {
  if (given === undefined) return usual;
  const value = String(given).trim() === "" ? Number.NaN : Number(given);
  if (!(value >= low && value <= high))
    throw new CallError(`--${name} is "${given}" but must be a number from ${low} to ${high}, such as ${such}.`);
  return value;
}

function orderOf(given: string | boolean | undefined): PackOrder {
  if (given === undefined) return "mass";
  const order = PACK_ORDERS.find((each) => each === given);
  if (order === undefined)
    throw new CallError(`--most is "${given}" but must be one of ${PACK_ORDERS.join(", ")}; write one of them.`);
  return order;
}

async function ownedOf(given: string | boolean | undefined, context: CallContext) {
  if (typeof given !== "string")
    throw new CallError("pack needs --owned FILE.csv: what the club owns, one line for each thing.");
  const read = readOwnedCsv(await context.textOf(given));
  if (!read.ok) throw new CallError(read.sentences.map((sentence) => `${given}: ${sentence}`).join("\n"));
  return read;
}

/** What `pack --json` prints; documented in `docs/command-line.md`. */
function packJson(
  { name, place }: Scenario,
  { report, things, changes, fitted, list }: PackingPicture,
  passedOver: readonly string[],
): string {
  const { isOpen: _, dots: _dots, ...known } = report;
  const document = { format: "duskline-packing", version: 1, scenario: { name, place }, things, passedOver, fitted };
  return JSON.stringify({ ...document, ...known, changes, list }, (_key, value: unknown) =>
    typeof value === "number" ? sixDecimals(value) : value,
  );
}

function packText({ name, place }: Scenario, picture: PackingPicture, passedOver: readonly string[]): string {
  const { report, list } = picture;
  const rows = frontierRows(picture);
  return [
    `${name} · ${place.name}`,
    "",
    packingSentence(picture)
      .map(({ text }) => text)
      .join(""),
    ...(rows.length === 0 ? [] : ["", textTable(rows, frontierColumns(picture))]),
    ...(list === null ? [] : ["", ...listLines(list)]),
    "",
    ...packingNotes(picture),
    ...(passedOver.length === 0 ? [] : [`Columns of the list that nothing here knows: ${passedOver.join(", ")}.`]),
    `Of 100 skies so many hold: never under the reserve, and nothing planned goes without. ${report.members} members, seed ${report.seed}, the same for every set. Money is 0 for what is at hand.`,
  ].join("\n");
}

/** The list to print: two boxes a line, out and home. */
function listLines(list: NonNullable<PackingPicture["list"]>): string[] {
  const box = { head: "out home", cell: () => "[ ]  [ ]", isWords: true };
  const home = list.home.map(
    ({ name, count, massKg, who, why }) =>
      `  ${pieces(name, count)}${massKg === null ? "" : `, ${totalFigure(massKg, "mass")} kg`}${who === null ? "" : `, ${who}`}: ${why}`,
  );
  return [
    ...list.sections.flatMap(({ title, lines }) => [title, textTable(lines, [box, ...LIST_COLUMNS]), ""]),
    `All: ${listSum(list)}`,
    ...(home.length === 0 ? [] : ["", "Stays at home:", ...home]),
    ...(list.heavy.length === 0 ? [] : ["", `Two people lift: ${list.heavy.join("; ")}.`]),
  ];
}
