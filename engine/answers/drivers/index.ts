/** answers/drivers: what the outcome depends on, and what to switch off first. What other folders may take of it. */
export { driversOf } from "./ask.ts";
export type { DriversPicture } from "./driversPicture.ts";
export { byWeight, driversSentence, inHundredths, plusMinus, signed } from "./driversWords.ts";
export { driversKind } from "./kind.ts";
export { driversCsv, HIGH_END, LOW_END, SHARES, SHEDDING } from "./rows.ts";
