import type { Problem } from "../../../engine/scenario/problem.ts";
import { effort } from "../../effort.ts";

/** What only a program says, and never a sentence of ours. */
const WORDS_OF_A_MACHINE =
  /Invalid (input|string|option|key)|expected \w+, received|undefined|\bNaN\b(?!")|\[object|(Type|Range|Syntax)Error|\bat .*\.[tj]s:\d|Too (big|small)|Unrecognized key/;

/** What the user wrote stands between quotes, and may be anything. */
const withoutQuotes = (sentence: string) => sentence.replace(/"[^"]*"/g, '""').replace(/“[^”]*”/g, "“”");

/** @throws Error unless each is a sentence that somebody can act on */
export function mustBeSentences(sentences: readonly string[]): void {
  if (sentences.length === 0) throw new Error("refused without a word");
  if (sentences.length > 51) throw new Error(`${sentences.length} sentences at once`);
  for (const sentence of sentences) {
    if (!/[.?!)]$/.test(sentence)) throw new Error(`no sentence: ${sentence.slice(0, 300)}`);
    if (sentence.length > 6000) throw new Error(`a sentence of ${sentence.length} letters`);
    if (WORDS_OF_A_MACHINE.test(withoutQuotes(sentence)))
      throw new Error(`a machine's words: ${sentence.slice(0, 300)}`);
  }
}

export function mustBeProblems(problems: readonly Problem[]): void {
  mustBeSentences(problems.map(({ message }) => message));
  for (const { code } of problems) if (!/^[a-z-]+$/.test(code)) throw new Error(`no code: ${code}`);
}

/** Reading a document of some kilobytes; what takes time in the square of anything takes hundreds of times as much. */
const MOST_EFFORT = 1000;

/** Reads, and sees to it that what is refused is refused in words and that reading it was quick. */
export function readsWell<Read extends { ok: true } | { ok: false; problems: readonly Problem[] }>(
  read: () => Read,
): Extract<Read, { ok: true }> | null {
  let result: Read | undefined;
  const took = effort(() => {
    result = read();
  }, MOST_EFFORT);
  if (took >= MOST_EFFORT)
    throw new Error(`reading took ${took.toFixed(0)} times as long as going over two million letters`);
  const done = result!;
  if (done.ok) return done as Extract<Read, { ok: true }>;
  mustBeProblems((done as Extract<Read, { ok: false }>).problems);
  return null;
}

/** @throws Error naming the first place of a report where a number is none */
export function mustBeNumbers(value: unknown, path = "it"): void {
  if (typeof value === "number") {
    if (!Number.isFinite(value)) throw new Error(`${path} is ${value}`);
  } else if (ArrayBuffer.isView(value)) {
    const at = (value as Float64Array).findIndex((each) => !Number.isFinite(each));
    if (at >= 0) throw new Error(`${path}.${at} is ${(value as Float64Array)[at]}`);
  } else if (typeof value === "object" && value !== null) {
    for (const [key, inner] of Object.entries(value)) mustBeNumbers(inner, `${path}.${key}`);
  }
}
