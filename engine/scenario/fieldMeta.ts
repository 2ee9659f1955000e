/**
 * What stands beside a field or a part in its schema's meta for whoever shows it. Sentences are templates: `{now}` and `{was}` are
 * the field's value after and before a change, `{item}` the gear, station, … that it belongs to, `{thing}` the name of the nearest
 * thing in the middle of a sentence; any other word in braces is a field of the same part, with dots to go deeper. `{one|many}` is
 * the first where the number told last is 1. What stands in `[ ]` is left out where a field named in it says no more than is usual.
 */
export interface FieldMeta {
  /** What a field is called on a page; a part's title does where that is all. */
  label?: string;
  /** What its choices are called, where that is not the choice's own word. */
  choices?: Readonly<Record<string, string>>;
  /** Whether it is shown before anybody asks for every field; what lies inside a part goes with the part. */
  isPlain?: boolean;
  /** What stands for it where it is left out; "as usual" else. */
  leftOut?: string;
  /** What an empty list is called; "none" else. */
  empty?: string;
  /** It counts only where another field of its part says so. */
  onlyWith?: Readonly<Record<string, string>>;
  /** Lists of the scenario of which it names an entry. */
  refersTo?: readonly string[];
  /** Whether the order counts in a list of such names. */
  isOrdered?: boolean;
  /** Of a part: whether a change inside is told as a change of the whole. */
  isWhole?: boolean;
  /** A part or an entry of a list in a few words: the first whose fields all are there. */
  says?: string | readonly string[];
  /** How a change of it reads. Left out: "label now, was before". */
  change?: ChangeWords;
  /** What a part is, where the field that holds it has a description of its own. */
  part?: string;
}

/** A sentence for every case, or one for each; a case with an empty sentence goes without saying. */
export type ChangeWords = string | ChangeCases;

export interface ChangeCases {
  readonly changed?: string;
  /** Where the document had none before; that of `changed` where left out. */
  readonly added?: string;
  /** Where the document has none any more. */
  readonly removed?: string;
  /** Where the list is empty now. */
  readonly emptied?: string;
  /** Where it becomes a certain choice. */
  readonly to?: Readonly<Record<string, string>>;
  /** Whether the rest of its part follows from it, so that one sentence tells both. */
  readonly tellsPart?: boolean;
  /** Of a part: a sentence for more than two changes inside. */
  readonly many?: string;
  /** Of a part: a sentence for when all of certain fields change. */
  readonly all?: { readonly of: readonly string[]; readonly says: string };
  /** Of a distance: the directions of more and of less; such fields of one part are told together as a move. */
  readonly ways?: readonly [more: string, less: string];
  /** Whether it grows with the bank, so that beside another size it is no news. */
  readonly followsSize?: boolean;
}

/** Every name of `FieldMeta`, for whoever writes a schema that others are to read. */
export const FIELD_META = [
  "label",
  "choices",
  "isPlain",
  "leftOut",
  "empty",
  "onlyWith",
  "refersTo",
  "isOrdered",
  "isWhole",
  "says",
  "change",
  "part",
] as const satisfies readonly (keyof FieldMeta)[];

declare module "zod" {
  interface GlobalMeta extends FieldMeta {}
}
