import { expect, test } from "vitest";
import { makeMemberShelf } from "../../../engine/ensemble/memberShelf.ts";

const row = (value: number) => () => Float64Array.of(value, value);
const PER_ROW = 16;

test("a row is met again under its key and member, and nowhere else", () => {
  const shelf = makeMemberShelf(10 * PER_ROW);
  shelf("sky").keep(3, 2, row(1));
  shelf("panels").keep(3, 2, row(2));
  expect(shelf("sky").rowOf(3)).toEqual(Float64Array.of(1, 1));
  expect(shelf("panels").rowOf(3)).toEqual(Float64Array.of(2, 2));
  expect(shelf("sky").rowOf(4)).toBeUndefined();
});

test("where there is no room, the first members stay and the rest is not even made", () => {
  const shelf = makeMemberShelf(2 * PER_ROW);
  const sky = shelf("sky");
  for (const member of [0, 1]) sky.keep(member, 2, row(member));
  sky.keep(2, 2, () => {
    throw new Error("made in vain");
  });
  expect([0, 1, 2].map((member) => sky.rowOf(member)?.[0])).toEqual([0, 1, undefined]);
});

test("what was not asked for longest goes first, whole", () => {
  const shelf = makeMemberShelf(4 * PER_ROW);
  for (const member of [0, 1]) shelf("old").keep(member, 2, row(member));
  for (const member of [0, 1]) shelf("new").keep(member, 2, row(member));
  expect(shelf("old").rowOf(0)).toBeDefined(); // asked for: "new" is now the older one
  shelf("newest").keep(0, 2, row(7));
  expect(shelf("new").rowOf(0)).toBeUndefined();
  expect(shelf("new").rowOf(1)).toBeUndefined();
  expect(shelf("old").rowOf(1)?.[0]).toBe(1);
  expect(shelf("newest").rowOf(0)?.[0]).toBe(7);
});

test("a row larger than all the room is not kept, and takes nothing else away but what is older", () => {
  const shelf = makeMemberShelf(PER_ROW);
  shelf("sky").keep(0, 20, () => new Float64Array(20));
  expect(shelf("sky").rowOf(0)).toBeUndefined();
});

test("whoever holds on to a key finds it empty once it had to go, and fills it again for all who ask for it", () => {
  const shelf = makeMemberShelf(2 * PER_ROW);
  const [one, other] = [shelf("sky"), shelf("sky")];
  for (const member of [0, 1]) one.keep(member, 2, row(member));
  expect(other.rowOf(1)?.[0]).toBe(1);
  shelf("panels").keep(0, 2, row(5));
  expect([one.rowOf(0), other.rowOf(1)]).toEqual([undefined, undefined]);
  for (const member of [0, 1]) other.keep(member, 2, row(8 + member));
  expect([one.rowOf(0)?.[0], one.rowOf(1)?.[0]]).toEqual([8, 9]);
  expect(shelf("panels").rowOf(0)).toBeUndefined();
  shelf("panels").keep(0, 2, row(6)); // what is counted as taken is what is there: this still finds room
  expect(shelf("panels").rowOf(0)?.[0]).toBe(6);
});
