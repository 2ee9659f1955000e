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
 * @throws RangeError if the crown has no height or no width
 */
export function prepareTree(tree: Tree, throughFactors: readonly number[]): PreparedTree {
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
    const transmittanceShare = bare + (through(tree.transmittanceInLeafShare) - bare) * tree.leafShare;
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
 * Share of light left after metres of crown, 0…1. It falls with the length of the path (Beer–Lambert), so that a level path through the
 * middle keeps the stated transmittance; the trunk stops everything.
 * @param pathM from `crownPathM`
 * @see M. Monsi & T. Saeki, Japanese Journal of Botany 14 (1953) 22–52 (light through a canopy falls exponentially)
 */
export function lightAfter(pathM: number, logPerM: number): number {
  if (pathM === 0) return 1;
  return pathM === Number.POSITIVE_INFINITY ? 0 : Math.exp(pathM * logPerM);
}

/**
 * Metres of a tree's crown that a ray passes; 0 where it misses it, Infinity where it meets the trunk. A ray that starts inside the crown meets
 * only the part ahead of it.
 * @param eastM,northM,upM where the ray starts
 * @param dirEast,dirNorth,dirUp unit vector towards the sun, level or upwards
 */
export function crownPathM(
  tree: PreparedTree,
  eastM: number,
  northM: number,
  upM: number,
  dirEast: number,
  dirNorth: number,
  dirUp: number,
): number {
  const east = eastM - tree.eastM;
  const north = northM - tree.northM;
  const level = east * dirEast + north * dirNorth;
  const levelSq = dirEast * dirEast + dirNorth * dirNorth;
  const awaySq = east * east + north * north;

  const beyond = awaySq - tree.trunkRadiusSq;
  const trunkRoot = level * level - levelSq * beyond;
  if (trunkRoot > 0 && tree.trunkRadiusSq > 0) {
    const half = Math.sqrt(trunkRoot);
    const enterM = Math.max(0, (-level - half) / levelSq);
    // A ray never sinks, so it is lowest where it enters.
    if ((half - level) / levelSq > enterM && upM + enterM * dirUp < tree.centreM) return Number.POSITIVE_INFINITY;
  }

  const up = (upM - tree.centreM) * tree.stretch;
  const dirUpStretched = dirUp * tree.stretch;
  const a = levelSq + dirUpStretched * dirUpStretched;
  const b = level + up * dirUpStretched;
  const root = b * b - a * (awaySq + up * up - tree.crownRadiusSq);
  if (root <= 0) return 0;
  const half = Math.sqrt(root);
  const leaveM = (half - b) / a;
  return leaveM <= 0 ? 0 : leaveM - Math.max(0, (-b - half) / a);
}
