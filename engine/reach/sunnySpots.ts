import { RAD_PER_DEG, wrapLongitudeDeg } from "../angle.ts";
import { eventLeafShare } from "../scenario/leafShareOf.ts";
import type { Scenario } from "../scenario/scenario.ts";
import type { TimeGrid } from "../scenario/timeGrid.ts";
import { lightOnPoints, pointCloud } from "../shade/lightThrough.ts";
import { type PreparedObstacles, prepareObstacles } from "../shade/prepareObstacles.ts";
import { sunTrack } from "../sky/sunTrack.ts";

/** A place on the site, in metres from its middle, with what share of the sun's beam comes there over the event's middle day. */
export interface Spot {
  readonly eastM: number;
  readonly northM: number;
  readonly sunShare: number;
}

/** Between two places that are looked at, m. */
const STEP_M = 2;
/** A place is as good as the best within this share of it, and the nearest of those is taken. */
const AS_GOOD = 0.01;
const HOUR_MS = 3_600_000;
/** Between two looks at the sun, hours. */
const LOOK_H = 0.5;

/** Looks for sun on a site. */
export interface SunnySpots {
  /** Share of the beam that a place gets, weighed by how high the sun stands. */
  readonly shareAt: (eastM: number, northM: number, heightM: number) => number;
  /** The nearest of the sunniest places within some metres of a place; null where none is sunnier than that place itself. */
  readonly near: (eastM: number, northM: number, heightM: number, withinM: number) => Spot | null;
}

/** Looks for sun under a scenario's trees, walls and hills, on the day in the middle of its event: beam alone, without what the sky's own light adds. */
export function sunnySpots(scenario: Scenario, grid: TimeGrid): SunnySpots {
  const { latitudeDeg } = scenario.place;
  const middleMs = grid.startMs + (grid.steps * grid.stepMs) / 2;
  const times = Float64Array.from({ length: 24 / LOOK_H }, (_, k) => middleMs + (k - 12 / LOOK_H) * LOOK_H * HOUR_MS);
  const sun = sunTrack(latitudeDeg, wrapLongitudeDeg(scenario.place.longitudeDeg), times);
  const obstacles = prepareObstacles(scenario.obstacles, eventLeafShare(scenario));
  const looks = Array.from(times.keys()).flatMap((k) => {
    const elevationDeg = sun.elevationDeg[k]!;
    const weight = Math.sin(elevationDeg * RAD_PER_DEG);
    return weight > 0 ? [{ azimuthDeg: sun.azimuthDeg[k]!, elevationDeg, weight }] : [];
  });
  const whole = looks.reduce((sum, { weight }) => sum + weight, 0);
  const sharesAt = (pointsM: Float64Array): Float64Array => {
    const shares = new Float64Array(pointsM.length / 3);
    if (whole === 0) return shares;
    const light = new Float64Array(shares.length);
    const cloud = pointCloud(pointsM);
    for (const { azimuthDeg, elevationDeg, weight } of looks) {
      lightOnPoints(obstacles, cloud, azimuthDeg, elevationDeg, light);
      for (let p = 0; p < shares.length; p++) shares[p]! += (weight * light[p]!) / whole;
    }
    return shares;
  };
  const shareAt = (eastM: number, northM: number, heightM: number) =>
    sharesAt(Float64Array.of(eastM, northM, heightM))[0]!;

  const near: SunnySpots["near"] = (eastM, northM, heightM, withinM) => {
    const places: { eastM: number; northM: number; awayM: number }[] = [];
    const reach = Math.floor(withinM / STEP_M);
    for (let e = -reach; e <= reach; e++) {
      for (let n = -reach; n <= reach; n++) {
        const awayM = STEP_M * Math.hypot(e, n);
        const place = { eastM: eastM + STEP_M * e, northM: northM + STEP_M * n, awayM };
        if (awayM > withinM || (awayM > 0 && stands(obstacles, place))) continue;
        if (Math.max(Math.abs(place.eastM), Math.abs(place.northM)) <= SITE_M) places.push(place);
      }
    }
    const shares = sharesAt(Float64Array.from(places.flatMap((place) => [place.eastM, place.northM, heightM])));
    const best = shares.reduce((most, share) => Math.max(most, share), 0);
    const here = shareAt(eastM, northM, heightM);
    if (best <= here * (1 + AS_GOOD) + 1e-9) return null;
    const goodEnough = places
      .map((place, p) => ({ ...place, sunShare: shares[p]! }))
      .filter(({ sunShare }) => sunShare >= best * (1 - AS_GOOD))
      .sort((a, b) => a.awayM - b.awayM || b.sunShare - a.sunShare);
    const { awayM: _, ...spot } = goodEnough[0]!;
    return spot;
  };
  return { shareAt, near };
}

/** Positions on a site reach so far from its middle. */
const SITE_M = 500;
/** Room that panels need beside a trunk or a wall, m. */
const ROOM_M = 1.5;

/** Whether something stands at a place, so that nothing else can: a wall, or a trunk. */
function stands({ trees, boxes }: PreparedObstacles, { eastM, northM }: { eastM: number; northM: number }): boolean {
  const isNear = (thing: { eastM: number; northM: number }, withinM: number) =>
    Math.hypot(thing.eastM - eastM, thing.northM - northM) < withinM;
  return trees.some((tree) => isNear(tree, ROOM_M)) || boxes.some((box) => isNear(box, box.reachM + ROOM_M));
}
