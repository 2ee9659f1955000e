import { csvText } from "../../csvText.ts";
import { stamp } from "../../ruler/stamp.ts";
import type { RunPicture } from "./runPicture.ts";
import { incomingAt } from "./strataLayout.ts";
import { stepMs } from "./strataPaths.ts";

const tenth = (value: number) => String(Math.round(value * 10) / 10);
const percentOf = (share: number | null) => (share === null ? "" : tenth(share * 100));

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

export function daysCsv(picture: RunPicture): string {
  const head = ["date", "sunrise", "sunset", ...picture.incoming.filter(isPanel).map((part) => `${part.name} Wh`)];
  head.push("taken by shade Wh", "spilled Wh", "other sources Wh", "wanted Wh", "unserved Wh");
  head.push("charge at dusk %", "charge at dawn %", "lowest %");
  const at = (ms: number | null) => (ms === null ? "" : stamp(picture.ruler, ms).slice(11, 16));
  const rows = picture.days.map((day) => [
    day.date,
    at(day.sunriseMs),
    at(day.sunsetMs),
    ...day.groupWh.map(tenth),
    tenth(day.shadeLossWh),
    tenth(day.spilledWh),
    tenth(day.sourceWh),
    tenth(day.demandWh),
    tenth(day.unservedWh),
    percentOf(day.duskShare),
    percentOf(day.dawnShare),
    percentOf(day.lowestShare),
  ]);
  return csvText([head, ...rows]);
}

export function ledgerCsv({ ledger }: RunPicture): string {
  const head = ["load", "always on Wh", "when used Wh", "together Wh", "share %"];
  const rows = ledger.loads.map((line) => [
    line.name,
    tenth(line.alwaysWh),
    tenth(line.usedWh),
    tenth(line.totalWh),
    tenth(line.share * 100),
  ]);
  return csvText([head, ...rows]);
}

const isPanel = (part: RunPicture["incoming"][number]) => part.shadeLossW !== null;
