import type { AxisTitle } from "../../drawing/axisTitle.ts";
import { voltsLostWords } from "../../run/voltsLost.ts";
import { ampHours, figure } from "../../words/numbers.ts";
import type { RunPicture } from "./runPicture.ts";
import type { StrataLayout, Stratum } from "./strataLayout.ts";

/** Where the volts of the radio that comes lowest went. */
function causeWords({ verdict }: RunPicture): string {
  const lowest = verdict.radios.reduce<RunPicture["verdict"]["radios"][number] | null>((least, each) => {
    if (each.lost === null || each.dropoutH === 0) return least;
    return least === null || each.lowestV! < least.lowestV! ? each : least;
  }, null);
  return lowest === null
    ? "under a full bank's at rest by charge, pack and lead"
    : `at its lowest ${voltsLostWords(lowest.lost!)}`;
}

/** Titles and values at the left of the strata; short ones where there is little room. */
export function strataAxis(
  picture: RunPicture,
  { charge, incoming, load, volts }: StrataLayout,
  isShort: boolean,
): AxisTitle[] {
  const isSun = picture.incoming.every((part) => part.shadeLossW !== null);
  const axis = (stratum: Stratum, scale: number, unit: string, title: string, how: string): AxisTitle => ({
    title,
    how,
    titleY: stratum.titleY,
    values: stratum.ticks.map((tick, i) => ({
      y: stratum.y(tick),
      text: `${figure(tick * scale)}${i === stratum.ticks.length - 1 && !isShort ? unit : ""}`,
      isBase: i === 0,
    })),
  });
  return [
    axis(
      charge,
      100,
      " %",
      isShort ? "Charge in the bank" : `Charge in the bank, % of ${ampHours(picture.fullAh)}`,
      "teeth point to the bad side of the reserve",
    ),
    axis(
      incoming,
      1,
      " W",
      isSun ? "From the sun, W" : "Coming in, W",
      "at the bank; one scale with the loads, so equal areas are equal energy",
    ),
    axis(load, 1, " W", "Loads, W", "as planned; what they do not get is hatched"),
    ...(volts === null
      ? []
      : [
          axis(
            volts,
            1,
            " V",
            isShort ? "Volts at the radio" : "Volts at the radio on transmit peaks",
            causeWords(picture),
          ),
        ]),
  ];
}
