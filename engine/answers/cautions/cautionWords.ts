import type { Caution } from "../../checks/cautions.ts";

/** What a plan is not. */
export const NO_PERMIT = {
  head: "A plan and not a permit.",
  rest: "Local codes and licensed persons decide what may be built and connected.",
};

/** What can hurt somebody who carries a plan out, in short: for slides, and until the scenarios' own cautions are there. */
export const CAUTIONS: readonly string[] = [
  "Put a fuse close to the battery's positive post, and size it to the cable: a bank gives enough current to set fire to a wire.",
  "Do not charge lithium iron phosphate at or below 0 °C. Lead-acid batteries give off hydrogen: air them, and keep sparks away.",
  "Run a generator outdoors only, well away from doors, windows and tents: its fumes kill without a smell.",
  "Roofs, ladders and panels in wind take two people, dry weather and sound footing; a bank is heavy, so lift it together.",
  "Panels in the sun are live and cannot be switched off; several in series can give a shock.",
];

/** What the model leaves out. */
export const LEFT_OUT =
  "One run stands for the stated sky and not for the odds. Not modelled here: snow and dirt that build up, panels shading one another, single devices failing.";

/** "Fire and short circuit (280 Ah at 12.8 V)" */
export const cautionTitle = ({ title, why }: Caution) => (why === null ? title : `${title} (${why})`);
