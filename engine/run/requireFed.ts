import type { PreparedGroup } from "../array/preparedGroup.ts";
import type { PreparedBank } from "../bank/prepareBank.ts";
import { EngineFault, MemberFault } from "../fault.ts";
import type { PreparedLoads } from "../load/prepareLoads.ts";
import type { TimeGrid } from "../scenario/timeGrid.ts";
import type { ClearSky } from "../sky/clearSky.ts";
import type { SkyLight } from "../sky/splitDiffuse.ts";
import type { SunTrack } from "../sky/sunTrack.ts";
import type { MemberInputs } from "./memberInputs.ts";

/**
 * What runs are fed has to be numbers, on days that own steps: NaN compares as false everywhere and would come out as a plan that fails, or holds,
 * without a word. Each of these adds up what it looks at, since a sum is a number only if all its parts are, and looks for the place only then.
 */

/** What `Prepared` has of numbers per step. */
interface Fed {
  readonly grid: TimeGrid;
  readonly sun: SunTrack;
  readonly clear: ClearSky;
  readonly light: SkyLight;
  readonly airTempC: Float64Array;
  readonly windMs: Float64Array;
  readonly loads: PreparedLoads;
  readonly bank: PreparedBank;
  readonly groups: readonly PreparedGroup[];
  readonly inputs: MemberInputs;
}

/** @throws EngineFault naming the step, if a day of the calendar owns no step or a number per step is none */
export function requireFed({ grid, sun, clear, light, airTempC, windMs, loads, bank, groups, inputs }: Fed): void {
  requireDays(grid);
  const perStep: Record<string, Float64Array> = {
    "height of the sun": sun.elevationDeg,
    "bearing of the sun": sun.azimuthDeg,
    "cloudless light": clear.ghiWm2,
    "cloudless beam": clear.dniWm2,
    "cloudless light of the sky": clear.dhiWm2,
    light: light.ghiWm2,
    beam: light.dniWm2,
    "light of the sky": light.dhiWm2,
    air: airTempC,
    wind: windMs,
    "temperature of the bank": bank.tempC,
    "charge out of reach": bank.floorAh,
    "wanted power": loads.wantedW,
    "power between transmissions": loads.quietW,
    "power wanted of the bank": inputs.wantedW,
  };
  for (const [what, values] of Object.entries(perStep)) requireNumbers(what, values, 1);
  for (const { id, perStep: rows, stride, crowns, crownStride } of groups) {
    requireNumbers(`panel group ${id}`, rows, stride);
    requireNumbers(`crowns over panel group ${id}`, crowns, 2 * crownStride);
  }
}

function requireDays({ localDay, dates, steps }: TimeGrid): void {
  let day = -1;
  for (let i = 0; i < steps; i++) {
    if (localDay[i] === day) continue;
    if (localDay[i] !== ++day)
      throw new EngineFault(`step ${i} begins on day ${localDay[i]}, and day ${day} owns no step`);
  }
  if (day + 1 !== dates.length) throw new EngineFault(`${dates.length} days in the calendar, but ${day + 1} own steps`);
}

/** @param stride values for each step */
function requireNumbers(what: string, values: Float64Array, stride: number): void {
  let sum = 0;
  for (let k = 0; k < values.length; k++) sum += values[k]!;
  if (Number.isFinite(sum)) return;
  const at = values.findIndex((value) => !Number.isFinite(value));
  throw new EngineFault(`${what} of step ${Math.floor(at / stride)} is ${values[at]}, before any member is drawn`);
}

/**
 * @throws MemberFault naming seed, member and step, if the light or the air that a member meets is no number
 * @memberLoop
 */
export function requireFedSky(seed: string, member: number, light: SkyLight, airTempC: Float64Array): void {
  const { ghiWm2, dniWm2, dhiWm2 } = light;
  let level = 0;
  let beam = 0;
  let sky = 0;
  let air = 0;
  for (let i = 0; i < airTempC.length; i++) {
    level += ghiWm2[i]!;
    beam += dniWm2[i]!;
    sky += dhiWm2[i]!;
    air += airTempC[i]!;
  }
  if (Number.isFinite(level + beam + sky + air)) return;
  requireMemberNumbers(seed, member, "light", ghiWm2);
  requireMemberNumbers(seed, member, "beam", dniWm2);
  requireMemberNumbers(seed, member, "light of the sky", dhiWm2);
  requireMemberNumbers(seed, member, "air", airTempC);
}

/**
 * @throws MemberFault naming seed, member and step, if what a member's gear wants or how far its figures are off is no number
 * @memberLoop
 */
export function requireFedLoads(seed: string, member: number, { wantedW, figures }: MemberInputs): void {
  let wanted = 0;
  for (let i = 0; i < wantedW.length; i++) wanted += wantedW[i]!;
  if (!Number.isFinite(wanted)) requireMemberNumbers(seed, member, "wanted power", wantedW);
  for (let f = 0; f < figures.length; f++) {
    if (Number.isFinite(figures[f]!)) continue;
    throw new MemberFault(seed, member, `its figure ${f} is ${figures[f]}, before the first step`);
  }
}

/** @memberLoop */
function requireMemberNumbers(seed: string, member: number, what: string, values: Float64Array): void {
  for (let i = 0; i < values.length; i++) {
    if (Number.isFinite(values[i]!)) continue;
    throw new MemberFault(seed, member, `the ${what} of step ${i} is ${values[i]}`);
  }
}
