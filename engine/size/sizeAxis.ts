import type { Problem } from "../scenario/problem.ts";
import type { Scenario } from "../scenario/scenario.ts";

/** Most cells of one map: 50 by 50, more than anybody reads. */
export const MOST_CELLS = 2500;

/** A number of the scenario and the values that a map looks at, as somebody asked for them. */
export interface SizeWish {
  /** Place in the document with dots and ids, such as `panels.roof.count`. */
  readonly at: string;
  /** Values as listed, or equal steps from one to another, which a field of whole numbers may round. */
  readonly values: readonly number[] | { readonly from: number; readonly to: number; readonly steps: number };
}

/** One number of the scenario and the values it takes across a map, smallest first. */
export interface SizeAxis {
  readonly at: string;
  readonly values: readonly number[];
  /** What the scenario has there now; null where it leaves it open. */
  readonly present: number | null;
}

const NUMBER = /^[+-]?(\d+\.?\d*|\.\d+)(e[+-]?\d+)?$/i;

/** Reads `bank.blockAh=100:400:7` (from, to, how many) or `bank.blockAh=100,200,280` (a list, or one value). */
export function readSizeWish(text: string): { ok: true; wish: SizeWish } | { ok: false; problems: Problem[] } {
  const refused = (message: string) => ({ ok: false as const, problems: [{ code: "not-an-axis", path: [], message }] });
  const [at, given, ...more] = text.split("=");
  if (!at || !given || more.length > 0) {
    return refused(
      `"${text}" names no field with values; write it as bank.blockAh=100:400:7 (from, to, how many) or bank.blockAh=100,200,280.`,
    );
  }
  const isStepped = given.includes(":");
  const parts = given.split(isStepped ? ":" : ",");
  const wrong = parts.find((part) => !NUMBER.test(part.trim()) || !Number.isFinite(Number(part)));
  if (wrong !== undefined) return refused(`"${wrong}" in "${text}" is not a number; write values such as 100:400:7.`);
  const numbers = parts.map(Number);
  if (!isStepped) return { ok: true, wish: { at, values: numbers } };
  const [from, to, steps] = numbers;
  if (numbers.length !== 3 || !Number.isInteger(steps) || steps! < 1 || (steps === 1 && from !== to)) {
    return refused(
      `"${given}" in "${text}" must be from:to:how many, with 2 or more values in whole numbers, such as 100:400:7.`,
    );
  }
  return { ok: true, wish: { at, values: { from: Math.min(from!, to!), to: Math.max(from!, to!), steps: steps! } } };
}

/** How many values a wish has, before rounding. */
export function wishLength({ values }: SizeWish): number {
  return "steps" in values ? values.steps : values.length;
}

/** The values of a wish, smallest first, each once. */
export function wishValues({ values }: SizeWish): number[] {
  if (!("steps" in values)) return ordered(values);
  const { from, to, steps } = values;
  // Twelve digits: 0.1 + 0.2 is to be 0.3 in a table.
  return ordered(
    Array.from({ length: steps }, (_, k) =>
      Number((from + ((to - from) * k) / Math.max(1, steps - 1)).toPrecision(12)),
    ),
  );
}

function ordered(values: readonly number[]): number[] {
  return [...new Set(values)].sort((a, b) => a - b);
}

const BANK_FACTORS = [0.5, 0.75, 1, 1.25, 1.5, 2, 3];
const PANEL_FACTORS = [0, 0.5, 1, 1.5, 2, 3];
const MOST_BLOCK_AH = 3000;
const MOST_MODULES = 60;

/**
 * What a map looks at when nobody says: the bank's block from half to three times the present one, against modules of the
 * first panel group from none to three times the present number, in whole strings. The first group alone, because groups
 * differ in what a further module would cost, weigh and have room for.
 */
export function usualWishes(scenario: Scenario): { readonly x: SizeWish; readonly y: SizeWish | null } {
  const { blockAh } = scenario.bank;
  const unit = blockAh >= 100 ? 10 : blockAh >= 20 ? 5 : 1;
  const sizes = BANK_FACTORS.map((factor) => {
    if (factor === 1) return blockAh;
    return Math.max(1, Math.min(MOST_BLOCK_AH, Math.round((factor * blockAh) / unit) * unit));
  });
  const x = { at: "bank.blockAh", values: ordered(sizes) };
  const group = scenario.panels[0];
  if (group === undefined) return { x, y: null };
  const strings = group.count > 0 ? group.count / group.inSeries : 1;
  const counts = PANEL_FACTORS.map((factor) => Math.ceil(factor * strings) * group.inSeries);
  return { x, y: { at: `panels.${group.id}.count`, values: ordered(counts.filter((count) => count <= MOST_MODULES)) } };
}

/** What a map looks at: what is wished for, and the usual in place of what is left out. */
export function wishesOf(
  scenario: Scenario,
  wished: { readonly x?: SizeWish; readonly y?: SizeWish | null },
): { readonly x: SizeWish; readonly y: SizeWish | null } {
  const usual = usualWishes(scenario);
  const x = wished.x ?? usual.x;
  return { x, y: wished.y ?? (x.at === usual.y?.at ? usual.x : usual.y) };
}
