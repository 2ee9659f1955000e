import { USUAL_MEMBERS, USUAL_SEED } from "../library/askOptions.ts";
import { CallError } from "./callError.ts";

const MOST_MEMBERS = 1_000_000;

/** Reads `--members`: how many, or which, such as 500:1000 for those from 500 up to but not including 1000. */
export function memberRange(value: string | boolean | undefined, usual = USUAL_MEMBERS): { from: number; to: number } {
  if (value === undefined) return { from: 0, to: usual };
  const match = /^(?:(\d{1,9}):)?(\d{1,9})$/.exec(String(value));
  const from = Number(match?.[1] ?? 0);
  const to = Number(match?.[2] ?? 0);
  if (match === null || to <= from || to > MOST_MEMBERS) {
    throw new CallError(
      `--members is "${value}" but must be a number from 1 to ${MOST_MEMBERS}, or a range such as 500:1000; write one of the two.`,
    );
  }
  return { from, to };
}

/** Reads `--seed`: any text. */
export function seedOf(value: string | boolean | undefined): string {
  return typeof value === "string" ? value : USUAL_SEED;
}
