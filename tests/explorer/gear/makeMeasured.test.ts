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
