import { type EventTime, whyNoTime } from "../../../engine/answers/readings/localTime.ts";
import { readingSchema } from "../../../engine/learn/readingSchema.ts";
import type { EntryDoc } from "../../../engine/notebook/notebook.ts";
import { typedNumber } from "../../words/typedNumber.ts";

export type KeptReading = EntryDoc<"readings">["readings"][number];
export type SkyWord = NonNullable<KeptReading["sky"]>["word"];

const FIELDS = readingSchema().properties!;

/** A field as it is asked for: what it is called, and its limits as they are typed. */
function asked(key: "chargeShare" | "outAh" | "restV" | "errorShare" | "panelsW" | "loadA") {
  const { label, quantity } = FIELDS[key]!;
  const { unit, low, high } = quantity!;
  const typed = (value: number) => (key.endsWith("Share") ? Number((100 * value).toPrecision(6)) : value);
  return { label: label!, unit: key.endsWith("Share") ? "%" : unit, low: typed(low), high: typed(high) };
}

const CHARGE = asked("chargeShare");

/** The three ways in which a charge is read. */
export const WAYS = [
  { way: "chargeShare", ...CHARGE, label: `${CHARGE.label}, %` },
  { way: "outAh", ...asked("outAh") },
  { way: "restV", ...asked("restV") },
] as const;
export type Way = (typeof WAYS)[number]["way"];

/** A reading while it is being typed: text, as typed. */
export interface ReadingDraft {
  readonly at: string;
  readonly way: Way;
  readonly charge: string;
  readonly error: string;
  readonly panelsW: string;
  readonly loadA: string;
  readonly skyDate: string;
  readonly skyWord: SkyWord | "";
  readonly by: string;
  readonly note: string;
}

export function emptyDraft(at: string, by: string): ReadingDraft {
  return {
    at,
    by,
    way: "chargeShare",
    charge: "",
    error: "",
    panelsW: "",
    loadA: "",
    skyDate: "",
    skyWord: "",
    note: "",
  };
}

/** A kept reading, taken up again to be put right. */
export function draftOf(reading: KeptReading): ReadingDraft {
  const { way } = WAYS.find((each) => reading[each.way] !== undefined) ?? WAYS[0];
  const value = reading[way];
  const plain = (number: number | undefined) => (number === undefined ? "" : String(Number(number.toPrecision(6))));
  return {
    at: reading.at,
    way,
    charge: plain(value === undefined || way !== "chargeShare" ? value : 100 * value),
    error: plain(reading.errorShare === undefined ? undefined : 100 * reading.errorShare),
    panelsW: plain(reading.panelsW),
    loadA: plain(reading.loadA),
    skyDate: reading.sky?.date ?? "",
    skyWord: reading.sky?.word ?? "",
    by: reading.by ?? "",
    note: reading.note ?? "",
  };
}

export type DraftRead =
  | { readonly ok: true; readonly reading: KeptReading }
  | { readonly ok: false; readonly sentence: string };

/** A draft as a reading, or the first thing that is wrong with it. @param enteredAt when it is typed in, as text */
export function readingOf(draft: ReadingDraft, event: EventTime, enteredAt: string): DraftRead {
  const way = WAYS.find((each) => each.way === draft.way)!;
  try {
    const charge = numberIn(draft.charge, way);
    const error = numberIn(draft.error, { ...asked("errorShare"), unit: "% of a full bank" });
    const panelsW = numberIn(draft.panelsW, asked("panelsW"));
    const loadA = numberIn(draft.loadA, asked("loadA"));
    const hasSky = draft.skyWord !== "" && draft.skyDate !== "";
    if (charge === undefined && panelsW === undefined && loadA === undefined && !hasSky) {
      return { ok: false, sentence: `Nothing is read yet: give the ${way.label}, or something under “More”.` };
    }
    const noTime = whyNoTime(event, draft.at);
    if (noTime !== null) return { ok: false, sentence: noTime };
    if (hasSky && draft.skyDate > draft.at.slice(0, 10)) {
      return { ok: false, sentence: "The sky of a day can be told once that day has come; choose an earlier day." };
    }
    const [by, note] = [draft.by.trim().slice(0, 80), draft.note.trim().slice(0, 1000)];
    return {
      ok: true,
      reading: {
        at: draft.at,
        ...(charge === undefined ? {} : { [way.way]: way.way === "chargeShare" ? charge / 100 : charge }),
        ...(error === undefined || charge === undefined || way.way === "restV" ? {} : { errorShare: error / 100 }),
        ...(panelsW === undefined ? {} : { panelsW }),
        ...(loadA === undefined ? {} : { loadA }),
        ...(hasSky ? { sky: { date: draft.skyDate, word: draft.skyWord as SkyWord } } : {}),
        ...(by === "" ? {} : { by }),
        enteredAt,
        ...(note === "" ? {} : { note }),
      },
    };
  } catch (error) {
    if (error instanceof RangeError) return { ok: false, sentence: error.message };
    throw error;
  }
}

function numberIn(text: string, { label, low, high, unit }: ReturnType<typeof asked>): number | undefined {
  if (text.trim() === "") return undefined;
  const value = typedNumber(text);
  if (typeof value === "number" && value >= low && value <= high) return value;
  throw new RangeError(`${label} is "${text.trim()}" but must be a number from ${low} to ${high} ${unit}; correct it.`);
}
