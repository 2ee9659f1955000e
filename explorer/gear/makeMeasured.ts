import { createSignal } from "solid-js";
import { type Measurement, readMeasuredGear } from "../../engine/gear/index.ts";

/** The part of localStorage that is needed here; null where the browser keeps nothing. */
export type MeasuredStore = Pick<Storage, "getItem" | "setItem"> | null;

const KEY = "duskline.gear";

const textOf = (measured: readonly Measurement[]) =>
  JSON.stringify({ format: "duskline-gear", version: 1, measured }, null, 2);

/**
 * What somebody measured of their gear: of the browser and of no notebook, so that each new plan starts from it.
 * @param today "2026-05-31", written beside a figure
 */
export function makeMeasured(store: MeasuredStore, today: () => string) {
  const [measured, setMeasured] = createSignal<readonly Measurement[]>(kept());
  const [isKept, setKept] = createSignal(store !== null);

  function kept(): readonly Measurement[] {
    const text = store?.getItem(KEY);
    if (text == null) return [];
    const read = readMeasuredGear(text);
    return read.ok ? read.measured : [];
  }

  function put(next: readonly Measurement[]): void {
    setMeasured(next);
    try {
      store?.setItem(KEY, textOf(next));
      setKept(store !== null);
    } catch {
      setKept(false);
    }
  }

  return {
    measured,
    /** False where the browser keeps nothing: a file can. */
    isKept,
    of: (gear: string): Measurement | undefined => measured().find((each) => each.gear === gear),
    /** Writes one figure down, or away when it is null. */
    write(gear: string, which: "idle" | "working", value: number | null): void {
      const { [which]: _, on: __, ...rest } = measured().find((each) => each.gear === gear) ?? { gear };
      const next: Measurement = { ...rest, gear, ...(value === null ? {} : { [which]: value }) };
      const others = measured().filter((each) => each.gear !== gear);
      const isEmpty = next.idle === undefined && next.working === undefined;
      put(isEmpty ? others : [...others, { ...next, on: today() }]);
    },
    /** Takes a file in: its figures go before those that were here, which stay where it has none. @returns what came of it */
    takeIn(text: string): string {
      const read = readMeasuredGear(text);
      if (!read.ok) return read.sentences.join(" ");
      const named = new Set(read.measured.map(({ gear }) => gear));
      put([...measured().filter(({ gear }) => !named.has(gear)), ...read.measured]);
      return `Measured figures of ${read.measured.length} kinds of gear are on the shelf.`;
    },
    text: () => `${textOf(measured())}\n`,
    /** Looks again at what is kept, as after another tab has written. */
    refresh: () => setMeasured(kept()),
  };
}
