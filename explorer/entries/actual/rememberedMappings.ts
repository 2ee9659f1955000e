import type { MeterMapping } from "../../../engine/meter/meterMapping.ts";
import type { Notebook } from "../../../engine/notebook/notebook.ts";
import type { RememberedMapping } from "./readLog.ts";

const KEY = "duskline.logMappings";
const MOST = 12;

/** How logs were read before: those kept in this notebook first, then what this browser remembers. */
export function rememberedMappings(notebook: Notebook): RememberedMapping[] {
  const kept = notebook.entries.flatMap((entry): RememberedMapping[] =>
    entry.kind === "actual" && entry.doc.log !== undefined
      ? [{ titles: entry.doc.log.titles, mapping: entry.doc.log.mapping as MeterMapping }]
      : [],
  );
  return [...kept.reverse(), ...stored()];
}

export function rememberMapping(titles: readonly string[], mapping: MeterMapping): void {
  const others = stored().filter((each) => JSON.stringify(each.titles) !== JSON.stringify(titles));
  try {
    localStorage.setItem(KEY, JSON.stringify([{ titles, mapping }, ...others].slice(0, MOST)));
  } catch {
    // Storage may be forbidden or full: the notebook keeps its own.
  }
}

/** What is found here is read by the engine's schema before a log is read with it; anything else is passed over. */
function stored(): RememberedMapping[] {
  try {
    const found: unknown = JSON.parse(localStorage.getItem(KEY) ?? "[]");
    if (!Array.isArray(found)) return [];
    return found.filter(
      (each): each is RememberedMapping =>
        typeof each === "object" &&
        each !== null &&
        Array.isArray(each.titles) &&
        typeof each.mapping === "object" &&
        each.mapping !== null,
    );
  } catch {
    return [];
  }
}
