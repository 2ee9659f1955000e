import { figure } from "../../words/numbers.ts";
import type { RunPicture } from "./runPicture.ts";
import { incomingAt } from "./strataLayout.ts";
import { stepMs } from "./strataPaths.ts";

/** An hour of the strata. */
export interface HourRow {
  readonly ms: number;
  /** One for each of `hourHeads`, as print sets them. */
  readonly figures: readonly string[];
}

/** What stands over the columns. */
export function hourHeads(picture: RunPicture): string[] {
  return [
    "Charge, %",
    "Ah",
    ...picture.incoming.map((part) => `${part.name}, W`),
    "Taken by shade, W",
    "Spilled, W",
    "Always on, W",
    "When used, W",
    "Sending, W",
    "Unserved, W",
    ...picture.radios.map((radio) => `${radio.name}, least V`),
  ];
}

/** Hour by hour: charge at its start, powers as means over it, volts as the least in it. */
export function hourRows(picture: RunPicture): HourRow[] {
  const perHour = Math.max(1, Math.round(3_600_000 / picture.stepMs));
  const rows: HourRow[] = [];
  for (let first = 0; first < picture.steps; first += perHour) {
    const last = Math.min(picture.steps, first + perHour);
    const mean = (ofW: (i: number) => number) => {
      let sumW = 0;
      for (let i = first; i < last; i++) sumW += ofW(i);
      return figure(sumW / (last - first));
    };
    const least = (values: Float64Array) => {
      const seen = values.subarray(first, last).filter((volts) => volts > 0);
      return seen.length === 0 ? "–" : Math.min(...seen).toFixed(2);
    };
    const share = picture.chargeShare[first]!;
    rows.push({
      ms: stepMs(picture, first),
      figures: [
        figure(share * 100, 1),
        figure(share * picture.fullAh),
        ...picture.incoming.map((part) => mean((i) => part.powerW[i]!)),
        mean((i) => incomingAt(picture, i).unshadedW - incomingAt(picture, i).panelsW),
        mean((i) => picture.spilledW[i]!),
        mean((i) => picture.alwaysW[i]!),
        mean((i) => picture.usedW[i]!),
        mean((i) => picture.sendingW[i]!),
        mean((i) => picture.unservedW[i]!),
        ...picture.radios.map((radio) => least(radio.volts)),
      ],
    });
  }
  return rows;
}
