import { drawnW } from "../scenario/draw.ts";
import type { Station } from "../scenario/station.ts";
import { type TransmitDraw, transmitDraw } from "./modeCurrent.ts";

/** Bias of a linear final when it is not stated: 0.15 of full draw, 3 A of 20 A for a usual 100 W set (common practice, no source). */
const BIAS_SHARE = 0.15;

/** What a station's radio takes at the power it is set to. */
export function transmitDrawOf({ radio, transmitW, ssbCurrent }: Station): TransmitDraw {
  const receiveW = drawnW(radio.receive);
  const fullPowerW = drawnW(radio.fullPower);
  const biasW = Math.max(receiveW, radio.bias === undefined ? BIAS_SHARE * fullPowerW : drawnW(radio.bias));
  return transmitDraw({ ratedW: radio.ratedW, receiveW, fullPowerW, biasW }, transmitW, ssbCurrent);
}
