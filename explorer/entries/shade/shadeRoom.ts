import { sheetRoom } from "../../notebook/sheetRoom.ts";

/** Narrower than this the sky stands below the plan. */
const SIDE_BY_SIDE_PX = 960;
const GAP_PX = 20;

/** Room of a picture with its scale at one side, px. */
export interface PairRoom {
  readonly widthPx: number;
  readonly heightPx: number;
  readonly axisPx: number;
}

/** How an entry of some width is shared out between the strip on the ruler, the plan and the sky. */
export function shadeRoom(widthPx: number) {
  const strip = sheetRoom(widthPx);
  const { isPhone } = strip;
  const isSideBySide = widthPx >= SIDE_BY_SIDE_PX;
  const roomPx = widthPx - (isPhone ? 32 : 64 + 24);
  const [axisPx, skyAxisPx, heightPx] = isPhone ? [0, 0, 300] : [64, 36, 320];
  const planPx = isSideBySide ? Math.round(roomPx * 0.485) : roomPx - skyAxisPx;
  const skyPx = isSideBySide ? roomPx - planPx - GAP_PX - skyAxisPx : roomPx - skyAxisPx;
  const plan: PairRoom = { widthPx: planPx, heightPx, axisPx };
  const sky: PairRoom = { widthPx: skyPx, heightPx, axisPx: skyAxisPx };
  return { isPhone, isSideBySide, strip, plan, sky };
}
