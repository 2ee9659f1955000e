import { describe, expect, test } from "vitest";
import type { Notebook } from "../../../engine/notebook/notebook.ts";
import { withVariant } from "../../../engine/notebook/notebookEdits.ts";
import { notebookFrom } from "../../../engine/notebook/readNotebook.ts";
import { lostChanges, scenarioDocument } from "../../../engine/notebook/scenarioDocument.ts";
import { checkedNotebook } from "../../../explorer/notebook/checkedNotebook.ts";
import { exampleNotebook } from "../../../explorer/notebook/exampleNotebook.ts";
import { makeNotebook } from "../../../explorer/notebook/makeNotebook.ts";
import { workSteps } from "../../../explorer/share/workSteps.ts";
import { MISSHAPEN, SENSELESS, spoiled } from "./malformed.ts";

const example = exampleNotebook("example");
const roof = (example.scenarios[0] as { document: unknown }).document;
const withRoof = (document: unknown) =>
  ({
    ...example,
    scenarios: [...example.scenarios, { id: "spoiled", name: "Spoiled", document }],
  }) as Notebook;
const title = ([at, instead]: readonly [string, unknown]) => `${at} ${JSON.stringify(instead) ?? "missing"}`;

describe("a document that has not the frame of one", () => {
  test.each(MISSHAPEN.map((each) => [title(each), each] as const))(
    "%s: refused, left out, and never shown",
    (_, each) => {
      const notebook = withRoof(spoiled(roof, each));
      const read = notebookFrom(JSON.parse(JSON.stringify(notebook)));
      expect(!read.ok && read.sentences.join()).toMatch(/^Scenario Spoiled: .*(should be|is missing|is no kind)/);
      const found = scenarioDocument(notebook, "spoiled");
      expect(!found.ok && found.sentence).toMatch(new RegExp(`^Spoiled: (${each[0].split(".")[0]})`));
      const checked = checkedNotebook(JSON.stringify(notebook));
      if (!checked.ok) throw new Error("the rest can be read");
      expect(checked.missing).toEqual([expect.stringMatching(/^Scenario “Spoiled” is missing: /)]);
      expect(checked.wrong).toEqual([]);
      expect(checked.notebook.scenarios).toEqual(JSON.parse(JSON.stringify(example.scenarios)));
      expect(makeNotebook(example).act(notebook)).toMatch(/^Scenario Spoiled: /);
    },
  );

  test.each(MISSHAPEN.map((each) => [title(each), each] as const))("%s: as a change, it can be dropped", (_, each) => {
    const [at] = each;
    const top = at.split(".")[0]!;
    const value = spoiled(roof, each)[top];
    const change = value === undefined ? { at: top, remove: true as const } : { at: top, to: value as never };
    const { notebook, id } = withVariant(example, "roof", [{ at: "bank.blockAh", to: 100 }, change]);
    expect(notebookFrom(JSON.parse(JSON.stringify(notebook))).ok).toBe(true);
    expect(scenarioDocument(notebook, id).ok).toBe(false);
    expect(lostChanges(notebook, id)).toMatchObject([{ number: 1 }]);
    expect(workSteps(notebook)).toBe(workSteps(example));
  });
});

describe("a document whose values make no sense", () => {
  test.each(SENSELESS.map((each) => [title(each), each] as const))("%s: it opens, and it is said before", (_, each) => {
    const notebook = withRoof(spoiled(roof, each));
    const checked = checkedNotebook(JSON.stringify(notebook));
    if (!checked.ok) throw new Error(checked.sentences.join());
    expect(checked.missing).toEqual([]);
    expect(checked.wrong).toEqual([expect.stringMatching(/^Spoiled: .{20}/)]);
    expect(makeNotebook(example).act(notebook)).toBeNull();
  });
});
