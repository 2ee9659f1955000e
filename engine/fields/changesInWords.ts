import type { Change } from "../scenario/change.ts";
import type { ChangeCases } from "../scenario/fieldMeta.ts";
import { readScenario } from "../scenario/readScenario.ts";
import type { ScenarioInput } from "../scenario/scenario.ts";
import { differenceInUnits } from "../words/displayUnits.ts";
import { BANK_SIZE, bankChange } from "./bankChange.ts";
import { type ChangedField, type ChangedPart, changedFields, type Sides } from "./changedFields.ts";
import { labelOf } from "./fieldWords.ts";
import { formSchema, type SchemaNode } from "./formSchema.ts";
import { itemInWords } from "./itemInWords.ts";
import { panelsCame } from "./panelsCame.ts";
import { inSentence, sentence, type Token } from "./sentence.ts";
import { fieldToken, shownValue } from "./shownValue.ts";

/** Fields that change no watt, of which only a change itself tells that they were touched. */
const FOR_PEOPLE = ["name", "note", "variants"] as const;

/**
 * What is different between a scenario and the one it is based on, in short plain lines: "2 folding panels added, in the
 * meadow, re-aimed at 07:30, 11:00, 14:30", "bank 280 → 560 Ah". How a field's change reads stands in its schema.
 * @param changes what was changed; they matter where the document does not show it, as for a name
 * @param document the scenario that results
 */
export function changesInWords(changes: readonly Change[], base: ScenarioInput, document: ScenarioInput): string[] {
  const read = (source: ScenarioInput): object => {
    const result = readScenario(source);
    return result.ok ? result.scenario : source;
  };
  const sides: Sides = { base, document, baseFilled: read(base), filled: read(document) };
  const size = bankChange(partOf(sides.baseFilled).bank, partOf(sides.filled).bank);
  const lines = changedFields(sides).flatMap((part) => {
    const news = size === null ? part.fields : part.fields.filter((field) => !followsSize(field));
    if (part.names.join() !== "bank") return partLines({ ...part, fields: news }, document);
    const rest = news.filter(({ key }) => !BANK_SIZE.includes(key));
    return [size ?? "", ...partLines({ ...part, fields: rest }, document)];
  });
  return [...new Set([...lines, ...forPeople(changes, base, document)])].filter((line) => line !== "");
}

const partOf = (value: unknown) =>
  (typeof value === "object" && value !== null ? value : {}) as Record<string, unknown>;
const casesOf = (node: SchemaNode | undefined): ChangeCases => (typeof node?.change === "object" ? node.change : {});

function followsSize({ node, parts }: ChangedField): boolean {
  return [node, ...parts.map((part) => part.node)].some((each) => casesOf(each).followsSize === true);
}

function forPeople(changes: readonly Change[], base: ScenarioInput, document: ScenarioInput): string[] {
  const isTouched = (key: string) => changes.some(({ at }) => at === key || at.startsWith(`${key}.`));
  const parts = [{ names: [], node: formSchema(), before: base, after: document }];
  return FOR_PEOPLE.filter(isTouched)
    .map((key) => ({ key, names: [key], node: formSchema().properties![key], before: base[key], after: document[key] }))
    .filter(({ before, after }) => JSON.stringify(before) !== JSON.stringify(after))
    .map((field) => fieldLine({ ...field, parts }, document));
}

/** The lines of what differs inside one part: of certain fields together, of the others one each. */
function partLines({ node, after, fields }: ChangedPart, document: ScenarioInput): string[] {
  const { many, all } = casesOf(node);
  const line = (field: ChangedField) => fieldLine(field, document);
  const teller = fields.find(
    (field) => casesOf(field.node).tellsPart === true && field.before !== undefined && field.after !== undefined,
  );
  if (teller !== undefined) return [line(teller)];
  if (many !== undefined && fields.length > 2) return [say(many, fields[0]!, document)];
  if (all?.of.every((key) => fields.some((field) => field.key === key)) === true) {
    const rest = fields.filter(({ key }) => !all.of.includes(key));
    return [say(all.says, { ...fields[0]!, node, after }, document), ...rest.map(line)];
  }
  const moved = fields.filter(isMove);
  const rest = fields.filter((field) => !isMove(field)).map(line);
  return moved.length === 0 ? rest : [`${itemName(moved[0]!)} ${moveWords(moved)}`, ...rest];
}

