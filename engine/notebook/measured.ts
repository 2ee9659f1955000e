/** How much a value holds, and whether anything about it is meant to do harm. */
export interface Measured {
  /** Numbers, texts, lists and objects, itself included. */
  readonly values: number;
  /** Levels of lists and objects within one another; 0 for a number or a text. */
  readonly levels: number;
  /** A field that would reach into the objects of the program. */
  readonly badField: string | null;
}

const BAD_FIELDS = new Set(["__proto__", "constructor", "prototype"]);

/** Walks without recursion, so that depth itself cannot do harm, and stops at `mostValues` or `deepest`. */
export function measured(root: unknown, mostValues: number, deepest: number): Measured {
  const open: { value: unknown; level: number }[] = [{ value: root, level: 0 }];
  let values = 0;
  let levels = 0;
  for (let next = open.pop(); next !== undefined; next = open.pop()) {
    if (++values > mostValues) break;
    if (typeof next.value !== "object" || next.value === null) continue;
    const level = next.level + 1;
    levels = Math.max(levels, level);
    if (levels > deepest) break;
    for (const [key, value] of Object.entries(next.value)) {
      if (BAD_FIELDS.has(key)) return { values, levels, badField: key };
      open.push({ value, level });
    }
  }
  return { values, levels, badField: null };
}
