/**
 * shade: what stands between the sun and a point.
 * obstacles ─► prepareObstacles ─► lightThrough (one ray), lightOnPoints (a panel's points at once) for the beam;
 * skyMaps ─► skyShareOnPlane for the light of the sky. Frame: metres east, north, up. Read by array.
 */
export { horizonElevationDeg, prepareHorizon } from "./horizonElevationDeg.ts";
export { lightOnPoints, lightThrough, type Point, pointCloud } from "./lightThrough.ts";
export { type PreparedObstacles, prepareObstacles } from "./prepareObstacles.ts";
export { SKY_ROWS, skyMaps, skyShareOnPlane } from "./skyViewShare.ts";
