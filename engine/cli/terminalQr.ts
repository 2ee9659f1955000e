import { renderUnicodeCompact } from "uqr";

/** Light modules round a code on all sides (ISO/IEC 18004:2015, section 6.3.8, from memory). */
const QUIET_MODULES = 4;
const WHITE_ON_BLACK = "\x1b[97;40m";
const AS_BEFORE = "\x1b[0m";

/**
 * A QR code in half blocks, two rows of modules to a line. Light modules are the ones drawn, so that it is right way round on a dark
 * terminal; with colours it is so on any.
 */
export function terminalQr(text: string, isColoured: boolean): string {
  const lines = renderUnicodeCompact(text, { border: QUIET_MODULES }).split("\n");
  return lines.map((line) => (isColoured ? `${WHITE_ON_BLACK}${line}${AS_BEFORE}` : line)).join("\n");
}
