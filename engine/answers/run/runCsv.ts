import { csvText } from "../../csvText.ts";
import { stamp } from "../../ruler/stamp.ts";
import type { RunPicture } from "./runPicture.ts";
import { incomingAt } from "./strataLayout.ts";
import { stepMs } from "./strataPaths.ts";

const tenth = (value: number) => String(Math.round(value * 10) / 10);

/** Every number behind the strata: charge at each step's start, powers as means over the step. */
export function strataCsv(picture: RunPicture): string {
  const head = ["local time", "charge %", "charge Ah", ...picture.incoming.map((part) => `${part.name} W`)];
  head.push("taken by shade W", "spilled W", "always on W", "when used W", "sending W", "unserved W");
  head.push(...picture.radios.map((radio) => `${radio.name} V`));
  const rows = Array.from({ length: picture.steps }, (_, i) => {
    const { panelsW, unshadedW } = incomingAt(picture, i);
    return [
      stamp(picture.ruler, stepMs(picture, i)),
      (picture.chargeShare[i]! * 100).toFixed(2),
      (picture.chargeShare[i]! * picture.fullAh).toFixed(2),
      ...picture.incoming.map((part) => tenth(part.powerW[i]!)),
      tenth(unshadedW - panelsW),
      tenth(picture.spilledW[i]!),
      tenth(picture.alwaysW[i]!),
      tenth(picture.usedW[i]!),
      tenth(picture.sendingW[i]!),
      tenth(picture.unservedW[i]!),
      ...picture.radios.map((radio) => radio.volts[i]!.toFixed(2)),
    ];
  });
  return csvText([head, ...rows]);
}
