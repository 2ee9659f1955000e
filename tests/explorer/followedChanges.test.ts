import { describe, expect, test } from "vitest";
import { followedChanges } from "../../engine/notebook/followedChanges.ts";
import { withChanges, withoutChange, withoutScenario, withVariant } from "../../engine/notebook/notebookEdits.ts";
import { lostChanges, scenarioDocument } from "../../engine/notebook/scenarioDocument.ts";
import type { Change } from "../../engine/scenario/change.ts";
import type { ScenarioInput } from "../../engine/scenario/scenario.ts";
import { exampleNotebook } from "../../explorer/notebook/exampleNotebook.ts";
import { EXAMPLE } from "./exampleRun.ts";

const base: ScenarioInput = EXAMPLE;
const follow = (changes: Change[], made: Change[]) => followedChanges(changes, made, base);
const station = base.stations![0]!.id;

describe("changes of what is based on a scenario follow it", () => {
  test("to another short name, at every depth, and no further", () => {
    const made: Change[] = [{ at: "panels.roof.id", to: "van" }];
    expect(follow([{ at: "panels.roof.count", to: 4 }], made)).toEqual([{ at: "panels.van.count", to: 4 }]);
    expect(follow([{ at: "panels.roof", remove: true }], made)).toEqual([{ at: "panels.van", remove: true }]);
    expect(follow([{ at: "panels.roofless.count", to: 4 }], made)).toEqual([{ at: "panels.roofless.count", to: 4 }]);
    expect(follow([{ at: "selector.inputs", to: ["roof", "mains"] }], made)).toEqual([
      { at: "selector.inputs", to: ["van", "mains"] },
    ]);
  });

  test("and where a change brings the name along", () => {
    const made: Change[] = [{ at: `stations.${station}.id`, to: "first" }];
    expect(follow([{ at: "shedding", to: ["lights", station] }], made)).toEqual([
      { at: "shedding", to: ["lights", "first"] },
    ]);
    const gear = { id: "fan", name: "Fan", working: 5, use: { when: "staffed", station } };
    expect(follow([{ at: "gear", add: gear as never }], made)[0]!.add).toEqual({
      ...gear,
      use: { when: "staffed", station: "first" },
    });
  });

  test("over several renamings in one go", () => {
    const made: Change[] = [
      { at: "panels.roof.id", to: "van" },
      { at: "panels.van.id", to: "deck" },
    ];
    expect(follow([{ at: "panels.roof.count", to: 4 }], made)).toEqual([{ at: "panels.deck.count", to: 4 }]);
  });

  test("to another number when one is taken out before it, and are lost with what they changed", () => {
    const at = (number: string) => `stations.${station}.staffed.${number}.from`;
    const two = structuredClone(base);
    two.stations![0]!.staffed = [
      { from: "08:00", to: "10:00" },
      { from: "12:00", to: "14:00" },
      { from: "18:00", to: "22:00" },
    ];
    const made: Change[] = [{ at: `stations.${station}.staffed.1`, remove: true }];
    const places = ["0", "1", "2"].map((number) => ({ at: at(number), to: "09:00" }));
    expect(followedChanges(places, made, two).map((change) => change.at)).toEqual([
      at("0"),
      at("taken-out-1"),
      at("1"),
    ]);
  });
});

describe("in a notebook", () => {
  const example = exampleNotebook("example");

  test("renaming a thing in the base moves nothing in what is based on it, by way of others too", () => {
    const grown = withVariant(example, "meadow");
    const deeper = withChanges(grown.notebook, grown.id, [{ at: "panels.roof.count", to: 3 }]);
    const renamed = withChanges(deeper, "roof", [{ at: "panels.roof.id", to: "van" }]);
    const found = scenarioDocument(renamed, grown.id);
    if (!found.ok) throw new Error(found.sentence);
    expect(found.document.panels!.find(({ id }) => id === "van")!.count).toBe(3);
  });

  test("a change whose thing has gone is said, and can be dropped", () => {
    const { notebook, id } = withVariant(example, "roof");
    const changed = withChanges(notebook, id, [
      { at: "panels.roof.count", to: 3 },
      { at: "bank.blockAh", to: 300 },
    ]);
    expect(lostChanges(changed, id)).toEqual([]);
    const bare = withChanges(changed, "roof", [{ at: "panels.roof", remove: true }]);
    expect(scenarioDocument(bare, id).ok).toBe(false);
    expect(lostChanges(bare, id)).toEqual([{ number: 0, message: expect.stringContaining('finds no "roof"') }]);
    const corrected = scenarioDocument(withoutChange(bare, id, 0), id);
    expect(corrected.ok && corrected.document.bank.blockAh).toBe(300);
  });

  test("a scenario that nothing needs goes, with the entries that edit it; any other stays", () => {
    const { notebook, id } = withVariant(example, "roof");
    const edited = {
      ...notebook,
      entries: [...notebook.entries, { id: "edit", kind: "scenario" as const, title: "Edit", doc: { scenario: id } }],
    };
    const without = withoutScenario(edited, id);
    expect(without.scenarios.map((each) => each.id)).toEqual(example.scenarios.map((each) => each.id));
    expect(without.entries).toEqual(example.entries);
    for (const kept of ["roof", "meadow", "two-blocks"]) expect(withoutScenario(edited, kept)).toBe(edited);
  });
});
