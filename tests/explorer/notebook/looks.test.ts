import { readFileSync } from "node:fs";
import { expect, test } from "vitest";
import { lookOf, looksOf, withLook } from "../../../engine/notebook/looks.ts";
import type { Notebook } from "../../../engine/notebook/notebook.ts";
import { withoutScenario, withScenario, withVariant } from "../../../engine/notebook/notebookEdits.ts";
import { notebookFrom } from "../../../engine/notebook/readNotebook.ts";
import { LOOKS } from "../../../engine/words/look.ts";
import { exampleNotebook } from "../../../explorer/notebook/exampleNotebook.ts";
import { salvagedNotebook } from "../../../explorer/notebook/salvage/salvagedNotebook.ts";

const example = exampleNotebook("example");
const { looks: _, ...old } = example;
/** A notebook of this many scenarios, without entries that would keep them. */
function grown(count: number, from: Notebook = { ...old, entries: [] }): Notebook {
  let next = from;
  while (next.scenarios.length < count) next = withVariant(next, "roof", [], `More ${next.scenarios.length}`).notebook;
  return next;
}
const all = (notebook: Notebook) => Object.fromEntries(notebook.scenarios.map(({ id }) => [id, lookOf(notebook, id)]));

test("a notebook that says nothing of looks gives them out in the order of its scenarios, and still opens", () => {
  expect(notebookFrom(old)).toMatchObject({ ok: true });
  expect(all(old)).toEqual({ roof: "first", meadow: "second", "two-blocks": "third" });
});

test("a fifth scenario has none until one of the four is let go; nobody else's changes", () => {
  const five = grown(5);
  const before = all(five);
  expect(Object.values(before)).toEqual([...LOOKS, "plain"]);
  const [, second, , , fifth] = five.scenarios.map(({ id }) => id);
  const four = withoutScenario(five, second!);
  expect(four.scenarios).toHaveLength(4);
  expect(all(four)).toEqual({ ...without(before, second!), [fifth!]: "second" });
  // A sixth comes and finds none; the other order of scenarios changes nothing.
  const turned = grown(5, { ...four, scenarios: [...four.scenarios].reverse() });
  expect(all(turned)).toMatchObject(all(four));
  expect(Object.values(all(turned)).filter((look) => look === "plain")).toHaveLength(1);
});

const without = (looks: Record<string, string>, id: string) =>
  Object.fromEntries(Object.entries(looks).filter(([each]) => each !== id));

test("adding, removing and renaming keep what each has, also where the file said nothing", () => {
  const three = grown(3);
  const two = withoutScenario(three, "meadow");
  expect(all(two)).toEqual({ roof: "first", "two-blocks": "third" });
  const again = grown(3, two);
  expect(all(again)).toMatchObject({ roof: "first", "two-blocks": "third" });
  expect(looksOf(again)[1]).toBe(again.scenarios[2]!.id);
  const named = withScenario(again, { ...again.scenarios[0]!, name: "Another name" } as never);
  expect(named.looks).toEqual(again.looks);
});

test("a look is taken from whoever has it, in exchange for one's own or for none", () => {
  const five = grown(5);
  const [first, second, third, , fifth] = five.scenarios.map(({ id }) => id) as [
    string,
    string,
    string,
    string,
    string,
  ];
  expect(all(withLook(five, first, "third"))).toMatchObject({ [first]: "third", [third]: "first", [second]: "second" });
  expect(all(withLook(five, fifth, "second"))).toMatchObject({ [fifth]: "second", [second]: "plain" });
  expect(withLook(five, first, "first")).toBe(five);
  expect(withLook(five, "nobody", "first")).toBe(five);
});

test("looks that a file spoils: two of one scenario are refused by name, one of a scenario that has gone is free", () => {
  const twice = { ...example, looks: ["roof", "roof"] };
  expect(notebookFrom(twice)).toMatchObject({
    ok: false,
    sentences: [expect.stringMatching(/Scenario roof has two looks/)],
  });
  const saved = salvagedNotebook(twice, "read");
  expect(saved).toMatchObject({ ok: true, missing: [expect.stringMatching(/drawn as it was/)] });
  expect(notebookFrom({ ...example, looks: ["a", "b", "c", "d", "e"] })).toMatchObject({ ok: false });
  const gone = { ...example, looks: ["gone", "roof"] };
  expect(notebookFrom(gone)).toMatchObject({ ok: true });
  expect(all(gone)).toEqual({ roof: "second", meadow: "first", "two-blocks": "third" });
});

/** Relative luminance and contrast as in W3C, Web Content Accessibility Guidelines 2.2, success criterion 1.4.3. */
function contrast(a: string, b: string): number {
  const luminance = (hex: string) => {
    const [r, g, blue] = [1, 3, 5].map((at) => {
      const share = Number.parseInt(hex.slice(at, at + 2), 16) / 255;
      return share <= 0.04045 ? share / 12.92 : ((share + 0.055) / 1.055) ** 2.4;
    }) as [number, number, number];
    return 0.2126 * r + 0.7152 * g + 0.0722 * blue;
  };
  const [low, high] = [luminance(a), luminance(b)].sort((x, y) => x - y) as [number, number];
  return (high + 0.05) / (low + 0.05);
}

test("every look's colour can be read on sheet and night in all three lights; in red light all are one red", () => {
  const css = readFileSync("engine/drawing/palette.css", "utf8");
  const lights = css.split(/:root(?:\[data-light="\w+"\])? \{/).slice(1, 4);
  const value = (block: string, name: string) => new RegExp(`--${name}: (#[0-9a-f]{6})`).exec(block)![1]!;
  for (const block of lights) {
    for (const name of ["s1", "s2", "s3", "s4"]) {
      for (const ground of ["sheet", "night"]) {
        expect(contrast(value(block, name), value(block, ground))).toBeGreaterThanOrEqual(4.5);
      }
    }
  }
  expect(new Set(["s1", "s2", "s3", "s4"].map((name) => value(lights[2]!, name)))).toEqual(new Set(["#ff3a2e"]));
  expect(new Set(["s1", "s2", "s3", "s4"].map((name) => value(lights[0]!, name))).size).toBe(4);
});
