import { RAD_PER_DEG } from "../angle.ts";
import { toGrid } from "../grid.ts";
import { requireRange, requireSameLength } from "../require.ts";
import { zeros } from "../zeros.ts";
import type { ClearSky } from "./clearSky.ts";
import type { DayLight } from "./dayClearIndex.ts";
import { RIDLEY, ridleyBase, ridleyBeamShare } from "./ridleyBeam.ts";

/** The light that arrives if nothing on the ground stands in its way; one value per step, W/m². */
export interface SkyLight {
  /** On the level: `dhiWm2 + dniWm2 × sinElevation`. */
  readonly ghiWm2: Float64Array;
  /** Beam, on a surface that faces the sun. */
  readonly dniWm2: Float64Array;
  /** Sky, on the level. */
  readonly dhiWm2: Float64Array;
}

/**
 * Room for the light of so many steps, all dark.
 * @param spare whose memory is taken where it fits
 */
export function makeSkyLight(steps: number, spare?: SkyLight): SkyLight {
  return {
    ghiWm2: zeros(steps, spare?.ghiWm2),
    dniWm2: zeros(steps, spare?.dniWm2),
    dhiWm2: zeros(steps, spare?.dhiWm2),
  };
}

/** What the split depends on besides the cloud, step by step in daylight: worked out once, used by every member. */
export interface PreparedSplit {
  /** The steps with light, and those without, in order. */
  readonly lit: Int32Array;
  readonly dark: Int32Array;
  /** `SPLIT_SLOTS` numbers per lit step, in the places named below. */
  readonly rows: Float64Array;
  /** Of each lit step, its day. */
  readonly dayOfLit: Int32Array;
  /**
   * Of each lit step, the lit step an hour earlier and the one an hour later on the same day; where there is none, the other of the two,
   * else itself.
   */
  readonly before: Int32Array;
  readonly after: Int32Array;
  /** Room for one member: clearness of each lit step. */
  readonly kt: Float64Array;
}

/** The clear sky's light on the level, W/m². */
const CLEAR_GHI_WM2 = 0;
const CLEAR_DNI_WM2 = 1;
/** That light over what would arrive without air. */
const CLEAR_KT = 2;
const SIN_ELEVATION = 3;
/** All of the clear sky's light as if it came from the sun, W/m². */
const ALL_BEAM_WM2 = 4;
/** The most beam that clean air lets through, W/m². */
const CLEANEST_DNI_WM2 = 5;
/** What the sun's height, and a cloudless day, add to the sum of `RIDLEY`. */
const BASE = 6;
const CLEAR_DAY = 7;
/** Cloudless clearness of the two neighbours together. */
const CLEAR_NEIGHBOURS_KT = 8;
const SPLIT_SLOTS = 9;

/** A cloudless sky dimmer than this says nothing of its hour's neighbours. */
const DIM_WM2 = 1;
/** A sky of whose indices one is this far below or above 1 is no longer the clear sky's own. */
const CLEAR_DOWN_TO = 0.08;
const CLEAR_UP_TO = 0.05;

/**
 * @param clear from `clearSky`
 * @param days from `dayLight`, of the same steps
 * @param stepH hours in a step
 */
export function prepareSplit(
  clear: ClearSky,
  days: Pick<DayLight, "dayOfStep" | "clearIndexPerKt">,
  stepH: number,
): PreparedSplit {
  requireSameLength({ ghiWm2: clear.ghiWm2, dayOfStep: days.dayOfStep });
  requireRange({ stepH }, 1 / 3600, 24);
  const isLit = (i: number) => clear.ghiWm2[i]! > 0 && clear.sinElevation[i]! > 0;
  const steps = [...clear.ghiWm2.keys()];
  const lit = Int32Array.from(steps.filter(isLit));
  const placeOf = new Map(Array.from(lit, (step, j) => [step, j]));
  const hour = Math.max(1, Math.round(1 / stepH));
  const rows = new Float64Array(lit.length * SPLIT_SLOTS);
  const before = new Int32Array(lit.length);
  const after = new Int32Array(lit.length);
  lit.forEach((i, j) => {
    const day = days.dayOfStep[i]!;
    const neighbour = (step: number) =>
      days.dayOfStep[step] === day && clear.ghiWm2[step]! > DIM_WM2 ? placeOf.get(step) : undefined;
    before[j] = neighbour(i - hour) ?? neighbour(i + hour) ?? j;
    after[j] = neighbour(i + hour) ?? before[j]!;
    const ghi = clear.ghiWm2[i]!;
    const sinElevation = clear.sinElevation[i]!;
    const aboveWm2 = clear.extraterrestrialWm2[i]!;
    const clearIndexPerKt = days.clearIndexPerKt[day]!;
    const at = j * SPLIT_SLOTS;
    rows[at + CLEAR_GHI_WM2] = ghi;
    rows[at + CLEAR_DNI_WM2] = clear.dniWm2[i]!;
    rows[at + CLEAR_KT] = ghi / (aboveWm2 * sinElevation);
    rows[at + SIN_ELEVATION] = sinElevation;
    rows[at + ALL_BEAM_WM2] = ghi / sinElevation;
    rows[at + CLEANEST_DNI_WM2] = Math.max(clear.dniWm2[i]!, cleanestBeamShare(sinElevation) * aboveWm2);
    rows[at + BASE] = ridleyBase(Math.asin(Math.min(1, sinElevation)) / RAD_PER_DEG);
    rows[at + CLEAR_DAY] = clearIndexPerKt > 0 ? toGrid(RIDLEY.perDayKt / clearIndexPerKt) : 0;
  });
  lit.forEach((_, j) => {
    rows[j * SPLIT_SLOTS + CLEAR_NEIGHBOURS_KT] =
      rows[before[j]! * SPLIT_SLOTS + CLEAR_KT]! + rows[after[j]! * SPLIT_SLOTS + CLEAR_KT]!;
  });
  return {
    lit,
    dark: Int32Array.from(steps.filter((i) => !isLit(i))),
    rows,
    dayOfLit: lit.map((step) => days.dayOfStep[step]!),
    before,
    after,
    kt: new Float64Array(lit.length),
  };
}

