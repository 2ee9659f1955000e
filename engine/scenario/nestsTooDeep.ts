/** Levels of groups and lists within one another; a scenario with everything in it has ten. */
export const DEEPEST = 40;

/** Whether a document nests deeper than that. Walks without recursion, so that depth itself does no harm. */
export function nestsTooDeep(document: unknown): boolean {
  const open: { value: unknown; depth: number }[] = [{ value: document, depth: 0 }];
  for (let next = open.pop(); next !== undefined; next = open.pop()) {
    if (typeof next.value !== "object" || next.value === null) continue;
    if (next.depth >= DEEPEST) return true;
    for (const value of Object.values(next.value)) open.push({ value, depth: next.depth + 1 });
  }
  return false;
}
