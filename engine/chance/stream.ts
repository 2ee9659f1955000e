/// <reference path="./alea.d.ts" />
import alea from "seedrandom/lib/alea.js";
import { normalOfWord } from "./normalOfWord.ts";

/**
 * What chance is used for, each with a number of its own for ever. Append only: a new purpose gets a new number, and no
 * draw of an old one moves.
 */
export const PURPOSES = {
  /** Clearness from day to day. */
  sky: 1,
  /** Cloud within the day. */
  cloud: 2,
  /** Air temperature. */
  air: 3,
  /** How much the operators transmit. */
  activity: 4,
  /** Charge of the bank at the start. */
  start: 5,
  /** How far a forecast is off. */
  sureness: 6,
  /** Which days of a weather file are taken. */
  blocks: 7,
  /** How far the plan's figures are off. */
  figures: 8,
  /** How far the climate tables are off. */
  climate: 9,
  /** Which rows of a sample are taken again to see how far its estimates scatter. */
  resample: 10,
} as const;
export type Purpose = keyof typeof PURPOSES;

/** How many numbers a stream's state takes. */
export const STREAM_WORDS = 4;

/** Draws thrown away after opening, until four words that resemble another stream's have nothing left in common with it. */
const WARM_UP = 16;

/**
 * Expands a seed, any text, to four words. Once per run; every stream of the run starts from them.
 * Node and browsers give the same words: seedrandom's Alea hashes with + − × and exact powers of two only.
 */
export function seedWords(seed: string): Int32Array {
  const drawn = alea(seed);
  return Int32Array.from({ length: STREAM_WORDS }, () => drawn.int32());
}

/**
 * Opens the stream of one member and one purpose: different (member, purpose) start from different states, always.
 * @param state four words, overwritten
 * @param words from `seedWords`
 * @param member 0…4294967295
 * @memberLoop
 */
export function openStream(state: Uint32Array, words: Int32Array, member: number, purpose: Purpose): void {
  const first = mixed(words[0]! ^ mixed(member + 0x9e3779b9));
  const second = mixed(words[1]! ^ mixed(PURPOSES[purpose] + 0x85ebca6b));
  state[0] = first; // tells members apart: mixing is one to one
  state[1] = second; // tells purposes apart
  state[2] = mixed(words[2]! ^ (first + Math.imul(second, 0x27d4eb2f)));
  state[3] = mixed(words[3]! ^ (second + Math.imul(first, 0x165667b1))) | 1; // never all zero
  for (let i = 0; i < WARM_UP; i++) nextWord(state);
}

/** Scatters the bits of a word, one to one: the last step of A. Appleby's MurmurHash3, 32 bits (public domain, 2011). */
function mixed(word: number): number {
  let h = word;
  h = Math.imul(h ^ (h >>> 16), 0x85ebca6b);
  h = Math.imul(h ^ (h >>> 13), 0xc2b2ae35);
  return (h ^ (h >>> 16)) >>> 0;
}

/**
 * The next word of a stream, 0…4294967295: xoshiro128++.
 * @see D. Blackman and S. Vigna, Scrambled linear pseudorandom number generators, ACM Trans. Math. Softw. 47 (2021) 36
 * @memberLoop
 */
export function nextWord(state: Uint32Array): number {
  const s0 = state[0]! | 0; // as signed words, which engines keep in registers
  const s1 = state[1]! | 0;
  const s3 = state[3]! | 0;
  const sum = (s0 + s3) | 0;
  const word = (((sum << 7) | (sum >>> 25)) + s0) >>> 0;
  const t2 = (state[2]! | 0) ^ s0;
  const t3 = s3 ^ s1;
  state[1] = s1 ^ t2;
  state[0] = s0 ^ t3;
  state[2] = t2 ^ (s1 << 9);
  state[3] = (t3 << 11) | (t3 >>> 21);
  return word;
}

/**
 * The next even draw of a stream, in (0, 1): never 0 and never 1.
 * @memberLoop
 */
export function nextUnit(state: Uint32Array): number {
  return (nextWord(state) + 0.5) * 2.3283064365386963e-10; // 2^-32
}

/**
 * The next standard normal draw of a stream, −6.4…6.4. One word makes one draw, so a draw never depends on how many
 * were taken before it by another.
 * @memberLoop
 */
export function nextNormal(state: Uint32Array): number {
  return normalOfWord(nextWord(state));
}

/**
 * Words of a part of the whole that has chance of its own, such as one station: taking another part away moves none of its
 * draws. For preparing; the streams are then opened from these words.
 * @param words from `seedWords`
 * @param name of the part, any text
 */
export function wordsFor(words: Int32Array, name: string): Int32Array {
  let hash = 0x811c9dc5; // G. Fowler, L. Noll, K. Vo: FNV-1a, 32 bits
  for (let k = 0; k < name.length; k++) hash = Math.imul(hash ^ name.charCodeAt(k), 0x01000193);
  return words.map((word, k) => word ^ mixed(hash + Math.imul(k + 1, 0x9e3779b1)));
}
