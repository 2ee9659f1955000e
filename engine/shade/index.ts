/**
 * shade: what stands between the sun and a point.
 * obstacles ─► prepareObstacles ─► lightThrough (one ray), lightOnPoints (a panel's points at once) for the beam;
 * skyMaps ─► skyShareOnPlane for the light of the sky. Frame: metres east, north, up. Read by array.
 */
export { lightOnPoints, lightThrough, type Point, type PointCloud, pointCloud } from "./lightThrough.ts";
export { type PreparedObstacles, prepareObstacles } from "./prepareObstacles.ts";
export { type SkyMap, skyMaps, skyShareOnPlane, skyViewShare } from "./skyViewShare.ts";
