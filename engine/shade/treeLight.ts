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
  /** Natural logarithm of the light left after one metre of crown; −Infinity when opaque. */
  readonly logPerM: number;
}

/** @throws RangeError if the crown has no height or no width */
export function prepareTree(tree: Tree): PreparedTree {
  const halfHeightM = (tree.heightM - tree.crownBaseM) / 2;
  if (!(halfHeightM > 0)) {
    throw new RangeError(
      `heightM of tree ${tree.id} must be above its crownBaseM (${tree.crownBaseM} m), got ${tree.heightM}`,
    );
  }
  if (!(tree.crownRadiusM > 0)) {
    throw new RangeError(`crownRadiusM of tree ${tree.id} must be more than 0 m, got ${tree.crownRadiusM}`);
  }
  const bare = tree.transmittanceBareShare;
  const transmittanceShare = bare + (tree.transmittanceInLeafShare - bare) * tree.leafShare;
  return {
    eastM: tree.eastM,
    northM: tree.northM,
    centreM: tree.crownBaseM + halfHeightM,
    topM: tree.heightM,
    reachM: Math.max(tree.crownRadiusM, tree.trunkRadiusM),
    stretch: tree.crownRadiusM / halfHeightM,
    crownRadiusSq: tree.crownRadiusM * tree.crownRadiusM,
    trunkRadiusSq: tree.trunkRadiusM * tree.trunkRadiusM,
    logPerM: Math.log(transmittanceShare) / (2 * tree.crownRadiusM),
  };
}

/**
 * Share of a ray's light that a tree lets through, 0…1. In the crown it falls with the length of the path
 * (Beer–Lambert), so that a level path through the middle keeps the stated transmittance; the trunk stops everything.
 * A ray that starts inside the crown meets only the part ahead of it.
 * @param eastM,northM,upM where the ray starts
 * @param dirEast,dirNorth,dirUp unit vector towards the sun, level or upwards
 * @see M. Monsi & T. Saeki, Japanese Journal of Botany 14 (1953) 22–52 (light through a canopy falls exponentially)
 */
export function treeLight(
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
    if ((half - level) / levelSq > enterM && upM + enterM * dirUp < tree.centreM) return 0;
  }

  const up = (upM - tree.centreM) * tree.stretch;
  const dirUpStretched = dirUp * tree.stretch;
  const a = levelSq + dirUpStretched * dirUpStretched;
  const b = level + up * dirUpStretched;
  const root = b * b - a * (awaySq + up * up - tree.crownRadiusSq);
  if (root <= 0) return 1;
  const half = Math.sqrt(root);
  const leaveM = (half - b) / a;
  if (leaveM <= 0) return 1;
  const pathM = leaveM - Math.max(0, (-b - half) / a);
  return Math.exp(pathM * tree.logPerM);
}
