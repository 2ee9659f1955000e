import { panelCableOf } from "../scenario/cable.ts";
import type { PanelGroup } from "../scenario/panelGroup.ts";
import type { Spot } from "./spotGrid.ts";

/** What a lead has more than the straight way, at most: round things, up to the panels, m. A longer one is taken as a coil with length to spare. */
const SLACK_M = 2;
/** No lead is made up shorter than this, m. */
const SHORTEST_M = 3;
/** As long as the scenario format lets a cable be, m. */
const LONGEST_M = 200;

/** Panels that are carried to where the sun is, rather than fixed to a roof that goes there as a whole. */
export const isPortable = ({ mount, out }: Pick<PanelGroup, "mount" | "out">) =>
  mount.kind !== "flat" || out !== undefined;

/** How long a group's lead is at any spot. */
export interface LeadRule {
  /** The lead that the scenario states, one way, m. */
  readonly statedM: number;
  /** How far from the middle of the site that lead reaches, m; null for panels on a roof, which take it along. */
  readonly reachM: number | null;
  /** The lead at a spot, one way, m. */
  readonly at: (spot: Spot) => number;
}

/**
 * The lead begins at the middle of the site, or nearer to the panels by as much as the plan as it stands needs it to (a door, the end of a van). A
 * spot takes the straight way from there and the slack that the stated lead has, up to two metres, in whole metres; where the stated lead
 * has more length to spare than that, it is kept as it is wherever it reaches.
 */
export function leadRule(group: PanelGroup): LeadRule {
  const statedM = panelCableOf(group.controller).oneWayM;
  if (!isPortable(group)) return { statedM, reachM: null, at: () => statedM };
  const moreM = statedM - Math.hypot(group.at.eastM, group.at.northM);
  const slackM = Math.min(SLACK_M, moreM);
  const at = ({ eastM, northM }: Spot) => {
    const neededM = Math.hypot(eastM, northM) + slackM;
    const madeM = Math.max(SHORTEST_M, Math.ceil(neededM - 1e-6));
    if (neededM > statedM + 1e-6) return Math.min(LONGEST_M, madeM);
    return moreM > SLACK_M ? statedM : Math.min(statedM, madeM);
  };
  return { statedM, reachM: statedM - slackM, at };
}
