import { describe, expect, test } from "vitest";
import { applyChanges } from "../../../engine/scenario/applyChanges.ts";
import type { Change } from "../../../engine/scenario/change.ts";

const DOCUMENT = {
  bank: { blockAh: 100 },
  panels: [
    { id: "roof", count: 2 },
    { id: "1", count: 3 },
  ],
  days: ["clear", "mixed"],
};

function changed(...changes: Change[]): unknown {
  const result = applyChanges(DOCUMENT, changes);
  if (!result.ok) throw new Error(result.problems[0]!.message);
  return result.document;
}

function refused(...changes: Change[]): string[] {
  const result = applyChanges(DOCUMENT, changes);
  return result.ok ? [] : result.problems.map((problem) => problem.message);
}

test("a value is put at a place, in a copy", () => {
  expect(changed({ at: "bank.blockAh", to: 200 })).toEqual({ ...DOCUMENT, bank: { blockAh: 200 } });
  expect(DOCUMENT.bank.blockAh).toBe(100);
});

test("a field that is not there yet may be put", () => {
  expect(changed({ at: "bank.healthShare", to: 0.8 })).toMatchObject({ bank: { blockAh: 100, healthShare: 0.8 } });
  expect(changed({ at: "bank.coldChargeLockC", to: null })).toMatchObject({ bank: { coldChargeLockC: null } });
});

test("inside a list an id is meant first, and a place in the list only where no id fits", () => {
  expect(changed({ at: "panels.roof.count", to: 9 })).toMatchObject({ panels: [{ count: 9 }, { count: 3 }] });
  expect(changed({ at: "panels.1.count", to: 9 })).toMatchObject({ panels: [{ count: 2 }, { id: "1", count: 9 }] });
  expect(changed({ at: "panels.0.count", to: 9 })).toMatchObject({ panels: [{ count: 9 }, { count: 3 }] });
  expect(changed({ at: "days.1", to: "overcast" })).toMatchObject({ days: ["clear", "overcast"] });
});

test("something is added to a list, also to one that is not there yet", () => {
  expect(changed({ at: "days", add: "fair" })).toMatchObject({ days: ["clear", "mixed", "fair"] });
  expect(changed({ at: "sources", add: { id: "gen" } })).toMatchObject({ sources: [{ id: "gen" }] });
});

test("something is taken out of a list or a group", () => {
  expect(changed({ at: "panels.roof", remove: true })).toMatchObject({ panels: [{ id: "1" }] });
  expect(changed({ at: "bank.blockAh", remove: true })).toEqual({ ...DOCUMENT, bank: {} });
});

test("changes are worked in one after the other", () => {
  const document = changed({ at: "panels", add: { id: "new", count: 1 } }, { at: "panels.new.count", to: 4 });
  expect(document).toMatchObject({ panels: [{}, {}, { id: "new", count: 4 }] });
});

describe("a place that is not there", () => {
  test.each([
    ["panels.barn.count", "barn"],
    ["panels.7.count", "7"],
    ["bank.chemistry.name", "chemistry"],
    ["nothing.at.all", "nothing"],
    ["bank.blockAh.deeper", "blockAh"],
  ])("%s is named by the part that is missing, %s", (at, part) => {
    expect(refused({ at, to: 1 })).toEqual([expect.stringContaining(`at "${at}" finds no "${part}"`)]);
  });

  test("nothing can be taken out of it or added to what is no list", () => {
    expect(refused({ at: "bank.healthShare", remove: true })).toHaveLength(1);
    expect(refused({ at: "bank", add: 1 })).toHaveLength(1);
  });

  test("all of them are said, and none is worked in by half", () => {
    expect(refused({ at: "a.b", to: 1 }, { at: "bank.blockAh", to: 5 }, { at: "c.d", to: 1 })).toHaveLength(2);
    expect(DOCUMENT.bank.blockAh).toBe(100);
  });
});

test("a change that says nothing is a problem and no exception", () => {
  const result = applyChanges({ name: "x" }, [{ at: "name" }]);
  expect(result).toMatchObject({ ok: false, problems: [{ code: "empty-change", path: ["changes", 0] }] });
});
