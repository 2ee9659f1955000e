import { LOOKS, type Look } from "../words/look.ts";
import type { Notebook } from "./notebook.ts";

type Looked = Pick<Notebook, "scenarios" | "looks">;

/**
 * Who has each of the four looks: those that the notebook says (a scenario that has gone has let its look go), and what is free goes to scenarios without one, in their order. A fifth
 * scenario has none until one of the four is let go.
 * @returns four ids, null for a look that nobody has
 */
export function looksOf({ scenarios, looks = [] }: Looked): (string | null)[] {
  const held = LOOKS.map((_, k) => scenarios.find(({ id }) => id === looks[k])?.id ?? null);
  const without = scenarios.filter(({ id }) => !held.includes(id)).map(({ id }) => id);
  return held.map((id) => id ?? without.shift() ?? null);
}

/** How a scenario is drawn in all of a notebook. */
export function lookOf(notebook: Looked, id: string): Look {
  return LOOKS[looksOf(notebook).indexOf(id)] ?? "plain";
}

/** Writes down who has which look, so that what comes and goes afterwards changes nobody's. */
export function withLooks<Of extends Looked>(notebook: Of): Of {
  const looks = looksOf(notebook);
  return looks.every((id, k) => id === (notebook.looks?.[k] ?? null)) ? notebook : { ...notebook, looks };
}

/** Gives one scenario a look; who had it takes the look that this one had, or none. */
export function withLook(notebook: Notebook, id: string, look: (typeof LOOKS)[number]): Notebook {
  const looks = looksOf(notebook);
  const [from, to] = [looks.indexOf(id), LOOKS.indexOf(look)];
  if (from === to || !notebook.scenarios.some((scenario) => scenario.id === id)) return notebook;
  if (from >= 0) looks[from] = looks[to]!;
  looks[to] = id;
  return { ...notebook, looks };
}
