import type { SheetRoom } from "./notebookPage.ts";

/** A sheet narrower than this is read with a thumb. */
const PHONE_PX = 700;
/** Narrower than this a sheet has less room for names. */
const WIDE_PX = 1100;
/** Wider than this days are not drawn. */
export const MOST_DAYS_PX = 864;

/** Room for drawings on a sheet of some width; on a phone time scrolls. */
export function sheetRoom(sheetPx: number): SheetRoom {
  const isPhone = sheetPx < PHONE_PX;
  const axisPx = isPhone ? 40 : 64;
  const labelsPx = sheetPx >= WIDE_PX ? 214 : 192;
  return {
    isPhone,
    isShort: isPhone,
    daysPx: isPhone ? null : Math.min(MOST_DAYS_PX, sheetPx - axisPx - labelsPx),
    axisPx,
    labelsPx,
    titlePx: isPhone ? 6 : axisPx,
  };
}
