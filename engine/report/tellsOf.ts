import type { Tell } from "../answers/kind.ts";
import { kindOf } from "../answers/kinds.ts";
import type { Notebook } from "../notebook/notebook.ts";

/** How each kind of entry in a notebook is told, by the kind's name. */
export type Tells = ReadonlyMap<string, Tell<unknown>>;

/** Fetches how the kinds of a notebook's entries are told. */
export async function tellsOf({ entries }: Notebook): Promise<Tells> {
  const kinds = [...new Set(entries.map(({ kind }) => kind))];
  return new Map(await Promise.all(kinds.map(async (kind) => [kind, await kindOf(kind).tell()] as const)));
}
