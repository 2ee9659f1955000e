import { expect, test } from "vitest";
import { annotationPlace } from "../../engine/answers/run/annotationPlace.ts";
import { spread } from "../../engine/drawing/endLabels.ts";

const label = (y: number) => ({ x: 0, y, figure: String(y), words: "", look: "", dotted: false });

test("labels that want one row each get one, in their order, within the stratum", () => {
  const rows = spread([label(50), label(10), label(52), label(54)], 0, 100);
  expect(rows.map((row) => row.figure)).toEqual(["10", "50", "52", "54"]);
  const heights = rows.map((row) => row.labelY);
  for (let i = 1; i < heights.length; i++) expect(heights[i]! - heights[i - 1]!).toBeGreaterThanOrEqual(22);
  expect(heights.at(-1)).toBeLessThanOrEqual(100);
});

test("labels with room enough stay where they are", () => {
  expect(spread([label(10), label(60)], 0, 100).map((row) => row.labelY)).toEqual([10, 60]);
});

test("an annotation finds ground that no line crosses and nothing covers", () => {
  const chart = { left: 0, right: 800, top: 0, bottom: 200 };
  const taken = [{ left: 100, right: 300, top: 90, bottom: 130 }];
  const falling = (x: number) => [200 - x / 4];
  const place = annotationPlace({ x: 400, y: 100 }, 150, chart, taken, falling);
  expect(place).not.toBeNull();
  const { box } = place!;
  expect(box.left >= 300 || box.right <= 100 || box.top >= 130 || box.bottom <= 90).toBe(true);
  for (let x = box.left; x <= box.right; x++) {
    const y = falling(x)[0]!;
    expect(y > box.top && y < box.bottom).toBe(false);
  }
});

test("an annotation with no room is left out rather than laid over a line", () => {
  const chart = { left: 0, right: 200, top: 0, bottom: 60 };
  expect(annotationPlace({ x: 100, y: 30 }, 150, chart, [], () => [10, 20, 30, 40, 50])).toBeNull();
});

test("an annotation's leader runs through nothing that is written already", () => {
  const chart = { left: 0, right: 800, top: 0, bottom: 200 };
  // Written right above the ring, from side to side: no way up, so the words go down.
  const written = { left: 340, right: 460, top: 60, bottom: 80 };
  const place = annotationPlace({ x: 400, y: 100 }, 150, chart, [written], () => []);
  const beneath = { left: 340, right: 460, top: 120, bottom: 140 };
  expect(place!.y).toBeGreaterThan(100);
  const other = annotationPlace({ x: 400, y: 100 }, 150, chart, [beneath], () => []);
  expect(other!.y).toBeLessThan(100);
  expect(annotationPlace({ x: 400, y: 100 }, 150, chart, [written, beneath], () => [])).toBeNull();
});
