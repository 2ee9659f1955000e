import type { PlanPoint } from "../../../engine/answers/shade/boxFootprint.ts";
import type { Change, Scenario } from "../../../engine/scenario/index.ts";
import type { Box, Tree } from "../../../engine/scenario/obstacle.ts";
import type { PanelGroup } from "../../../engine/scenario/panelGroup.ts";
import { differenceInUnits } from "../../../engine/words/displayUnits.ts";
import { figure } from "../../../engine/words/numbers.ts";

/** Something on the site that can be moved. */
export type Thing = PlanPoint & {
  /** Its place in the document, "obstacles.barn" or "panels.roof.at": also where its eastM and northM stand. */
  readonly key: string;
  readonly name: string;
} & ({ readonly tree: Tree } | { readonly box: Box } | { readonly group: PanelGroup });

/** How far from the origin anything may stand, as the scenario format has it, m. */
const FARTHEST_M = 500;

/** A thing on its way. */
export interface Move extends PlanPoint {
  readonly key: string;
}

/** Everything that can be moved, in the order in which it is drawn: boxes under crowns under panels. */
export function thingsOf(scenario: Scenario): Thing[] {
  const place = ({ eastM, northM }: PlanPoint) => ({ eastM, northM });
  const boxes: Thing[] = [];
  const trees: Thing[] = [];
  for (const obstacle of scenario.obstacles) {
    const key = `obstacles.${obstacle.id}`;
    const name = obstacle.name ?? obstacle.id;
    if (obstacle.kind === "tree") trees.push({ key, name, ...place(obstacle), tree: obstacle });
    else if (obstacle.kind === "box") boxes.push({ key, name, ...place(obstacle), box: obstacle });
  }
  const groups = scenario.panels
    .filter((group) => group.count > 0)
    .map((group): Thing => ({ key: `panels.${group.id}.at`, name: group.name, ...place(group.at), group }));
  return [...boxes, ...trees, ...groups];
}

/** Farther out than the format allows nothing goes; positions are kept to the decimetre. */
export function onSite(metres: number): number {
  return Math.round(Math.min(FARTHEST_M, Math.max(-FARTHEST_M, metres)) * 10) / 10;
}

/** The scenario with one thing elsewhere. */
export function withMove(scenario: Scenario, move: Move | null): Scenario {
  if (move === null) return scenario;
  const { eastM, northM } = move;
  const [list, id] = move.key.split(".");
  if (list === "panels") {
    const panels = scenario.panels.map((group) =>
      group.id === id ? { ...group, at: { ...group.at, eastM, northM } } : group,
    );
    return { ...scenario, panels };
  }
  const obstacles = scenario.obstacles.map((obstacle) =>
    obstacle.id === id && obstacle.kind !== "horizon" ? { ...obstacle, eastM, northM } : obstacle,
  );
  return { ...scenario, obstacles };
}

/** A move as changes to the document. */
export function changesOfMove(from: PlanPoint, move: Move): Change[] {
  return [
    ...(move.eastM === from.eastM ? [] : [{ at: `${move.key}.eastM`, to: move.eastM }]),
    ...(move.northM === from.northM ? [] : [{ at: `${move.key}.northM`, to: move.northM }]),
  ];
}

/** "1.5 m east and 2 m north"; "nowhere". */
export function moveWords(from: PlanPoint, to: PlanPoint): string {
  return offsetWords(to.eastM - from.eastM, to.northM - from.northM) ?? "nowhere";
}

/** "2 m east and 6.5 m south of the middle"; "in the middle of the site". */
export function placeWords({ eastM, northM }: PlanPoint): string {
  const offset = offsetWords(eastM, northM);
  return offset === null ? "in the middle of the site" : `${offset} of the middle`;
}

function offsetWords(eastM: number, northM: number): string | null {
  const metres = (value: number, plus: string, minus: string) => {
    const isNone = figure(Math.abs(value), 1) === "0";
    return isNone ? [] : [`${differenceInUnits(Math.abs(value), "m")} ${value > 0 ? plus : minus}`];
  };
  const parts = [...metres(eastM, "east", "west"), ...metres(northM, "north", "south")];
  return parts.length === 0 ? null : parts.join(" and ");
}
