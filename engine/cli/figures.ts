/** Numbers as they are printed: shares as percent, energies as whole watt-hours, absent values as a dash. */
export const percent = (share: number) => `${(100 * share).toFixed(0)} %`;
export const wattHours = (wh: number) => wh.toFixed(0);
export const orDash = (text: string | null) => text ?? "–";
/** Six decimals are enough to repeat any sum by hand, and keep files small. */
export const sixDecimals = (value: number) => Math.round(value * 1e6) / 1e6;
