import { leafShareOf } from "../../../engine/scenario/leafShareOf.ts";
import type { Tree } from "../../../engine/scenario/obstacle.ts";

/**
 * How closely a crown is dotted, by the light that comes through its middle as the leaf then is.
 * @param seasonShare from `eventLeafShare`, for trees of which nobody says how much leaf is on
 */
export function leafLook(tree: Tree, seasonShare: number): "close" | "middle" | "thin" {
  const bare = tree.transmittanceBareShare;
  const throughShare = bare + (tree.transmittanceInLeafShare - bare) * leafShareOf(tree, seasonShare);
  if (throughShare < 0.1) return "close";
  return throughShare < 0.3 ? "middle" : "thin";
}
