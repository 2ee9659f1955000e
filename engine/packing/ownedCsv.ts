import { dsvFormat } from "d3-dsv";
import { csvText } from "../csvText.ts";
import { MOST_OWNED, OWNED_FIELDS, type OwnedKind, OwnedThing } from "./ownedThing.ts";

type Field = Exclude<keyof OwnedThing, "id">;

/** The columns of the file and their titles, in order. */
const TITLES: Readonly<Record<Field, string>> = {
  kind: "what",
  name: "name",
  count: "how many",
  get: "at hand",
  cost: "money each",
  massKg: "kg each",
  setupMinutes: "minutes each",
  who: "who has it",
  as: "in the plan as",
  chemistry: "chemistry",
  blockAh: "Ah",
  blockV: "V",
  healthShare: "left by age",
  maxChargeA: "most charging A",
  maxDischargeA: "most A out",
  internalResistanceOhm: "ohm",
  ratedW: "W",
  vmpV: "V at the power point",
  controller: "controller",
  maxPanelV: "most panel V",
  chargerA: "charger A",
  fuelL: "fuel L",
  continuousW: "continuous W",
  from: "runs from",
  to: "runs to",
  lengthM: "m",
  awg: "AWG",
  mm2: "mm2",
};
const FIELDS = Object.keys(TITLES) as Field[];
/** Fields that hold words; all others hold numbers. */
const WORDS = new Set<Field>(["kind", "name", "get", "who", "as", "chemistry", "controller", "from", "to", "awg"]);
const ALWAYS = new Set<Field>(["kind", "name", "count", "get", "cost", "massKg", "setupMinutes", "who"]);
const FREE = new Set<Field>(["name", "who"]);

/** What `csvText` would put an apostrophe before; with apostrophes already before it, one more keeps them. */
const GUARDED = /^'+[=+\-\u2212@\t\r＝＋－＠]/;

/** What stands in the column "at hand". */
const GET_WORDS = { hand: "yes", borrow: "to borrow", buy: "to buy" } as const;
const GETS: Readonly<Record<string, string>> = {
  yes: "hand",
  "at hand": "hand",
  "to borrow": "borrow",
  "to buy": "buy",
};

/** A list as CSV with a line of titles; columns that nothing on it fills are left out. */
export function ownedCsv(things: readonly OwnedThing[]): string {
  const fields = FIELDS.filter((field) => ALWAYS.has(field) || things.some((thing) => thing[field] !== undefined));
  const cell = (field: Field, value: string | number | undefined) => {
    if (value === undefined) return "";
    if (field === "get") return GET_WORDS[value as NonNullable<OwnedThing["get"]>];
    return typeof value === "string" && GUARDED.test(value) ? `'${value}` : String(value);
  };
  return csvText([
    fields.map((field) => TITLES[field]),
    ...things.map((thing) => fields.map((field) => cell(field, thing[field]))),
  ]);
}

/** What was read of a file, or a sentence for each thing that is wrong with it. */
export type ReadOwned =
  | {
      readonly ok: true;
      readonly things: readonly OwnedThing[];
      /** Titles of columns that nothing here knows. */
      readonly passedOver: readonly string[];
    }
  | { readonly ok: false; readonly sentences: readonly string[] };

const LONGEST = 300_000;
const MOST_SENTENCES = 8;
const refused = (...sentences: string[]): ReadOwned => ({ ok: false, sentences });

/**
 * Reads a list that `ownedCsv` wrote or a spreadsheet: comma, semicolon or tab between the cells, a point or a comma in numbers. Nothing in it is
 * trusted.
 */
export function readOwnedCsv(text: string): ReadOwned {
  if (text.length > LONGEST)
    return refused(`The file has ${text.length} characters; a list of what a club owns has at most ${LONGEST}.`);
  const rows = dsvFormat(delimiterOf(text)).parseRows(text.replace(/^\ufeff/, ""));
  const titles = (rows[0] ?? []).map((title) => title.trim());
  const fields = titles.map(fieldOf);
  for (const field of ["kind", "name"] as const)
    if (!fields.includes(field))
      return refused(
        `The file's first line has no column "${TITLES[field]}"; its titles are ${FIELDS.map((each) => TITLES[each]).join(", ")}.`,
      );
  const twice = titles.find((_, k) => fields[k] !== null && fields.indexOf(fields[k]!) !== k);
  if (twice !== undefined) return refused(`The file has two columns "${twice}"; keep one of them.`);
  const lines = rows
    .map((cells, k) => ({ cells, line: k + 1 }))
    .slice(1)
    .filter(({ cells }) => cells.some((cell) => cell.trim() !== ""));
  if (lines.length === 0) return refused("The file has titles and nothing under them; write a line for each thing.");
  if (lines.length > MOST_OWNED)
    return refused(`The file has ${lines.length} things; a list has at most ${MOST_OWNED}.`);
  return readLines(lines, fields, titles);
}

