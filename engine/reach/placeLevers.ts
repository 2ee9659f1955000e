import { panelCableOf } from "../scenario/cable.ts";
import type { Change } from "../scenario/change.ts";
import type { PanelGroup } from "../scenario/panelGroup.ts";
import type { Scenario } from "../scenario/scenario.ts";
import type { TimeGrid } from "../scenario/timeGrid.ts";
import { leadRule } from "../spots/leadRule.ts";
import type { SiteSun } from "../spots/siteSun.ts";
import { MINUTES_A_TURN, turnsIn } from "../versus/turns.ts";
import { type Amount, type Lever, NOTHING, type Price, put } from "./lever.ts";
import { inside, lightWords } from "./openPanels.ts";

/** How far away from where they stand panels, or the vehicle under them, are looked at, m. */
const WITHIN_M = [10, 20, 30] as const;
const TURNS = [
  ["09:00", "13:00"],
  ["07:30", "11:00", "14:30"],
] as const;

/** Each group moved to where the sun is, and turned after it by hand. */
export function placeLevers(scenario: Scenario, grid: TimeGrid, sun: SiteSun): Lever[] {
  const groups = scenario.panels.filter(({ count }) => count > 0);
  return [
    ...(scenario.obstacles.length > 0 ? groups.map((group) => moved(group, sun)) : []),
    ...groups.map((group) => turned(group, grid)),
  ].filter(({ amounts }) => amounts.length > 0);
}

function moved(group: PanelGroup, sun: SiteSun): Lever {
  const { id, at, controller } = group;
  const amounts: Amount[] = [];
  const leadAt = leadRule(group).at;
  const here = sun.shareOf(group);
  let before = here;
  for (const withinM of WITHIN_M) {
    const spot = sun.near(group, withinM);
    if (spot === null || spot.sunShare <= before * 1.01) continue;
    before = spot.sunShare;
    const lead = leadAt(spot);
    const changes: Change[] = [
      { at: `panels.${id}.at.eastM`, to: spot.eastM },
      { at: `panels.${id}.at.northM`, to: spot.northM },
    ];
    const cable = panelCableOf(controller);
    if (lead !== cable.oneWayM) {
      changes.push(put(`panels.${id}.controller`, { ...controller, cable: { ...cable, oneWayM: lead } }));
    }
    amounts.push({
      words: wayWords(spot.eastM - at.eastM, spot.northM - at.northM),
      changes,
      price: { ...NOTHING, minutes: null },
      why: `${lightWords(spot.sunShare)} of the open's light comes there, ${lightWords(here)} where it stands`,
    });
  }
  const name = `${group.name} to a sunnier place`;
  return { id: `spot-${id}`, kind: "spot", name, amounts, isMonotone: false, touches: [`panels.${id}.at`] };
}

/** "12 m north and 4 m east" */
function wayWords(eastM: number, northM: number): string {
  const ways = [
    northM === 0 ? "" : `${metres(northM)} ${northM > 0 ? "north" : "south"}`,
    eastM === 0 ? "" : `${metres(eastM)} ${eastM > 0 ? "east" : "west"}`,
  ];
  return ways.filter((way) => way !== "").join(" and ");
}

const metres = (value: number) => `${Number(Math.abs(value).toFixed(1))} m`;

function turned(group: PanelGroup, grid: TimeGrid): Lever {
  const { id, mount } = group;
  const now = mount.kind === "aimed" ? mount.aims.map(({ at }) => at) : [];
  const turns = mount.kind === "flat" ? [] : TURNS.filter((aims) => aims.length > now.length);
  const amounts = turns.map(
    (aims): Amount => ({
      words: `${aims.length} times a day, at ${aims.join(", ")}`,
      changes: [put(`panels.${id}.mount`, { kind: "aimed", aims: aims.map((at) => ({ at })) })],
      price: turnsPrice(turnsIn(aims, grid) - turnsIn(now, grid)),
      why: `they face the sun more of the day; each turn is counted as ${MINUTES_A_TURN} min`,
    }),
  );
  return {
    id: `aim-${id}`,
    kind: "aim",
    name: `Turning ${inside(group.name)} after the sun`,
    amounts,
    isMonotone: false,
    touches: [`panels.${id}.mount`],
  };
}

/** What so many turns by hand take. */
export function turnsPrice(turns: number): Price {
  return { ...NOTHING, minutes: MINUTES_A_TURN * turns };
}
