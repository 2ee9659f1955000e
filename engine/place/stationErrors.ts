import { clamp, r1OfKt, sdOfKt } from "./clearnessLaws.ts";
import type { ClimateStation } from "./climateTables.ts";

/** How one quantity errs where nobody has measured it: by how much (standard deviation), and over which distance its error is the same. */
export interface ErrorModel {
  readonly background: number;
  readonly reachKm: number;
  /** Error of a station's own value, and what of it all stations of its source have in common. */
  readonly station: (source: ClimateStation) => { readonly own: number; readonly shared: number };
}

/** Stations with fewer years than this stand for one typical year. */
const MANY_YEARS = 10;

/** By source: a typical year worked out from cloud reports, a satellite's cell, a measured record. Own, shared. */
type Pair = readonly [own: number, shared: number];
function errorOf(typicalYear: Pair, cell: Pair, measured: Pair): ErrorModel["station"] {
  return ({ src, years }) => {
    const [own, shared] = src.startsWith("power") ? cell : years < MANY_YEARS ? typicalYear : measured;
    return { own, shared };
  };
}

/** Found by leaving out each measured record in turn; docs/fits/climate.md. Kt, its spread, its correlation from day to day. */
export const KT_ERRORS: ErrorModel = {
  background: 0.045,
  reachKm: 300,
  station: errorOf([0.03, 0.025], [0.02, 0.01], [0.006, 0]),
};
export const SD_ERRORS: ErrorModel = {
  background: 0.02,
  reachKm: 600,
  station: errorOf([0.025, 0.01], [0.012, 0.005], [0.005, 0]),
};
export const R1_ERRORS: ErrorModel = {
  background: 0.08,
  reachKm: 800,
  station: errorOf([0.13, 0.03], [0.04, 0.02], [0.02, 0]),
};

/** Typical years are worked out from cloud reports, which turn dull months too bright and bright ones too dull. */
const TURNS_AT_KT = 0.57;
const TYPICAL_YEAR_SLOPE = 1.3;
/** Both they and satellites' cells, each the mean of a whole degree, have less spread than a point, the less the duller the month. */
const SMOOTHED_UNDER_KT = 0.65;
const SMOOTHED_PER_KT = 0.9;
/** A single year's correlation is too low: means over 30 days take some of it away. */
const SHORT_RECORD_R1 = 0.03;

/** A station's monthly clearness as a record of measurements there would most likely have it; null where it has none. */
export function stationKt({ kt, src }: ClimateStation, month: number): number | null {
  const value = kt[month]!;
  if (value === null || src !== "tmy3") return value;
  return clamp(TURNS_AT_KT + TYPICAL_YEAR_SLOPE * (value - TURNS_AT_KT), 0.05, 0.85);
}

/** The same of the spread, as what it has over the law at the station. */
export function stationSdExcess(station: ClimateStation, month: number): number | null {
  const kt = station.kt[month]!;
  const sd = station.sd[month]!;
  if (kt === null || sd === null) return null;
  const isSmoothed = station.src === "tmy3" || station.src.startsWith("power");
  const widened = isSmoothed ? 1 + SMOOTHED_PER_KT * Math.max(0, SMOOTHED_UNDER_KT - kt) : 1;
  return sd * widened - sdOfKt(kt, station.lat, month);
}

/** The same of the correlation. */
export function stationR1Excess(station: ClimateStation, month: number): number | null {
  const kt = station.kt[month]!;
  const r1 = station.r1[month]!;
  if (kt === null || r1 === null) return null;
  return r1 + (station.years < MANY_YEARS ? SHORT_RECORD_R1 : 0) - r1OfKt(kt);
}
