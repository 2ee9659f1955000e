/** Room of a drawing: for the days, left of them for values, right of them for names. */
export interface DrawingRoom {
  /** Null where time scrolls and a day is as wide as usual. */
  readonly daysPx: number | null;
  readonly axisPx: number;
  readonly labelsPx: number;
  /** Where titles begin, from the drawing's left. */
  readonly titlePx: number;
  /** Whether titles are kept short and go without their explanation. */
  readonly isShort: boolean;
}

/** As wide as the sheet; what reports and files take. */
export const SHEET_ROOM: DrawingRoom = { daysPx: 864, axisPx: 64, labelsPx: 214, titlePx: 64, isShort: false };