const isMove = ({ node, before, after }: ChangedField) =>
  casesOf(node).ways !== undefined && typeof before === "number" && typeof after === "number";

/** "moved 4 m east and 3 m south" */
function moveWords(moved: readonly ChangedField[]): string {
  const ways = moved.map(({ node, before, after }) => {
    const metres = Number(after) - Number(before);
    return `${differenceInUnits(Math.abs(metres), "m", 2)} ${casesOf(node).ways![metres > 0 ? 0 : 1]}`;
  });
  return `moved ${ways.join(" and ")}`;
}

/** One changed field in the words of its schema, else what it belongs to, what it is called, what it is and was. */
function fieldLine(field: ChangedField, document: ScenarioInput): string {
  const { node, key, before, after, names } = field;
  if (names.length === 2 && names[0] === "panels" && before === undefined && node !== undefined)
    return panelsCame(partOf(after), node);
  const template = templateFor(field);
  if (template !== undefined) return say(template, field, document);
  const label = inSentence(labelOf(node, key));
  return `${ownerWords(field, document)}${label} ${say(before === undefined ? "{now}" : "{now}, was {was}", field, document)}`;
}

function templateFor({ node, before, after }: ChangedField): string | undefined {
  if (typeof node?.change === "string") return node.change;
  const { changed, added, removed, emptied, to } = casesOf(node);
  if (before === undefined) return added ?? changed;
  if (after === undefined) return removed;
  if (Array.isArray(after) && after.length === 0) return emptied ?? changed;
  return to?.[String(after)] ?? changed;
}

/** Fills in a sentence about a field. */
function say(template: string, field: ChangedField, document: ScenarioInput): string {
  const { node, before, after, parts } = field;
  const words = (value: unknown) => namedInWords(value, node, document) ?? shownValue(value, node);
  const given: Readonly<Record<string, () => Token>> = {
    now: () => ({ words: words(after), value: after }),
    was: () => ({ words: words(before), value: before }),
    item: () => ({ words: itemName(field) }),
    thing: () => ({ words: inSentence(thingName(field) ?? "") }),
  };
  const isPart = typeof after === "object" && after !== null && !Array.isArray(after);
  const [part, of] = isPart ? [after, node] : [parts.at(-1)!.after, parts.at(-1)!.node];
  return sentence(template, (name) => given[name]?.() ?? fieldToken(name, part, of) ?? { words: "" }) ?? "";
}

/** What gear, station, … a field belongs to: "Van roof". */
function itemName({ names, parts, ...own }: ChangedField): string {
  const item = [...parts, { names, ...own }].find((each) => each.names.length === 2) ?? own;
  return itemInWords(partOf(item.after ?? item.before), item.node).name;
}

/** The nearest thing with a name of its own that a field is or belongs to. */
function thingName({ names, parts, ...own }: ChangedField): string | undefined {
  const things = [...parts, { names, ...own }].filter(
    ({ before, after }) => typeof partOf(after ?? before).id === "string",
  );
  const nearest = things.at(-1);
  return nearest === undefined ? undefined : itemInWords(partOf(nearest.after ?? nearest.before), nearest.node).name;
}

/** "Van roof: ", "HF position, laptop: "; nothing for what belongs to the plan as a whole. */
function ownerWords(field: ChangedField, document: ScenarioInput): string {
  if (field.names.length <= 2 || !Array.isArray(partOf(document)[field.names[0]!])) return "";
  const [item, thing] = [itemName(field), thingName(field)];
  return thing === undefined || thing === item ? `${item}: ` : `${item}, ${inSentence(thing)}: `;
}

/** Short names as what they name is called; undefined where a field names nothing. */
function namedInWords(value: unknown, node: SchemaNode | undefined, document: ScenarioInput): string | undefined {
  const field = node?.items ?? node;
  const ids = [value].flat();
  if (field?.refersTo === undefined || value === undefined || ids.length === 0) return undefined;
  const known = field.refersTo.flatMap((list) => (partOf(document)[list] ?? []) as readonly Record<string, unknown>[]);
  const name = (id: unknown) => known.find((each) => each.id === id)?.name;
  return ids.map((id) => inSentence(String(name(id) ?? field.choices?.[String(id)] ?? id))).join(", ");
}
