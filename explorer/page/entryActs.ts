import { letterOf } from "../../engine/notebook/letterOf.ts";
import type { Entry, EntryKindName } from "../../engine/notebook/notebook.ts";
import {
  duplicateEntry,
  editEntry,
  freeId,
  moveEntry,
  withEntry,
  withoutEntry,
} from "../../engine/notebook/notebookEdits.ts";
import { entryKindOf } from "../entries/list.ts";
import type { makeNotebook } from "../notebook/makeNotebook.ts";
import type { EntryActs } from "./EntryFrame.tsx";

/** What can be done with an entry as a whole. @param say tells what came of it */
export function entryActs(state: ReturnType<typeof makeNotebook>, say: (sentence: string) => void): EntryActs {
  return {
    edit: (entry, change, label) => {
      const next = editEntry(state.now(), entry.id, change);
      return label === "text" ? state.edit(`${entry.id} text`, next) : state.act(next);
    },
    move: (entry, by) => {
      const at = state.now().entries.findIndex(({ id }) => id === entry.id);
      state.act(moveEntry(state.now(), entry.id, at + by));
      document.getElementById(`letter-${entry.id}`)?.focus();
      const now = state.now().entries.findIndex(({ id }) => id === entry.id);
      say(`${entry.title} is entry ${letterOf(now)} now.`);
    },
    drop: (dragged, before) => {
      const { entries } = state.now();
      const [from, to] = [dragged, before.id].map((id) => entries.findIndex((each) => each.id === id)) as [
        number,
        number,
      ];
      if (from < 0 || to < 0) return;
      state.act(moveEntry(state.now(), dragged, to));
    },
    duplicate: (entry) => void state.act(duplicateEntry(state.now(), entry.id)),
    remove: (entry) => {
      if (state.act(withoutEntry(state.now(), entry.id)) === null)
        say(`${entry.title} is removed; Undo brings it back.`);
    },
    add: (name: EntryKindName, at) => {
      const kind = entryKindOf(name);
      const id = freeId(name, state.now().entries);
      if (state.act(withEntry(state.now(), { id, kind: name, ...kind.make(state.now()) } as Entry, at)) !== null)
        return;
      document.getElementById(id)?.scrollIntoView({ block: "nearest" });
      document.getElementById(`letter-${id}`)?.focus({ preventScroll: true });
    },
  };
}
