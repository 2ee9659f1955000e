import { expect, test } from "vitest";
import { panelCableOf } from "../../../engine/scenario/cable.ts";
import type { PanelGroup } from "../../../engine/scenario/panelGroup.ts";
import { leadRule } from "../../../engine/spots/leadRule.ts";
import { takenSpots } from "../../../engine/spots/takenSpots.ts";
import { read, SITE } from "./spotsSite.ts";

const [carried, roof] = read(SITE).panels as [PanelGroup, PanelGroup];
const on = (oneWayM: number, northM: number, group = carried): PanelGroup => ({
  ...group,
  at: { ...group.at, eastM: 0, northM },
  controller: { ...group.controller, cable: { ...panelCableOf(group.controller), oneWayM } },
});
const south = (northM: number) => ({ eastM: 0, northM: -northM });

test("a lead that just reaches is as much shorter or longer as a spot is nearer or farther, in whole metres", () => {
  const rule = leadRule(on(25, 27.3));
  expect(rule.reachM).toBeCloseTo(27.3, 9);
  expect(rule.at({ eastM: 0, northM: 27.3 })).toBe(25);
  expect(rule.at(south(12))).toBe(10);
  expect(rule.at(south(1))).toBe(3);
  expect(rule.at(south(30))).toBe(28);
  expect(rule.at(south(450))).toBe(200);
});

test("two metres of slack stay slack; a coil with more to spare is kept whole wherever it reaches", () => {
  const slack = leadRule(on(8, 6));
  expect(slack.at({ eastM: 0, northM: 6 })).toBe(8);
  expect(slack.at(south(10))).toBe(12);
  const coil = leadRule(on(25, 6));
  expect(coil.reachM).toBe(23);
  expect([coil.at(south(4)), coil.at(south(22.9)), coil.at(south(23.5))]).toEqual([25, 25, 26]);
});

test("a roof takes its lead along; what lies flat and is set out by hand does not", () => {
  expect(leadRule(on(4, 0, roof)).at(south(40))).toBe(4);
  expect(leadRule(on(4, 0, { ...roof, out: [{ from: "08:00", to: "18:00" }] })).at(south(40))).toBe(42);
});

test("nothing can stand in a wall or at a trunk, but where it stands now it may", () => {
  const isTaken = takenSpots(carried, read(SITE).obstacles);
  expect([
    isTaken({ eastM: 0, northM: 3 }),
    isTaken({ eastM: 6, northM: 4.4 }),
    isTaken({ eastM: -6, northM: -1 }),
  ]).toEqual([true, true, true]);
  expect([
    isTaken({ eastM: 0, northM: 6 }),
    isTaken({ eastM: 9, northM: 3 }),
    isTaken({ eastM: -6, northM: 0 }),
  ]).toEqual([false, false, false]);
  const inside = takenSpots({ ...carried, at: { ...carried.at, northM: 3 } }, read(SITE).obstacles);
  expect(inside({ eastM: 2, northM: 3 })).toBe(false);
});
