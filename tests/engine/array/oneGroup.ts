import type * as z from "zod";
import type { SampleGrid } from "../../../engine/array/modulePoints.ts";
import type { PreparedGroup } from "../../../engine/array/preparedGroup.ts";
import { prepareGroup } from "../../../engine/array/prepareGroup.ts";
import { prepareDome } from "../../../engine/array/skyDome.ts";
import { BEAM_IS_FREE, MEAN_SHARE, SECTION_SHARE } from "../../../engine/array/slots.ts";
import { Models } from "../../../engine/scenario/models.ts";
import { Obstacle } from "../../../engine/scenario/obstacle.ts";
import { PanelGroup } from "../../../engine/scenario/panelGroup.ts";
import type { TimeGrid } from "../../../engine/scenario/timeGrid.ts";
import { prepareObstacles } from "../../../engine/shade/prepareObstacles.ts";

type GroupInput = z.input<typeof PanelGroup>;

/** A group of one level 100 W module with air all round, no losses and a perfect controller on a cable of no length. */
export function panelGroup(changes: Partial<GroupInput> = {}): PanelGroup {
  return PanelGroup.parse({
    id: "panels",
    name: "Panels",
    count: 1,
    module: { ratedW: 100, vmpV: 20, impA: 5, vocV: 24, iscA: 5.3, bypassSections: 3, lengthM: 1, widthM: 0.6 },
    mount: { kind: "flat" },
    at: { eastM: 0, northM: 0, heightM: 1 },
    cooling: "openRack",
    losses: [],
    controller: perfect(),
    ...changes,
  });
}

/** A controller that loses nothing, with no cable. */
export function perfect(changes: Partial<NonNullable<GroupInput["controller"]>> = {}) {
  return { efficiencyShare: 1, cable: { awg: "10", oneWayM: 0, tempC: 25 }, stepDownOnly: false, ...changes } as const;
}

/** A grid whose step `i` has its middle at the given local minute of local day 0, 1, … */
export function gridAt(localMinute: readonly number[], stepMinutes = 10): TimeGrid {
  const steps = localMinute.length;
  let day = 0;
  const days = localMinute.map((minute, i) => {
    if (i > 0 && minute < localMinute[i - 1]!) day++;
    return day;
  });
  return {
    zone: "UTC",
    startMs: 0,
    stepMs: stepMinutes * 60_000,
    stepH: stepMinutes / 60,
    steps,
    middleMs: Float64Array.from(localMinute, (minute, i) => (days[i]! * 1440 + minute) * 60_000),
    localMinute: Float64Array.from(localMinute),
    startMinute: (localMinute[0] ?? 0) - stepMinutes / 2,
    localDay: Int32Array.from(days),
    localWeekday: new Int32Array(steps),
    dates: [],
  };
}

/** Where the sun stands in one step, and what is known of the air. */
export interface Moment {
  readonly sunAzimuthDeg: number;
  readonly sunElevationDeg: number;
  readonly extraterrestrialWm2?: number;
  readonly windMs?: number;
}

/** Prepares a group for moments that each have the sun where the test wants it. */
export function preparedAt(
  group: PanelGroup,
  moments: readonly Moment[],
  options: {
    obstacles?: readonly z.input<typeof Obstacle>[];
    models?: z.input<typeof Models>;
    grid?: TimeGrid;
    sampleGrid?: SampleGrid;
  } = {},
): PreparedGroup {
  const models = Models.parse(options.models ?? {});
  const elevationDeg = Float64Array.from(moments, (moment) => moment.sunElevationDeg);
  const extraterrestrialWm2 = Float64Array.from(moments, (moment) => moment.extraterrestrialWm2 ?? 1361);
  return prepareGroup(
    group,
    prepareObstacles((options.obstacles ?? []).map((obstacle) => Obstacle.parse(obstacle))),
    models,
    options.grid ?? gridAt(moments.map((_, i) => i * 10 + 5)),
    { azimuthDeg: Float64Array.from(moments, (moment) => moment.sunAzimuthDeg), elevationDeg },
    prepareDome(models.transposition, elevationDeg, extraterrestrialWm2),
    Float64Array.from(moments, (moment) => moment.windMs ?? 1),
    options.sampleGrid,
  );
}

/**
 * Lays shade of one's own on a step.
 * @param sections from bright to dark
 */
export function shadeStep(group: PreparedGroup, i: number, sections: readonly number[], meanShare?: number): void {
  const at = i * group.stride;
  group.perStep[at + BEAM_IS_FREE] = 0;
  group.perStep.set(sections, at + SECTION_SHARE);
  if (meanShare !== undefined) group.perStep[at + MEAN_SHARE] = meanShare;
}

/** The same light in every step. */
export function steadyLight(steps: number, ghiWm2: number, dniWm2: number, dhiWm2: number) {
  return {
    ghiWm2: new Float64Array(steps).fill(ghiWm2),
    dniWm2: new Float64Array(steps).fill(dniWm2),
    dhiWm2: new Float64Array(steps).fill(dhiWm2),
  };
}
