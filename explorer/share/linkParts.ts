import { PART_PREFIX, SHARE_PREFIX } from "./sharePrefix.ts";

/** Version of what follows: mark of the whole, number of the part, how many there are, and its piece of what stands behind "#share=". */
const VERSION = "1.";
/** A row of more is more than anybody holds a phone for. */
export const MOST_PARTS = 6;
/**
 * Bytes in one code: version 25 at level L (ISO/IEC 18004:2015, table 7, from memory). Codes of more than 117 modules a side are hard to read from a
 * screen (common practice, no source).
 */
export const CODE_VERSION = 25;
export const CODE_BYTES = 1273;

/** One part of a notebook that came in several. */
export interface LinkPart {
  /** Of the whole: parts of different notebooks are told apart by it, and the whole is checked against it. */
  readonly mark: string;
  /** From 1. */
  readonly part: number;
  readonly of: number;
  readonly piece: string;
}

export type Codes =
  | { readonly ok: true; readonly addresses: readonly string[] }
  | { readonly ok: false; readonly sentence: string };

/**
 * The addresses that carry a link, each short enough for one QR code: the link itself, or as few parts as will do, all of one size.
 * @param page the page's address without its part behind #
 * @param fragment what `shareFragment` made
 */
export function codeAddresses(page: string, fragment: string): Codes {
  if (page.length + fragment.length <= CODE_BYTES) return { ok: true, addresses: [`${page}${fragment}`] };
  const whole = fragment.slice(SHARE_PREFIX.length);
  const head = (part: number, of: number) => `${page}${PART_PREFIX}${VERSION}${markOf(whole)}.${part}.${of}.`;
  const room = CODE_BYTES - head(MOST_PARTS, MOST_PARTS).length;
  const of = room > 0 ? Math.ceil(whole.length / room) : Number.POSITIVE_INFINITY;
  if (of > MOST_PARTS) {
    const many = Number.isFinite(of) ? `${of} QR codes` : "more QR codes than can be";
    return {
      ok: false,
      sentence: `This notebook would take ${many}, and ${MOST_PARTS} in a row are the most that are drawn. Send the link, or save the notebook as a file and send that.`,
    };
  }
  const size = Math.ceil(whole.length / of);
  const pieces = Array.from({ length: of }, (_, k) => whole.slice(k * size, (k + 1) * size));
  return { ok: true, addresses: pieces.map((piece, k) => `${head(k + 1, of)}${piece}`) };
}

export type ReadPart =
  | { readonly ok: true; readonly part: LinkPart }
  | { readonly ok: false; readonly sentences: readonly string[] };

/** Reads one part out of an address. Whoever made it is a stranger: nothing longer than a code can hold is looked at. */
export function readPart(hash: string): ReadPart {
  const refused = (sentence: string) => ({ ok: false as const, sentences: [sentence] });
  if (hash.length > CODE_BYTES) return refused("The link is too long for one part of a notebook. It was not read.");
  const rest = hash.slice(PART_PREFIX.length);
  if (!rest.startsWith(VERSION) && /^\d+\./.test(rest)) {
    return refused("The code was made by a newer duskline; open it with that one, or ask for the file.");
  }
  const [, mark, part, of, piece] = /^1\.([0-9a-z]{1,7})\.([1-9])\.([1-9])\.([A-Za-z0-9_.-]+)$/.exec(rest) ?? [];
  const isOne = piece !== undefined && Number(of) >= 2 && Number(of) <= MOST_PARTS && Number(part) <= Number(of);
  if (!isOne)
    return refused("The link is damaged: it is no part of a notebook. Scan the code once more, or ask for the file.");
  return { ok: true, part: { mark: mark!, part: Number(part), of: Number(of), piece } };
}

/** What the parts came to, as the part of an address behind # that carries all of it; null when they do not belong together. */
export function fragmentOfPieces(mark: string, pieces: readonly string[]): string | null {
  const whole = pieces.join("");
  return markOf(whole) === mark ? `${SHARE_PREFIX}${whole}` : null;
}

/** FNV-1a, 32 bits (RFC 9923, from memory), in letters and digits. */
export function markOf(text: string): string {
  let hash = 0x811c9dc5;
  for (let i = 0; i < text.length; i++) hash = Math.imul(hash ^ text.charCodeAt(i), 0x01000193);
  return (hash >>> 0).toString(36);
}
