import { max, range, type ScaleLinear, scaleLinear, tickStep } from "d3";
import type { RunPicture } from "./runPicture.ts";

const TITLE_PX = 30;
const GAP_PX = 20;
const POWER_PX = 188;
const VOLTS_PX = 72;

/** One chart of the section: its place from the top of the drawing, and its scale. */
export interface Stratum {
  readonly titleY: number;
  readonly top: number;
  readonly bottom: number;
  readonly y: ScaleLinear<number, number>;
  readonly ticks: readonly number[];
}

/** The strata from top to bottom on one drawing, so that night runs through them without a break. */
export interface StrataLayout {
  readonly charge: Stratum;
  readonly incoming: Stratum;
  readonly load: Stratum;
  readonly volts: Stratum | null;
  readonly heightPx: number;
}

/** What comes in at step `i`: in all, from the panels, and what the panels would give if nothing cast shade. */
export function incomingAt(picture: RunPicture, i: number) {
  let givenW = 0;
  let panelsW = 0;
  let unshadedW = 0;
  for (const part of picture.incoming) {
    givenW += part.powerW[i]!;
    if (part.shadeLossW === null) continue;
    panelsW += part.powerW[i]!;
    unshadedW += part.powerW[i]! + part.shadeLossW[i]!;
  }
  return { givenW, panelsW, unshadedW };
}

/** What the loads got at step `i`. */
export function servedAt(picture: RunPicture, i: number): number {
  return picture.alwaysW[i]! + picture.usedW[i]! + picture.sendingW[i]!;
}

/** Sun and loads share one scale in W, so that equal areas are equal energy. */
export function strataLayout(picture: RunPicture, chargePx: number): StrataLayout {
  const steps = range(picture.steps);
  const incomingMaxW =
    max(steps, (i) => Math.max(incomingAt(picture, i).givenW, incomingAt(picture, i).unshadedW)) ?? 0;
  const loadMaxW = max(steps, (i) => servedAt(picture, i) + picture.unservedW[i]!) ?? 0;
  const stepW = tickStep(0, Math.max(10, incomingMaxW, loadMaxW), 4);
  const topOf = (valueW: number) => Math.max(1, Math.ceil(valueW / stepW - 0.05)) * stepW;
  const pxPerW = POWER_PX / (topOf(incomingMaxW) + topOf(loadMaxW));

  let at = 0;
  const stratum = (heightPx: number, low: number, high: number, ticks: readonly number[]): Stratum => {
    const top = at + TITLE_PX;
    const bottom = top + heightPx;
    const titleY = at + TITLE_PX - 10;
    at = bottom + GAP_PX;
    return { titleY, top, bottom, y: scaleLinear([low, high], [bottom, top]), ticks };
  };
  const power = (valueW: number) => {
    const topW = topOf(valueW);
    return stratum(topW * pxPerW, 0, topW, range(0, topW + stepW / 2, stepW));
  };
  const charge = stratum(chargePx, 0, 1, [0, 0.2, 0.4, 0.6, 0.8, 1]);
  const incoming = power(incomingMaxW);
  const load = power(loadMaxW);
  const volts = picture.radios.length > 0 ? voltsStratum(picture, stratum) : null;
  return { charge, incoming, load, volts, heightPx: at - GAP_PX + 12 };
}

function voltsStratum(
  picture: RunPicture,
  stratum: (px: number, low: number, high: number, ticks: number[]) => Stratum,
) {
  const seen = picture.radios.flatMap((radio) => [radio.minimumV, ...radio.volts.filter((volts) => volts > 0)]);
  const low = Math.floor(Math.min(...seen));
  const high = Math.ceil(Math.max(...seen));
  return stratum(VOLTS_PX, low, high, range(low, high + 0.5, Math.max(1, Math.round((high - low) / 3))));
}
