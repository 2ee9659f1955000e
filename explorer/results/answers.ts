import type {
  Bands,
  Burden,
  DriversReport,
  Odds,
  OddsReport,
  PairedDifference,
  SizeOption,
  SizeReport,
} from "../../engine/index.ts";
import type { Span } from "../time/quietSpans.ts";
import type { Ruler } from "../time/ruler.ts";

/** What stands on the ruler whatever is drawn: dates, nights, and the steps of the event. */
export interface TimePicture {
  readonly ruler: Ruler;
  readonly nights: readonly Span[];
  /** Hours in which no generator may run. */
  readonly quiet: readonly Span[];
  readonly startMs: number;
  readonly stepMs: number;
  readonly steps: number;
}

/** An ensemble as the page shows it: plain numbers that a worker can hand over. */
export interface OddsPicture extends TimePicture {
  readonly members: number;
  readonly fullAh: number;
  readonly reserveShare: number;
  readonly report: Omit<OddsReport, "charge" | "solarW" | "loadW">;
  readonly charge: Bands;
  readonly solarW: Bands;
  readonly loadW: Bands;
  readonly remarks: readonly string[];
}

/** Charge that the second scenario has put by more than the first, Ah, at each step's start and at the end. */
export interface PairedBands {
  readonly p5: Float64Array;
  readonly p50: Float64Array;
  readonly p95: Float64Array;
}

export interface Side {
  readonly holds: Odds;
  readonly dark: Odds;
  readonly lowestShare: OddsReport["lowestShare"];
  readonly solarWh: OddsReport["solarWh"];
  readonly unservedWh: OddsReport["unservedWh"];
  readonly burden: Burden;
}

/** Two scenarios held against one another, member by member. */
export interface VersusPicture {
  readonly time: TimePicture;
  readonly members: number;
  readonly first: Side;
  readonly second: Side;
  readonly holds: PairedDifference;
  readonly margin: PairedDifference;
  readonly tally: {
    readonly both: number;
    readonly onlySecond: number;
    readonly onlyFirst: number;
    readonly neither: number;
  };
  /** Null where the two do not last equally long. */
  readonly paired: PairedBands | null;
}

/** A map of the odds over two numbers, in figures and in words. */
export interface SizePicture {
  readonly report: SizeReport;
  /** Each cell in words, row by row. */
  readonly cellWords: readonly (readonly string[])[];
  /** The answer; the cells that it names, numbered on the map; and what else there is to say. */
  readonly answer: string;
  readonly options: readonly SizeOption[];
  readonly more: readonly string[];
  /** What a bigger bank or more panels would change and the map leaves as stated, in sentences. */
  readonly fixed: readonly string[];
  readonly remarks: readonly string[];
}

/** What the outcome hangs on. */
export interface DriversPicture {
  readonly report: DriversReport;
  readonly remarks: readonly string[];
}
