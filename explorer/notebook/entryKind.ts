import type { Component, JSX } from "solid-js";
import type { EntryDoc, EntryKindName, Notebook } from "../../engine/notebook/notebook.ts";
import type { NotebookPage } from "./notebookPage.ts";

/** What a view of an entry is given: its document, the page that it stands on, and how it may change itself. */
export interface EntryProps<Kind extends EntryKindName> {
  readonly id: string;
  readonly doc: EntryDoc<Kind>;
  /** The notebook, its scenarios, results and the ruler; read it inside JSX or effects, for it changes. */
  readonly page: NotebookPage;
  /** Puts another document in place of this entry's own; `label` names the step for undo. @returns why it stays as it is, or null */
  readonly edit: (doc: EntryDoc<Kind>, label: string) => string | null;
}

/** A kind of entry. One folder under `entries/` each, listed in `list.ts`. */
export interface EntryKind<Kind extends EntryKindName> {
  readonly kind: Kind;
  /** What the list of entries to add calls it, and what it is for in half a sentence. */
  readonly title: string;
  readonly purpose: string;
  /** A new entry's title and document, for a notebook as it stands. */
  make(notebook: Notebook): { title: string; doc: EntryDoc<Kind> };
  /** One line for the sheet index and the folded entry; empty while nothing is known. */
  summary(props: EntryProps<Kind>): string;
  readonly View: Component<EntryProps<Kind>>;
  /** Actions of the entry's own, at the right of its heading. */
  readonly Acts?: (props: EntryProps<Kind>) => JSX.Element;
}
