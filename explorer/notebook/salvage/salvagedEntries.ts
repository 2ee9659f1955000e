import { LONGEST_NAME, LONGEST_NOTE, MOST_ENTRIES, MOST_READINGS } from "../../../engine/answers/notebookLimits.ts";
import { scenariosOf } from "../../../engine/notebook/asked.ts";
import { type Entry, EntryShape, Notebook } from "../../../engine/notebook/notebook.ts";
import { freeId } from "../../../engine/notebook/notebookEdits.ts";
import { cut, type Fields, nameOf, reason, type Salvage, whyLeftOut } from "./damage.ts";

const EntryId = Notebook.shape.id;

/** The entries that can be read. @param known ids of the scenarios that they can show */
export function salvagedEntries(list: readonly unknown[], known: ReadonlySet<string>, salvage: Salvage): Entry[] {
  const read: Entry[] = [];
  for (const [number, part] of list.entries()) {
    const name = nameOf(part, "Entry", number);
    const why = whyLeftOut(part, salvage);
    if (why !== null) {
      salvage.missing.push(`${name} is missing: ${why}.`);
      continue;
    }
    for (const [k, piece] of piecesOf(part as Fields, name, salvage).entries()) {
      const parsed = EntryShape.safeParse(piece);
      const entry = parsed.success ? ofKnown(parsed.data, known, name, salvage) : null;
      if (!parsed.success) salvage.missing.push(`${name} is missing: ${reason(parsed.error)}.`);
      if (entry === null) continue;
      if (read.length >= MOST_ENTRIES)
        salvage.missing.push(`${name} is missing: a notebook holds ${MOST_ENTRIES} entries.`);
      else {
        const isTaken = read.some(({ id }) => id === entry.id);
        const placed = isTaken ? { ...entry, id: freeId(entry.kind, read) } : entry;
        if (k === 0 && placed.id !== (part as Fields).id)
          salvage.missing.push(`${name} has another id now, ${placed.id}.`);
        read.push(placed);
      }
    }
  }
  return read;
}

/** An entry that is too long for one, as several; nothing of it is missing then. */
function piecesOf(part: Fields, name: string, salvage: Salvage): Fields[] {
  const title = cut(part.title) ?? "Untitled";
  if (title !== part.title) salvage.missing.push(`${name} has not its whole title.`);
  const named = { ...part, title, id: EntryId.safeParse(part.id).success ? part.id : "entry" };
  const doc = part.doc as Fields | null | undefined;
  const inParts = (docs: readonly Fields[]): Fields[] => {
    salvage.missing.push(`${name} is too long for one entry and stands here as ${docs.length}.`);
    return docs.map((part, k) => ({
      ...named,
      title: k === 0 ? title : `${title.slice(0, LONGEST_NAME - 10)}, part ${k + 1}`,
      doc: part,
    }));
  };
  const text = doc?.text;
  if (part.kind === "note" && typeof text === "string" && text.length > LONGEST_NOTE) {
    return inParts(pieces(text, LONGEST_NOTE).map((piece) => ({ text: piece })));
  }
  const readings = doc?.readings;
  if (part.kind === "readings" && Array.isArray(readings) && readings.length > MOST_READINGS) {
    const count = Math.ceil(readings.length / MOST_READINGS);
    const from = (k: number) => readings.slice(k * MOST_READINGS, (k + 1) * MOST_READINGS);
    return inParts(Array.from({ length: count }, (_, k) => ({ ...doc, readings: from(k) })));
  }
  return [named];
}

/** A text in pieces of at most `most` characters; a character of two halves stays whole. */
function pieces(text: string, most: number): string[] {
  const all: string[] = [];
  for (let from = 0; from < text.length; ) {
    const isSplit = /[\uD800-\uDBFF]/.test(text.charAt(from + most - 1)) && from + most < text.length;
    const to = from + most - (isSplit ? 1 : 0);
    all.push(text.slice(from, to));
    from = to;
  }
  return all;
}

/** An entry without the scenarios that are missing; null where nothing is left of it. */
function ofKnown(entry: Entry, known: ReadonlySet<string>, name: string, salvage: Salvage): Entry | null {
  const lost = scenariosOf(entry).filter((id) => !known.has(id));
  if (lost.length === 0) return entry;
  if (entry.kind === "forecast" && lost.length < entry.doc.scenarios.length) {
    salvage.missing.push(`${name} shows fewer scenarios than it did.`);
    return { ...entry, doc: { scenarios: entry.doc.scenarios.filter((id) => known.has(id)) } };
  }
  salvage.missing.push(`${name} is missing: so is what it shows.`);
  return null;
}
