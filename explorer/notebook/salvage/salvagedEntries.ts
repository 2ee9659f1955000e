import { KIND_NAMES, kindOf } from "../../../engine/answers/kinds.ts";
import { LONGEST_NAME, MOST_ENTRIES } from "../../../engine/answers/notebookLimits.ts";
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
  const inParts = (docs: readonly Fields[]): Fields[] => {
    salvage.missing.push(`${name} is too long for one entry and stands here as ${docs.length}.`);
    return docs.map((part, k) => ({
      ...named,
      title: k === 0 ? title : `${title.slice(0, LONGEST_NAME - 10)}, part ${k + 1}`,
      doc: part,
    }));
  };
  const parts = isKind(part.kind) ? (kindOf(part.kind).inParts?.(part.doc) ?? []) : [];
  return parts.length > 1 ? inParts(parts as readonly Fields[]) : [named];
}

/** An entry without the scenarios that are missing; null where nothing is left of it. */
function ofKnown(entry: Entry, known: ReadonlySet<string>, name: string, salvage: Salvage): Entry | null {
  const lost = scenariosOf(entry).filter((id) => !known.has(id));
  if (lost.length === 0) return entry;
  const rest = kindOf(entry.kind).without?.(entry.doc, new Set(lost)) ?? null;
  if (rest !== null) {
    salvage.missing.push(`${name} shows fewer scenarios than it did.`);
    return { ...entry, doc: rest } as Entry;
  }
  salvage.missing.push(`${name} is missing: so is what it shows.`);
  return null;
}

const isKind = (name: unknown): name is string => KIND_NAMES.some((each) => each === name);
