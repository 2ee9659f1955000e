import { leafShareOf } from "../scenario/leafShareOf.ts";
import type { Tree } from "../scenario/obstacle.ts";

/** A tree with its squares and logarithms taken once. */
export interface PreparedTree {
  readonly eastM: number;
  readonly northM: number;
  /** Height of the crown's centre, where the trunk ends. */
  readonly centreM: number;
  readonly topM: number;
  /** Radius of the upright cylinder that holds the whole tree. */
  readonly reachM: number;
  /** Stretches heights so that the crown becomes a sphere. */
  readonly stretch: number;
  readonly crownRadiusSq: number;
  readonly trunkRadiusSq: number;
  /** Natural logarithm of the light left after one metre of crown, for each of the factors on it; −Infinity when opaque. */
  readonly logPerM: Float64Array;
}

/** The most that a crown lets through which is thinner than planned. */
const MOST_THROUGH_SHARE = 0.95;

/**
 * @param throughFactors how much more light crowns let through than planned, 0 or more each
 * @param seasonShare leaf of trees that shed it and of which nobody says how much is on
 * @throws RangeError if the crown has no height or no width
 */
export function prepareTree(tree: Tree, throughFactors: readonly number[], seasonShare: number): PreparedTree {
  const halfHeightM = (tree.heightM - tree.crownBaseM) / 2;
  if (!(halfHeightM > 0)) {
    throw new RangeError(
      `heightM of tree ${tree.id} must be above its crownBaseM (${tree.crownBaseM} m), got ${tree.heightM}`,
    );
  }
  if (!(tree.crownRadiusM > 0)) {
    throw new RangeError(`crownRadiusM of tree ${tree.id} must be more than 0 m, got ${tree.crownRadiusM}`);
  }
  const logPerM = (factor: number) => {
    const through = (share: number) => (factor === 1 ? share : Math.min(MOST_THROUGH_SHARE, share * factor));
    const bare = through(tree.transmittanceBareShare);
    const transmittanceShare = bare + (through(tree.transmittanceInLeafShare) - bare) * leafShareOf(tree, seasonShare);
    return Math.log(transmittanceShare) / (2 * tree.crownRadiusM);
  };
  return {
    eastM: tree.eastM,
    northM: tree.northM,
    centreM: tree.crownBaseM + halfHeightM,
    topM: tree.heightM,
    reachM: Math.max(tree.crownRadiusM, tree.trunkRadiusM),
    stretch: tree.crownRadiusM / halfHeightM,
    crownRadiusSq: tree.crownRadiusM * tree.crownRadiusM,
    trunkRadiusSq: tree.trunkRadiusM * tree.trunkRadiusM,
    logPerM: Float64Array.from(throughFactors, logPerM),
  };
}

/**
 * Takes off light what a tree keeps of rays from some points. In the crown light falls with the length of the path (Beer–Lambert), so that a
 * level path through the middle keeps the stated transmittance; the trunk stops everything. A ray that starts inside the crown meets only the
 * part ahead of it.
 *
 * All points in one call: numbers handed to a function of this size are boxed, which takes as long as the work itself.
 * @param pointsM where the rays start: east, north and up of each in turn
 * @param dirEast,dirNorth,dirUp unit vector towards the sun, level or upwards
 * @param light one share per point, level of crowns by level, each multiplied by the share that the tree lets through, 0…1
 * @see M. Monsi & T. Saeki, Japanese Journal of Botany 14 (1953) 22–52 (light through a canopy falls exponentially)
 */
export function dimByTree(
  tree: PreparedTree,
  pointsM: Float64Array,
  dirEast: number,
  dirNorth: number,
  dirUp: number,
  light: Float64Array,
): void {
  const { eastM, northM, centreM, stretch, crownRadiusSq, trunkRadiusSq, logPerM } = tree;
  const count = pointsM.length / 3;
  const levelSq = dirEast * dirEast + dirNorth * dirNorth;
  const dirUpStretched = dirUp * stretch;
  const a = levelSq + dirUpStretched * dirUpStretched;
  for (let p = 0, at = 0; p < count; p++, at += 3) {
    const east = pointsM[at]! - eastM;
    const north = pointsM[at + 1]! - northM;
    const upM = pointsM[at + 2]!;
    const level = east * dirEast + north * dirNorth;
    const awaySq = east * east + north * north;

    const beyond = awaySq - trunkRadiusSq;
    const trunkRoot = level * level - levelSq * beyond;
    if (trunkRoot > 0 && trunkRadiusSq > 0) {
      const half = Math.sqrt(trunkRoot);
      const enterM = Math.max(0, (-level - half) / levelSq);
      // A ray never sinks, so it is lowest where it enters.
      if ((half - level) / levelSq > enterM && upM + enterM * dirUp < centreM) {
        for (let k = p; k < light.length; k += count) light[k] = 0;
        continue;
      }
    }

    const up = (upM - centreM) * stretch;
    const b = level + up * dirUpStretched;
    const root = b * b - a * (awaySq + up * up - crownRadiusSq);
    if (root <= 0) continue;
    const half = Math.sqrt(root);
    const leaveM = (half - b) / a;
    if (leaveM <= 0) continue;
    const pathM = leaveM - Math.max(0, (-b - half) / a);
    if (pathM <= 0) continue; // a crown that lets nothing through is touched by rays, too
    for (let k = p, each = 0; k < light.length; k += count, each++) light[k]! *= Math.exp(pathM * logPerM[each]!);
  }
}
