/**
 * share: notebooks as links and codes: packing, taking apart, checking, asking before much work is begun.
 */

export {
  CODE_BYTES,
  CODE_VERSION,
  codeAddresses,
  fragmentOfPieces,
  MOST_PARTS,
  markOf,
  readPart,
} from "./linkParts.ts";
export { openShared } from "./openShared.tsx";
export { addPart, dropParts, PARTS_KEY, type PartStore, setsIn } from "./partBox.ts";
export { reachOf } from "./reachOf.ts";
export { ShareActs } from "./ShareActs.tsx";
export { LONGEST_FRAGMENT, shareFragment, textOfFragment } from "./shareLink.ts";
export { carriesNotebook } from "./sharePrefix.ts";
export { MOST_STEPS_UNASKED, workSteps } from "./workSteps.ts";
