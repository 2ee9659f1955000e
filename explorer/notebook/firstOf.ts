import type { Notebook } from "../../engine/notebook/notebook.ts";

/** The id of the scenario that a new entry is about, before anybody says otherwise. */
export const firstOf = (notebook: Notebook) => notebook.scenarios[0]!.id;

/** The id of the scenario that it is held against; the first again where there is only one. */
export const secondOf = (notebook: Notebook) => notebook.scenarios[1]?.id ?? firstOf(notebook);
