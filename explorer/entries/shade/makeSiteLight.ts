import { createEffect, createSignal, onCleanup } from "solid-js";
import type { Sunlight } from "../../../engine/answers/shade/sunlight.ts";
import type { Scenario } from "../../../engine/scenario/scenario.ts";
import { makeSunlight } from "./makeSunlight.ts";

/** The light of a site as it stands now, worked out beside the page; what is there stays until the next has come. */
export function makeSiteLight(site: () => Scenario) {
  const [light, setLight] = createSignal<Sunlight | null>(null);
  const [hasFailed, setFailed] = createSignal(false);
  const [isStale, setStale] = createSignal(true);
  const workshop = new Worker(new URL("./sunlightWorker.ts", import.meta.url), { type: "module" });
  const sun = makeSunlight(workshop, (scenario, now) => {
    if (now !== null) setLight(now);
    setFailed(now === null);
    setStale(scenario !== site());
  });
  onCleanup(() => workshop.terminate());
  createEffect(() => {
    const scenario = site();
    setStale(true);
    sun.ask(scenario);
  });
  return { light, hasFailed, isStale };
}