function readLines(
  lines: readonly { readonly cells: readonly string[]; readonly line: number }[],
  fields: readonly (Field | null)[],
  titles: readonly string[],
): ReadOwned {
  const sentences: string[] = [];
  const things: OwnedThing[] = [];
  const taken = new Set<string>();
  for (const { cells, line } of lines) {
    const written: Record<string, unknown> = { count: 1 };
    fields.forEach((field, k) => {
      const value = field === null ? undefined : cellValue(field, cells[k] ?? "");
      if (field !== null && value !== undefined) written[field] = value;
    });
    if (typeof written.name === "string") written.id = freeId(written.name, taken);
    const read = OwnedThing.safeParse(written);
    if (read.success) things.push(read.data);
    else sentences.push(...read.error.issues.map((issue) => sentenceOf(issue, line, written)));
  }
  if (sentences.length > MOST_SENTENCES)
    sentences.splice(MOST_SENTENCES, sentences.length, `And ${sentences.length - MOST_SENTENCES} more.`);
  if (sentences.length > 0) return refused(...sentences);
  return { ok: true, things, passedOver: titles.filter((title, k) => fields[k] === null && title !== "") };
}

function sentenceOf(
  { path, message }: { readonly path: readonly PropertyKey[]; readonly message: string },
  line: number,
  written: Record<string, unknown>,
): string {
  const field = String(path[0] ?? "name") as Field;
  const title = TITLES[field] ?? "name";
  const value = written[field];
  const is = value === undefined ? `"${title}" is empty` : `"${title}" is "${String(value).slice(0, 40)}"`;
  const said = /^(a number|a whole number|text|one of|a short name|a local time|\d)/.test(message)
    ? `but must be ${message}; correct it${value === undefined ? "" : " or leave it empty"}`
    : `but ${message}`;
  const about = OWNED_FIELDS[written.kind as OwnedKind] === undefined ? "" : ` (${String(written.kind)})`;
  return `Line ${line}${about}: ${is}, ${said}.`;
}

function fieldOf(title: string): Field | null {
  const plain = (words: string) => words.toLowerCase().replace(/[²]/g, "2").replace(/\s+/g, " ").trim();
  return FIELDS.find((field) => plain(TITLES[field]) === plain(title)) ?? null;
}

/** The mark that the line of titles has most of. */
function delimiterOf(text: string): "," | ";" | "\t" {
  const [head = ""] = text.split(/\r\n|\n|\r/, 1);
  const times = (mark: string) => head.split(mark).length;
  return ([",", ";", "\t"] as const).reduce((best, mark) => (times(mark) > times(best) ? mark : best));
}

function cellValue(field: Field, cell: string): string | number | undefined {
  const bare = GUARDED.test(cell) ? cell.slice(1) : cell;
  // A name stays as it was written; what is one of a few words is not told by its blanks and capitals.
  if (FREE.has(field)) return bare.trim() === "" ? undefined : bare;
  const word = bare.trim();
  if (word === "") return undefined;
  if (field === "get") return GETS[word.toLowerCase()] ?? word;
  if (field === "as" || field === "awg") return word;
  if (WORDS.has(field)) return word.toLowerCase();
  const number = Number(/^[+-]?\d+,\d+$/.test(word) ? word.replace(",", ".") : word);
  return Number.isFinite(number) && !/^[+-]?0[xbo]/i.test(word) ? number : word;
}

/** A short name made from a name. */
export function freeId(name: string, taken: Set<string>): string {
  const slug =
    name
      .normalize("NFKD")
      .toLowerCase()
      .replace(/[^a-z0-9]+/g, "-")
      .replace(/^-+|-+$/g, "")
      .slice(0, 32)
      .replace(/-+$/, "") || "thing";
  let id = slug;
  for (let n = 2; taken.has(id); n++) id = `${slug}-${n}`;
  taken.add(id);
  return id;
}
