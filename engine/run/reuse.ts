/**
 * Hands out what was prepared before from equal parts of a scenario, or prepares it. What it hands out is shared: nobody writes into
 * it, except into scratch that each member writes over.
 * @param what a name for the kind of thing; @param of everything that decides it, as plain data, or objects that are the same one
 */
export type Reuse = <T>(what: string, of: readonly unknown[], prepare: () => T) => T;

/** Prepares everything each time. */
export const prepareEachTime: Reuse = (_what, _of, prepare) => prepare();

/**
 * Keeps the last things prepared, for one thread: scenarios that differ in the bank share their sky and their panels.
 * @param most things kept; those not asked for longest go first
 */
export function makeReuse(most: number): Reuse {
  const kept = new Map<string, unknown>();
  return <T>(what: string, of: readonly unknown[], prepare: () => T): T => {
    const key = `${what} ${JSON.stringify(of)}`;
    const known = kept.get(key);
    if (known !== undefined) {
      kept.delete(key);
      kept.set(key, known);
      return known as T;
    }
    const made = prepare();
    kept.set(key, made);
    const oldest = kept.keys().next().value;
    if (kept.size > most && oldest !== undefined) kept.delete(oldest);
    return made;
  };
}

let lastNumber = 0;
const numbers = new WeakMap<object, number>();

/** A number that stands for one object and no other, for tables too large to be compared. */
export function identityOf(object: object | null | undefined): number {
  if (object == null) return 0;
  const known = numbers.get(object) ?? ++lastNumber;
  numbers.set(object, known);
  return known;
}
