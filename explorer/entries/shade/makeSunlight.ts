import type { Sunlight } from "../../../engine/answers/shade/sunlight.ts";
import type { Scenario } from "../../../engine/scenario/index.ts";
import type { SunlightDelivery, SunlightOrder } from "./sunlightWorker.ts";

/** The part of a Worker that is needed here. */
export interface SunWorkshop {
  postMessage(order: SunlightOrder): void;
  onmessage: ((event: MessageEvent<SunlightDelivery>) => void) | null;
}

/**
 * Sends sites to a worker one at a time; while one is in work only the newest of the others waits, so that the strip
 * follows a dragged tree and ends at where it was let go.
 */
export function makeSunlight(workshop: SunWorkshop, deliver: (scenario: Scenario, light: Sunlight | null) => void) {
  let number = 0;
  let inWork: Scenario | null = null;
  let waiting: Scenario | null = null;

  function start(scenario: Scenario): void {
    number++;
    inWork = scenario;
    workshop.postMessage({ number, scenario });
  }

  workshop.onmessage = ({ data }) => {
    if (data.number !== number || inWork === null) return;
    const done = inWork;
    inWork = null;
    if (waiting !== null) start(waiting);
    waiting = null;
    deliver(done, data.light);
  };

  return {
    ask(scenario: Scenario): void {
      if (inWork === null) start(scenario);
      else waiting = scenario === inWork ? null : scenario;
    },
  };
}
