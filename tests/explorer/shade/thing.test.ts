import { expect, test } from "vitest";
import { applyChanges } from "../../../engine/scenario/applyChanges.ts";
import { readScenario } from "../../../engine/scenario/readScenario.ts";
import type { Scenario } from "../../../engine/scenario/scenario.ts";
import {
  changesOfMove,
  moveWords,
  onSite,
  placeWords,
  thingsOf,
  withMove,
} from "../../../explorer/entries/shade/thing.ts";
import { EXAMPLE } from "../exampleRun.ts";

function read(document: unknown): Scenario {
  const found = readScenario(document);
  if (!found.ok) throw new Error(found.problems[0]!.message);
  return found.scenario;
}
const plain = (text: string) => text.replaceAll("\u202f", " ");

test("all but the skyline can be moved, boxes first and panels last", () => {
  expect(thingsOf(read(EXAMPLE)).map((thing) => thing.key)).toEqual([
    "obstacles.barn",
    "obstacles.old-walnut",
    "obstacles.twin-east",
    "obstacles.twin-west",
    "obstacles.north-walnut",
    "panels.roof.at",
  ]);
});

test.each(thingsOf(read(EXAMPLE)).map((thing) => [thing.key, thing] as const))(
  "what is drawn while %s moves is what its changes make of the document",
  (key, thing) => {
    const move = { key, eastM: thing.eastM + 3.5, northM: thing.northM - 12 };
    const changed = applyChanges(EXAMPLE, changesOfMove(thing, move));
    expect(changed.ok).toBe(true);
    if (changed.ok) expect(withMove(read(EXAMPLE), move)).toEqual(read(changed.document));
    expect(withMove(read(EXAMPLE), null)).toEqual(read(EXAMPLE));
  },
);

test("a move along one axis is one change, and none is none", () => {
  const from = { eastM: 2, northM: -6.5 };
  expect(changesOfMove(from, { key: "obstacles.oak", eastM: 3.5, northM: -6.5 })).toEqual([
    { at: "obstacles.oak.eastM", to: 3.5 },
  ]);
  expect(changesOfMove(from, { key: "obstacles.oak", ...from })).toEqual([]);
});

test("moves and places are said in metres and compass words", () => {
  expect(plain(moveWords({ eastM: 2, northM: 0 }, { eastM: 3.5, northM: 0 }))).toBe("1.5 m east");
  expect(plain(moveWords({ eastM: 2, northM: 0 }, { eastM: 0, northM: -2 }))).toBe("2 m west and 2 m south");
  expect(moveWords({ eastM: 2, northM: 0 }, { eastM: 2, northM: 0 })).toBe("nowhere");
  expect(plain(placeWords({ eastM: 2, northM: -6.5 }))).toBe("2 m east and 6.5 m south of the middle");
  expect(placeWords({ eastM: 0, northM: 0 })).toBe("in the middle of the site");
});

test("positions are kept to the decimetre and within what the format allows", () => {
  expect(onSite(1.26)).toBe(1.3);
  expect(onSite(-700)).toBe(-500);
  expect(onSite(700)).toBe(500);
});
