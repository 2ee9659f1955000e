import type { ScenarioInput } from "../../engine/scenario/scenario.ts";

/** A scenario with one panel group more, in the open and facing south. */
export function withOnePanelMore(input: ScenarioInput, ratedW: number): ScenarioInput {
  return {
    ...input,
    panels: [
      ...(input.panels ?? []),
      {
        id: "more",
        name: "one more",
        count: 1,
        module: { ratedW },
        mount: { kind: "fixed", tiltDeg: 30, azimuthDeg: 180 },
        at: { eastM: 2, northM: 2, heightM: 1 },
        // Its own draw would be a load, and a load may lower the charge.
        controller: { ownDrawW: 0, stepDownOnly: false },
      },
    ],
  };
}
