import fc from "fast-check";
import { expect, test } from "vitest";
import { meets, placeLabels } from "../../../engine/drawing/placeLabels.ts";

const FRAME = { left: 0, right: 500, top: 0, bottom: 300 };

test("names cover neither one another nor what is taken, and stay in the frame", () => {
  const label = fc.record({
    text: fc.constantFrom("oak", "eastern walnut 11 m", "hay barn"),
    short: fc.constant("oak"),
    x: fc.integer({ min: 0, max: 500 }),
    y: fc.integer({ min: 0, max: 300 }),
    clearPx: fc.integer({ min: 4, max: 20 }),
    best: fc.constantFrom("beside" as const, "under" as const),
  });
  const taken = [{ left: 100, right: 180, top: 80, bottom: 140 }];
  fc.assert(
    fc.property(fc.array(label, { maxLength: 20 }), (wanted) => {
      const placed = placeLabels(wanted, FRAME, taken).flatMap((place) => (place === null ? [] : [place.box]));
      placed.forEach((box, i) => {
        expect(box.left >= 0 && box.right <= 500 && box.top >= 0 && box.bottom <= 300).toBe(true);
        for (const other of [...taken, ...placed.slice(0, i)]) expect(meets(box, other)).toBe(false);
      });
    }),
  );
});

test("beside its point where there is room, shortened before it is moved away, and left out where there is none", () => {
  const name = { text: "eastern walnut 11 m", short: "oak", clearPx: 9, best: "beside" as const };
  const [free] = placeLabels([{ ...name, x: 100, y: 100 }], FRAME);
  expect(free).toMatchObject({ text: name.text, anchor: "start", x: 109 });
  const tight = { left: 60, right: 160, top: 80, bottom: 120 };
  expect(placeLabels([{ ...name, x: 100, y: 100 }], tight)[0]).toMatchObject({
    text: "oak",
    anchor: "start",
    leader: "",
  });
  const around = { left: 60, right: 140, top: 80, bottom: 120 };
  const [away] = placeLabels([{ ...name, x: 100, y: 100 }], FRAME, [around]);
  expect(away!.leader).toMatch(/^M100 100L/);
  expect(placeLabels([{ ...name, x: 100, y: 100 }], { left: 90, right: 110, top: 90, bottom: 110 })).toEqual([null]);
});
