import { sunKind } from "../../../engine/answers/shade/sunKind.ts";
import type { Point, PreparedObstacles } from "../../../engine/shade/index.ts";
import { lightThrough } from "../../../engine/shade/index.ts";
import { sunTrack } from "../../../engine/sky/sunTrack.ts";

/** A stretch of the sun's way over the sky, one value per moment. */
export interface SunPath {
  readonly ms: Float64Array;
  readonly bearingDeg: Float64Array;
  readonly elevationDeg: Float64Array;
}

const EVERY_MS = 300_000;

/** The sun's way above the horizon between two moments, every five minutes. Longitude −180…180. */
export function sunPath(latitudeDeg: number, longitudeDeg: number, fromMs: number, toMs: number): SunPath {
  const count = Math.floor((toMs - fromMs) / EVERY_MS) + 1;
  const all = Float64Array.from({ length: count }, (_, i) => fromMs + i * EVERY_MS);
  const sun = sunTrack(latitudeDeg, longitudeDeg, all);
  const isUp = (_: number, i: number) => sun.elevationDeg[i]! > 0;
  return {
    ms: all.filter(isUp),
    bearingDeg: sun.azimuthDeg.filter(isUp),
    elevationDeg: sun.elevationDeg.filter(isUp),
  };
}

/** A stretch of a path over which the same kind of light arrives; it shares its ends with its neighbours. */
export interface PathStretch {
  readonly kind: ReturnType<typeof sunKind>;
  readonly from: number;
  readonly to: number;
}

/** Cuts a path where what stands between an eye and the sun changes its kind. */
export function pathStretches(path: SunPath, obstacles: PreparedObstacles, eye: Point): PathStretch[] {
  const stretches: PathStretch[] = [];
  const kinds = Array.from(path.ms, (_, i) =>
    sunKind(lightThrough(obstacles, eye, path.bearingDeg[i]!, path.elevationDeg[i]!)),
  );
  let from = 0;
  for (let i = 1; i <= kinds.length; i++) {
    const hasGap = i < path.ms.length && path.ms[i]! - path.ms[i - 1]! > EVERY_MS * 1.5;
    const kind = kinds[from]!;
    if (i < path.ms.length && !hasGap && kinds[i] === kind) continue;
    const to = hasGap ? i - 1 : Math.min(i, path.ms.length - 1);
    stretches.push({ kind, from, to });
    from = i;
  }
  return stretches;
}
