import { wrapLongitudeDeg } from "../../angle.ts";
import { mountTrack } from "../../array/mountTrack.ts";
import { prepareGroup } from "../../array/prepareGroup.ts";
import { prepareDome } from "../../array/skyDome.ts";
import { COS_INCIDENCE, MEAN_SHARE, OUT_SHARE } from "../../array/slots.ts";
import type { Span } from "../../ruler/quietSpans.ts";
import type { Ruler } from "../../ruler/ruler.ts";
import { rulerOf } from "../../ruler/rulerOf.ts";
import { eventLeafShare } from "../../scenario/leafShareOf.ts";
import type { Scenario } from "../../scenario/scenario.ts";
import { timeGrid } from "../../scenario/timeGrid.ts";
import { zoneOf } from "../../scenario/zoneOf.ts";
import { prepareObstacles } from "../../shade/prepareObstacles.ts";
import { nightSpans } from "../../sky/nightSpans.ts";
import { sunTrack } from "../../sky/sunTrack.ts";
import { AWAY, NIGHT, sunKind } from "./sunKind.ts";

/** What one panel group gets of the sun; one value per step. */
export interface GroupSun {
  readonly id: string;
  readonly name: string;
  /** Share of the sun's beam that reaches the modules, mean over them: 0…1. 0 by night, with the sun behind, packed away. */
  readonly share: Float64Array;
  /** One of `sunKind`'s. */
  readonly kind: Uint8Array;
  /** Where it faces, degrees; the same for all steps unless it is turned by hand. */
  readonly tiltDeg: Float64Array;
  readonly azimuthDeg: Float64Array;
}

/** Who sees the sun during an event; plain numbers, so that a worker can hand them over. */
export interface Sunlight {
  readonly ruler: Ruler;
  readonly nights: readonly Span[];
  /** Always empty: light asks nothing of generators. */
  readonly quiet: readonly Span[];
  readonly startMs: number;
  readonly stepMs: number;
  readonly steps: number;
  /** Day of the ruler, one per step. */
  readonly localDay: Int32Array;
  /** Groups that have modules. */
  readonly groups: readonly GroupSun[];
}

/**
 * Works out, step by step, how much of the sun's beam reaches each panel group: the engine's own shares, which depend on
 * the site and the calendar and not on the weather.
 * @returns null when the scenario's times cannot be laid on a clock
 */
export function sunlight(scenario: Scenario): Sunlight | null {
  const times = timeGrid(scenario.time, zoneOf(scenario.place));
  if (!times.ok) return null;
  const { grid } = times;
  const { latitudeDeg } = scenario.place;
  const longitudeDeg = wrapLongitudeDeg(scenario.place.longitudeDeg);
  const sun = sunTrack(latitudeDeg, longitudeDeg, grid.middleMs);
  const obstacles = prepareObstacles(scenario.obstacles, eventLeafShare(scenario));
  // The light of the sky costs most of the time and changes nothing here; nor do wind and the sun's distance.
  const models = { ...scenario.models, diffuseShade: "none" as const };
  const still = new Float64Array(grid.steps).fill(1);
  const dome = prepareDome(models.transposition, sun.elevationDeg, still);
  const ruler = rulerOf(grid.dates, grid.zone);
  return {
    ruler,
    nights: nightSpans(latitudeDeg, longitudeDeg, ruler.startMs, ruler.endMs),
    quiet: [],
    startMs: grid.startMs,
    stepMs: grid.stepMs,
    steps: grid.steps,
    localDay: grid.localDay,
    groups: scenario.panels
      .filter((group) => group.count > 0)
      .map((group): GroupSun => {
        const { perStep, stride } = prepareGroup(group, obstacles, models, grid, sun, dome, still);
        const { facings, facingAt } = mountTrack(group.mount, grid, sun);
        const share = new Float64Array(grid.steps);
        const kind = new Uint8Array(grid.steps);
        for (let i = 0; i < grid.steps; i++) {
          const at = i * stride;
          if (!(sun.elevationDeg[i]! > 0)) kind[i] = NIGHT;
          else if (!(perStep[at + COS_INCIDENCE]! > 0) || perStep[at + OUT_SHARE]! < 0.5) kind[i] = AWAY;
          else {
            share[i] = perStep[at + MEAN_SHARE]!;
            kind[i] = sunKind(share[i]!);
          }
        }
        return {
          id: group.id,
          name: group.name,
          share,
          kind,
          tiltDeg: Float64Array.from(facingAt, (f) => facings[f]!.tiltDeg),
          azimuthDeg: Float64Array.from(facingAt, (f) => facings[f]!.azimuthDeg),
        };
      }),
  };
}
