/** Between a number and its unit, and inside large numbers: narrow, and never broken over two lines. */
export const THIN = "\u202f";
const MINUS = "\u2212";

/** A number as print sets it: thousands apart, a true minus, at most `decimals` behind the point. */
export function figure(value: number, decimals = 0): string {
  const rounded = Number(value.toFixed(decimals));
  const [whole, part] = Math.abs(rounded).toString().split(".") as [string, string | undefined];
  const grouped = whole.length > 3 ? whole.replace(/\B(?=(\d{3})+$)/g, THIN) : whole;
  return `${rounded < 0 ? MINUS : ""}${grouped}${part === undefined ? "" : `.${part}`}`;
}

/** 0.314 as "31 %". */
export const percent = (share: number) => `${figure(share * 100)}${THIN}%`;

/** "423 Wh", "5.82 kWh" */
export function energy(wh: number): string {
  return Math.abs(wh) < 999.5 ? `${figure(wh)}${THIN}Wh` : `${(wh / 1000).toFixed(2)}${THIN}kWh`;
}

export const watts = (w: number) => `${figure(w)}${THIN}W`;
export const ampHours = (ah: number) => `${figure(ah)}${THIN}Ah`;
export const volts = (v: number) => `${v.toFixed(2)}${THIN}V`;
export const hours = (h: number) => `${figure(h, h < 10 ? 1 : 0)}${THIN}h`;
