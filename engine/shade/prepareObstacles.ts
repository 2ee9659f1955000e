import type { Obstacle } from "../scenario/obstacle.ts";
import { type PreparedBox, prepareBox } from "./boxLight.ts";
import { type PreparedTree, prepareTree } from "./dimByTree.ts";
import { type PreparedHorizon, prepareHorizon } from "./horizonElevationDeg.ts";

/** Obstacles sorted by kind, with everything taken once that does not depend on the ray. */
export interface PreparedObstacles {
  readonly trees: readonly PreparedTree[];
  readonly boxes: readonly PreparedBox[];
  readonly horizons: readonly PreparedHorizon[];
  /** Under how many kinds of crowns light is looked up at once: as planned and, where somebody asks for them, denser and thinner ones. */
  readonly levels: number;
}

/**
 * Readies obstacles for many rays.
 * @param seasonShare leaf of trees that shed it and of which nobody says how much is on, from `eventLeafShare`
 * @param throughFactors how much more light crowns let through than planned, 0 or more, one level for each
 * @throws RangeError if one of them has no extent
 */
export function prepareObstacles(
  obstacles: readonly Obstacle[],
  seasonShare = 1,
  throughFactors: readonly number[] = [1],
): PreparedObstacles {
  const trees: PreparedTree[] = [];
  const boxes: PreparedBox[] = [];
  const horizons: PreparedHorizon[] = [];
  for (const obstacle of obstacles) {
    if (obstacle.kind === "tree") trees.push(prepareTree(obstacle, throughFactors, seasonShare));
    else if (obstacle.kind === "box") boxes.push(prepareBox(obstacle));
    else horizons.push(prepareHorizon(obstacle));
  }
  return { trees, boxes, horizons, levels: throughFactors.length };
}
