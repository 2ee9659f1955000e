import { type LinkPart, MOST_PARTS } from "./linkParts.ts";

/** The part of localStorage that is needed here. */
export type PartStore = Pick<Storage, "getItem" | "setItem">;

/** The parts that have come of one notebook; null where one has not. */
export interface PartSet {
  readonly mark: string;
  readonly pieces: readonly (string | null)[];
}

export const PARTS_KEY = "duskline.parts";
/** Notebooks whose parts wait at once: older ones make room, so that nobody fills a browser with parts that never end. */
const MOST_SETS = 3;

/** Parts that wait for the rest, the newest first. Whatever else lies there is passed over. */
export function setsIn(text: string | null): readonly PartSet[] {
  let found: unknown;
  try {
    found = JSON.parse(text ?? "[]");
  } catch {
    return [];
  }
  return Array.isArray(found) ? found.filter(isSet).slice(0, MOST_SETS) : [];
}

function isSet(found: unknown): found is PartSet {
  const { mark, pieces } = (found ?? {}) as Partial<PartSet>;
  const isPiece = (piece: unknown) => piece === null || typeof piece === "string";
  return typeof mark === "string" && Array.isArray(pieces) && pieces.length <= MOST_PARTS && pieces.every(isPiece);
}

/** Puts a part to the others of its notebook. @returns those that are here now; @throws where the browser keeps nothing */
export function addPart(store: PartStore, { mark, part, of, piece }: LinkPart): PartSet {
  const sets = setsIn(store.getItem(PARTS_KEY));
  const isSame = (set: PartSet) => set.mark === mark && set.pieces.length === of;
  const before = sets.find(isSame)?.pieces ?? Array.from<null>({ length: of }).fill(null);
  const set = { mark, pieces: before.map((each, k) => (k === part - 1 ? piece : each)) };
  store.setItem(PARTS_KEY, JSON.stringify([set, ...sets.filter((each) => !isSame(each))].slice(0, MOST_SETS)));
  return set;
}

/** Lets go of the parts of a notebook. */
export function dropParts(store: PartStore, mark: string): void {
  store.setItem(PARTS_KEY, JSON.stringify(setsIn(store.getItem(PARTS_KEY)).filter((set) => set.mark !== mark)));
}
