import { createSignal } from "solid-js";
import {
  GENERIC_GEAR,
  gearDoubt,
  type Measurement,
  measuredDoubts,
  type OwnGear,
  onShelf,
  ownGearId,
  readMeasuredGear,
} from "../../engine/gear/index.ts";

/** The part of localStorage that is needed here; null where the browser keeps nothing. */
export type MeasuredStore = Pick<Storage, "getItem" | "setItem"> | null;

const KEY = "duskline.gear";

/** What is kept: figures of the shelf's kinds, and kinds of one's own. */
interface Kept {
  readonly measured: readonly Measurement[];
  readonly own: readonly OwnGear[];
}

const textOf = ({ measured, own }: Kept) =>
  JSON.stringify({ format: "duskline-gear", version: 1, measured, ...(own.length > 0 ? { own } : {}) }, null, 2);

/**
 * What somebody measured of their gear, and kinds of gear of their own: of the browser and of no notebook, so that each new plan starts from it.
 * @param today "2026-05-31", written beside a figure
 */
export function makeMeasured(store: MeasuredStore, today: () => string) {
  const [kept, setKeptGear] = createSignal<Kept>(stored());
  const [isKept, setKept] = createSignal(store !== null);

  function stored(): Kept {
    const text = store?.getItem(KEY);
    const read = text == null ? null : readMeasuredGear(text);
    return read?.ok === true ? { measured: read.measured, own: read.own } : { measured: [], own: [] };
  }

  function put(change: Partial<Kept>): void {
    const next = { ...kept(), ...change };
    setKeptGear(next);
    try {
      store?.setItem(KEY, textOf(next));
      setKept(store !== null);
    } catch {
      setKept(false);
    }
  }

  return {
    measured: (): readonly Measurement[] => kept().measured,
    /** Own kinds as they stand on the shelf. */
    own: () => kept().own.map(onShelf),
    /** Whether there is anything to save. */
    isEmpty: () => kept().measured.length === 0 && kept().own.length === 0,
    /** False where the browser keeps nothing: a file can. */
    isKept,
    of: (gear: string): Measurement | undefined => kept().measured.find((each) => each.gear === gear),
    /** Writes one figure down, or away when it is null. @param isConfirmed whether it was asked about, and is so */
    write(gear: string, which: "idle" | "working", value: number | null, isConfirmed = false): void {
      const before = kept().measured.find((each) => each.gear === gear) ?? { gear };
      const { [which]: _, on: __, isConfirmed: ___, ...rest } = before;
      const next: Measurement = { ...rest, gear, ...(value === null ? {} : { [which]: value }) };
      const others = kept().measured.filter((each) => each.gear !== gear);
      const isEmpty = next.idle === undefined && next.working === undefined;
      const isOdd = isConfirmed || ("isConfirmed" in before && measuredDoubts([next]).length > 0);
      const confirmed = isOdd ? { isConfirmed: true } : {};
      put({ measured: isEmpty ? others : [...others, { ...next, ...confirmed, on: today() }] });
    },
    /** What is asked about a figure before it is written down; null where there is nothing to ask. */
    doubt: (gear: string, which: "idle" | "working", value: number): string | null => {
      const kind = GENERIC_GEAR.find(({ id }) => id === gear);
      return kind === undefined ? null : gearDoubt(kind, which, value);
    },
    /** Puts a kind of one's own on the shelf, or in the place of the one of that name. */
    addOwn(kind: Omit<OwnGear, "id">): void {
      const same = kept().own.find(({ name }) => name === kind.name);
      const taken = kept().own.map(({ id }) => id);
      const next = { ...kind, id: same?.id ?? ownGearId(kind.name, taken) };
      put({ own: [...kept().own.filter(({ id }) => id !== next.id), next] });
    },
    removeOwn: (id: string): void => put({ own: kept().own.filter((each) => each.id !== id) }),
    /** Takes a file in: its figures go before those that were here, which stay where it has none. @returns what came of it */
    takeIn(text: string): string {
      const read = readMeasuredGear(text);
      if (!read.ok) return read.sentences.join(" ");
      const doubts = measuredDoubts(read.measured);
      if (doubts.length > 0)
        return `${doubts.join(" ")} Nothing was taken in: correct the file, or write "isConfirmed": true beside what is so.`;
      const named = new Set(read.measured.map(({ gear }) => gear));
      const ids = new Set(read.own.map(({ id }) => id));
      put({
        measured: [...kept().measured.filter(({ gear }) => !named.has(gear)), ...read.measured],
        own: [...kept().own.filter(({ id }) => !ids.has(id)), ...read.own],
      });
      const kinds = read.own.length === 0 ? "" : ` and ${read.own.length} own kinds`;
      return `Measured figures of ${read.measured.length} kinds of gear${kinds} are on the shelf.`;
    },
    text: () => `${textOf(kept())}\n`,
    /** Looks again at what is kept, as after another tab has written. */
    refresh: () => setKeptGear(stored()),
  };
}
