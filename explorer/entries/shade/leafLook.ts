import type { Tree } from "../../../engine/scenario/obstacle.ts";

/** How closely a crown is dotted, by the light that comes through its middle as the leaf now is. */
export function leafLook(tree: Tree): "close" | "middle" | "thin" {
  const bare = tree.transmittanceBareShare;
  const throughShare = bare + (tree.transmittanceInLeafShare - bare) * tree.leafShare;
  if (throughShare < 0.1) return "close";
  return throughShare < 0.3 ? "middle" : "thin";
}
