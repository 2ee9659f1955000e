import { coolingOf } from "../scenario/coolingOf.ts";
import { leafShareOf } from "../scenario/leafShareOf.ts";
import type { Scenario } from "../scenario/scenario.ts";

const COOLING_WORDS = {
  openRack: "free all round (openRack)",
  closeRoof: "with a gap to a roof (closeRoof)",
  onRoof: "with no air behind (onRoof)",
} as const;

/** What was taken about panels and trees because nobody said it, as sentences. */
export function assumedRemarks(scenario: Scenario, seasonShare: number): string[] {
  const { panels, obstacles } = scenario;
  const said: string[] = [];
  const ways = Object.keys(COOLING_WORDS) as (keyof typeof COOLING_WORDS)[];
  const taken = ways.flatMap((way) => {
    const names = panels
      .filter((group) => group.cooling === undefined && group.count > 0 && coolingOf(group, obstacles) === way)
      .map(({ name }) => name);
    return names.length === 0 ? [] : [`${names.join(", ")} ${COOLING_WORDS[way]}`];
  });
  if (taken.length > 0)
    said.push(
      `How air reaches the panels was taken by where they are: ${taken.join("; ")}. State cooling if it is not so.`,
    );
  const trees = obstacles.filter((each) => each.kind === "tree").filter(({ leafShare }) => leafShare === undefined);
  const shedding = trees.filter(({ foliage }) => foliage !== "evergreen");
  if (shedding.length > 0) {
    const percent = Math.round(100 * leafShareOf(shedding[0]!, seasonShare));
    const names = shedding.map(({ id, name }) => name ?? id).join(", ");
    said.push(
      `Leaf by month, latitude and hemisphere: ${percent} % on (${names}). State leafShare where you know better, or foliage for an evergreen.`,
    );
  }
  return said;
}
