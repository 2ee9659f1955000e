import { expect, test } from "vitest";
import { headlineOf } from "../../../engine/notebook/headlineOf.ts";
import type { Notebook } from "../../../engine/notebook/notebook.ts";
import { standingOf } from "../../../engine/notebook/standingOf.ts";
import { exampleNotebook } from "../../../explorer/notebook/exampleNotebook.ts";
import { reportOf } from "../report/reportOf.ts";

const example: Notebook = { ...exampleNotebook("example"), members: 20 };
const ids = example.scenarios.map(({ id }) => id);
const forecastOf = (scenarios: string[]) =>
  ({ id: "forecast", kind: "forecast", title: "Will it hold?", doc: { scenarios } }) as Notebook["entries"][number];

test("a reading belongs to the plan that the headline speaks of", async () => {
  const name = (id: string) => example.scenarios.find((each) => each.id === id)!.name;
  expect(ids.length).toBeGreaterThan(1);
  for (const scenarios of [[ids[1]!, ids[0]!], [ids[1]!]]) {
    const notebook = { ...example, entries: [forecastOf(scenarios)] };
    const standing = standingOf(notebook);
    const made = await reportOf(notebook);
    if (!made.ok) throw new Error(made.sentences.join(" "));
    const [first] = headlineOf(made.page, notebook)!.words!;
    expect(first!.text.toLowerCase()).toContain(name(standing).toLowerCase());
  }
});

test("without a headline it is the first scenario", () => {
  expect(standingOf({ ...example, entries: [] })).toBe(ids[0]);
});
