import { createEffect, createSignal, on } from "solid-js";
import { heightAsTowns, type TownHeight } from "../../engine/towns/index.ts";
import { ownTowns } from "../place/ownTowns.ts";
import { heightWords } from "../place/townWords.ts";
import { wrapped } from "./mapView.ts";
import type { StartFields } from "./startFields.tsx";

/** The height above the sea follows the towns near the place until somebody puts in their own. */
export function makePlaceHeight({ answers, setAnswers }: StartFields) {
  const [proposed, setProposed] = createSignal<TownHeight | null>();
  const place = () => [answers.latitudeDeg, answers.longitudeDeg, ownTowns.state()] as const;
  /** What we put in; anything else is somebody's own, and stays. */
  let written = answers.elevationM;
  createEffect(
    on(
      place,
      ([lat, lon, state]) => {
        if (state === "unasked") ownTowns.ask();
        if (state !== "here" || answers.elevationM !== written) return;
        const height = heightAsTowns(ownTowns.towns(), lat, wrapped(lon));
        setProposed(height);
        if (height === null) return;
        written = height.heightM;
        setAnswers("elevationM", height.heightM);
      },
      { defer: true },
    ),
  );
  /** What the height is, in words; empty before the place was moved, and where it is somebody's own. */
  const words = () => {
    const height = proposed();
    if (height === undefined) return "";
    if (height !== null && answers.elevationM !== height.heightM) return "";
    return heightWords(height);
  };
  return { words };
}