/**
 * What of the beam above the air the cleanest air lets through.
 * @param sinElevation above 0
 * @see A. Skartveit, J. A. Olseth, M. E. Tuft, An hourly diffuse fraction model with correction for variability and surface albedo, Solar Energy 63 (1998) 173–183
 */
export function cleanestBeamShare(sinElevation: number): number {
  return toGrid(0.81 ** ((1 / sinElevation) ** 0.6));
}

/**
 * Clouds a clear sky over: from how bright each step is to its beam and its sky light, the clear sky's own where the step, the hours
 * beside it and the day are all as bright as that, and always `dhi + dni × sinElevation = ghi`.
 *
 * Elsewhere the beam is that of Ridley, Boland and Lauret (`ridleyBeam`). Between the two lies how far that one of the three indices (the step's, the
 * mean of its neighbours', the day's) is from 1 which is farthest from it: a step that is as bright as the clear sky between duller or brighter
 * ones is no clear sky. A step that is brighter than the clear sky while one of the others
 * is not has at most the clear sky's beam: what bright cloud edges add is light from the sky. Where all three are brighter,
 * the air is cleaner than was assumed, and the beam goes up to what clean air lets through.
 *
 * How it compares with other published models stands in docs/model.md and is worked out by tests/truth/sky/separation.test.ts.
 * @param dayIndex GHI of each day over its clear sky's, 0 or more
 * @param clearIndex GHI over the clear sky's, one value per step, 0 or more
 * @param out where the result goes; as many steps as were prepared
 * @memberLoop
 */
export function splitPrepared(
  { lit, dark, rows, dayOfLit, before, after, kt }: PreparedSplit,
  dayIndex: Float64Array,
  clearIndex: Float64Array,
  out: SkyLight,
): void {
  const { ghiWm2, dniWm2, dhiWm2 } = out;
  for (let k = 0; k < dark.length; k++) {
    const i = dark[k]!;
    ghiWm2[i] = 0;
    dniWm2[i] = 0;
    dhiWm2[i] = 0;
  }
  for (let j = 0; j < lit.length; j++) {
    kt[j] = Math.max(0, clearIndex[lit[j]!]!) * rows[j * SPLIT_SLOTS + CLEAR_KT]!;
  }
  for (let j = 0, at = 0; j < lit.length; j++, at += SPLIT_SLOTS) {
    const i = lit[j]!;
    const index = Math.max(0, clearIndex[i]!);
    const ofDay = dayIndex[dayOfLit[j]!]!;
    const neighbours = kt[before[j]!]! + kt[after[j]!]!;
    const sum =
      rows[at + BASE]! +
      RIDLEY.perHourKt * kt[j]! +
      (RIDLEY.perNeighbourKt / 2) * neighbours +
      rows[at + CLEAR_DAY]! * ofDay;
    const all = index * rows[at + ALL_BEAM_WM2]!;
    const clearDni = rows[at + CLEAR_DNI_WM2]!;
    const beside = neighbours / rows[at + CLEAR_NEIGHBOURS_KT]!;
    const least = Math.min(index, Math.min(ofDay, beside));
    const greatest = Math.max(index, Math.max(ofDay, beside));
    let dni = all * ridleyBeamShare(sum);
    const most = least < 1 ? clearDni : rows[at + CLEANEST_DNI_WM2]!;
    if (dni > most) dni = most;
    const ownShare = 1 - Math.max((1 - least) / CLEAR_DOWN_TO, (greatest - 1) / CLEAR_UP_TO);
    if (ownShare > 0) {
      dni = ownShare * clearDni + (1 - ownShare) * dni;
      if (dni > all) dni = all;
    }
    const ghi = index * rows[at + CLEAR_GHI_WM2]!;
    ghiWm2[i] = ghi;
    dniWm2[i] = dni;
    dhiWm2[i] = Math.max(0, ghi - dni * rows[at + SIN_ELEVATION]!);
  }
}

/**
 * `splitPrepared` for a single sky, of whose days nothing is known but their steps.
 * @param days from `dayLight`
 */
export function splitDiffuse(
  clear: ClearSky,
  days: Pick<DayLight, "dayOfStep" | "clearIndexPerKt">,
  stepH: number,
  clearIndex: Float64Array,
  out: SkyLight,
): void {
  splitPrepared(prepareSplit(clear, days, stepH), indexOfDays(clear, days, clearIndex), clearIndex, out);
}

/** The clear-sky index of each day, as far as the steps go. */
function indexOfDays(
  { ghiWm2 }: ClearSky,
  { dayOfStep, clearIndexPerKt }: Pick<DayLight, "dayOfStep" | "clearIndexPerKt">,
  clearIndex: Float64Array,
): Float64Array {
  const light = new Float64Array(clearIndexPerKt.length);
  const clear = new Float64Array(clearIndexPerKt.length);
  for (let i = 0; i < clearIndex.length; i++) {
    light[dayOfStep[i]!]! += clearIndex[i]! * ghiWm2[i]!;
    clear[dayOfStep[i]!]! += ghiWm2[i]!;
  }
  return light.map((wm2, day) => (clear[day]! > 0 ? wm2 / clear[day]! : 0));
}
