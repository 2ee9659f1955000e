/** Works out who sees the sun away from the page, so that a dragged tree never waits for it. */
import { type Sunlight, sunlight } from "../../../engine/answers/shade/sunlight.ts";
import type { Scenario } from "../../../engine/scenario/index.ts";

export interface SunlightOrder {
  readonly number: number;
  readonly scenario: Scenario;
}

export interface SunlightDelivery {
  readonly number: number;
  readonly light: Sunlight | null;
}

self.onmessage = ({ data }: MessageEvent<SunlightOrder>) => {
  let light: Sunlight | null = null;
  try {
    light = sunlight(data.scenario);
  } catch (error) {
    console.error(error);
  }
  const delivery: SunlightDelivery = { number: data.number, light };
  self.postMessage(delivery);
};
