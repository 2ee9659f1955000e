import { expect, test } from "vitest";
import { mergeSizes, sizeMembers } from "../../../engine/size/sizeMembers.ts";
import { SIZE_SCENARIO, sizeMapOf } from "./sizeScenario.ts";

const X = "bank.blockAh=70:130:7";
const Y = "panels.roof.count=0,1,2";

test("members in parts, in any order and on any thread, are the members in one batch, exactly", () => {
  const whole = sizeMembers(sizeMapOf(X, Y), 0, 60);
  const map = sizeMapOf(X, Y);
  const last = sizeMembers(map, 35, 60);
  const first = sizeMembers(map, 0, 20);
  const middle = structuredClone(sizeMembers(sizeMapOf(X, Y), 20, 35));
  expect(mergeSizes([last, first, middle])).toEqual(whole);
  expect(sizeMembers(sizeMapOf(X, Y, SIZE_SCENARIO, "another seed"), 0, 60).held).not.toEqual(whole.held);
});

test("parts with a hole between them, or of other maps, are refused", () => {
  const map = sizeMapOf(X);
  const [a, b] = [sizeMembers(map, 0, 2), sizeMembers(map, 3, 4)];
  expect(() => mergeSizes([a, b])).toThrow(/members up to 2 and then from 3/);
  expect(() => mergeSizes([a, { ...b, from: 2, seed: "x" }])).toThrow(/one map and one seed/);
  expect(() => mergeSizes([a, { ...b, from: 2, held: new Uint32Array(2) }])).toThrow(/one map and one seed/);
  expect(() => mergeSizes([])).toThrow(/at least one part/);
  expect(() => sizeMembers(map, 5, 5)).toThrow(/members must be whole numbers/);
});

test("a run can be stopped, and then holds the members that are done", () => {
  const map = sizeMapOf(X, Y);
  const heard: number[] = [];
  const part = sizeMembers(map, 10, 40, (done) => {
    heard.push(done);
    return done < 12;
  });
  expect(heard).toEqual([4, 8, 12]);
  expect(part).toEqual(sizeMembers(map, 10, 22));
});

/**
 * The members are the same in every cell, so here nothing hides a wrong direction. In general more may mean worse (generator,
 * disconnect, selector, volts: see the chapter on that in docs/model.md), so the sample has neither generator nor disconnect.
 */
test("member by member, a bigger bank and more modules hold wherever less did", () => {
  const document = { ...SIZE_SCENARIO, sources: [], bank: { ...SIZE_SCENARIO.bank, disconnectV: 0, reconnectV: 0 } };
  const map = sizeMapOf("bank.blockAh=70,90,110,130", "panels.roof.count=0,1,2,3", document);
  let differ = 0;
  for (let member = 0; member < 60; member++) {
    const { held } = sizeMembers(map, member, member + 1);
    if (new Set(held).size > 1) differ++;
    for (let r = 0; r < 4; r++) {
      for (let c = 0; c < 4; c++) {
        const here = held[4 * r + c]!;
        if (c > 0) expect(here).toBeGreaterThanOrEqual(held[4 * r + c - 1]!);
        if (r > 0) expect(here).toBeGreaterThanOrEqual(held[4 * (r - 1) + c]!);
      }
    }
  }
  expect(differ).toBeGreaterThan(30);
});
