import { expect, test } from "vitest";
import { makeMeasured } from "../../../explorer/gear/makeMeasured.ts";

function memory(text: string | null = null) {
  let kept = text;
  return {
    getItem: () => kept,
    setItem: (_: string, value: string) => {
      kept = value;
    },
  };
}
const today = () => "2026-05-31";

test("a figure is kept for the next time, and away again when it is taken away", () => {
  const store = memory();
  const shelf = makeMeasured(store, today);
  shelf.write("hf-100", "idle", 1.4);
  shelf.write("hf-100", "working", 19);
  const next = makeMeasured(store, today);
  expect(next.of("hf-100")).toEqual({ gear: "hf-100", idle: 1.4, working: 19, on: "2026-05-31" });
  next.write("hf-100", "idle", null);
  expect(makeMeasured(store, today).of("hf-100")).toEqual({ gear: "hf-100", working: 19, on: "2026-05-31" });
  next.write("hf-100", "working", null);
  expect(next.measured()).toEqual([]);
});

test("kinds of one's own are kept, go along in the file, and off the shelf again", () => {
  const store = memory();
  const shelf = makeMeasured(store, today);
  expect(shelf.isEmpty()).toBe(true);
  shelf.addOwn({ name: "Mast winch", unit: "A", working: 28, use: "whenStaffed", share: 0.01 });
  shelf.addOwn({ name: "Mast winch", unit: "A", working: 30, use: "whenStaffed", share: 0.01 });
  expect(makeMeasured(store, today).own()).toMatchObject([{ id: "mast-winch", working: { usual: 30 }, share: 0.01 }]);
  const other = makeMeasured(memory(), today);
  expect(other.takeIn(shelf.text())).toMatch(/and 1 own kinds? /);
  expect(other.own()).toEqual(shelf.own());
  other.removeOwn("mast-winch");
  expect(other.isEmpty()).toBe(true);
});

test("a figure that can hardly be is asked about, and stays confirmed while it is odd", () => {
  const store = memory();
  const shelf = makeMeasured(store, today);
  expect(shelf.doubt("fridge", "working", 4)).toBeNull();
  expect(shelf.doubt("fridge", "working", 320)).toMatch(/really\?$/);
  shelf.write("fridge", "working", 320, true);
  expect(makeMeasured(store, today).of("fridge")).toEqual({
    gear: "fridge",
    working: 320,
    isConfirmed: true,
    on: "2026-05-31",
  });
  expect(makeMeasured(memory(), today).takeIn(shelf.text())).toMatch(/^Measured figures of 1 /);
  shelf.write("fridge", "working", 4);
  expect(shelf.of("fridge")).toEqual({ gear: "fridge", working: 4, on: "2026-05-31" });
  const doubtful = '{"format":"duskline-gear","version":1,"measured":[{"gear":"fridge","working":320}]}';
  expect(shelf.takeIn(doubtful)).toMatch(/320 A .* Nothing was taken in/);
  expect(shelf.of("fridge")?.working).toBe(4);
});

test("a file goes before what was here and leaves the rest; a wrong one changes nothing", () => {
  const shelf = makeMeasured(memory(), today);
  shelf.write("fan", "working", 0.4);
  shelf.write("lamp", "working", 0.3);
  const other = makeMeasured(memory(), today);
  other.write("fan", "working", 0.5);
  expect(shelf.takeIn(other.text())).toMatch(/1 kinds? of gear/);
  expect([shelf.of("fan")?.working, shelf.of("lamp")?.working]).toEqual([0.5, 0.3]);
  expect(shelf.takeIn('{"format":"duskline-gear"}')).toMatch(/version/);
  expect(shelf.of("fan")?.working).toBe(0.5);
});

test("a browser that keeps nothing, a full one and a spoilt store still work, and say so", () => {
  const none = makeMeasured(null, today);
  none.write("fan", "working", 0.4);
  expect([none.of("fan")?.working, none.isKept()]).toEqual([0.4, false]);
  const full = makeMeasured(
    {
      getItem: () => null,
      setItem: () => {
        throw new Error("full");
      },
    },
    today,
  );
  full.write("fan", "working", 0.4);
  expect([full.of("fan")?.working, full.isKept()]).toEqual([0.4, false]);
  expect(makeMeasured(memory('{"__proto__":{}}'), today).measured()).toEqual([]);
});
