import type { Cable } from "../scenario/cable.ts";
import type { Scenario } from "../scenario/scenario.ts";
import { largestFuseA } from "./ampacityA.ts";
import { smallestSize, type WireAsked } from "./wireSizes.ts";

/** Length of a lead beside the bank that nobody stated, and of one to gear, m (our choice, no source). */
export const BESIDE_BANK_M = 1;
export const TO_GEAR_M = 3;
/** Nobody wires a branch with less (our choice, no source). */
const THINNEST = { awg: { awg: "14" as const }, mm2: { mm2: 1.5 } };

/**
 * The lead that a branch counts with where none is stated: the thinnest that carries its current, keeps its drop and may stand behind the
 * smallest fuse that the branch wants. So it is never the reason for being over, and never a reason to call a branch within.
 * @returns null where nothing that is sold would do
 */
export function assumedCable(scenario: Scenario, oneWayM: number, asked: WireAsked): Cable | null {
  const thinnest = isMetric(scenario) ? THINNEST.mm2 : THINNEST.awg;
  const run: Cable = { ...thinnest, oneWayM, tempC: 25 };
  const fuseA = Math.max(asked.fuseA ?? 0, largestFuseA(thinnest, asked.airC) ?? 0);
  const size = smallestSize(run, { ...asked, fuseA });
  return size === null ? null : ({ ...size, oneWayM, tempC: 25 } as Cable);
}

/** Whether a plan gives its wires in mm²: then so are those that are assumed. */
function isMetric({ mainFeed, stations, panels }: Scenario): boolean {
  const stated = [
    mainFeed?.cable,
    ...stations.map(({ feed }) => feed.cable),
    ...panels.map(({ controller }) => controller.cable),
  ];
  const first = stated.find((cable) => cable !== undefined);
  return first?.mm2 !== undefined;
}
