import { readFileSync } from "node:fs";
import { expect, test, vi } from "vitest";
import { scenarioFormatText } from "../../docs/scenarioFormat.ts";
import { scenarioFigures } from "../../engine/answers/scenario/scenarioFigures.ts";
import { sizeFields } from "../../engine/answers/sizing/sizeFields.ts";
import { changesInWords } from "../../engine/fields/changesInWords.ts";
import { choiceLabel, fieldLabel, withLabels } from "../../engine/fields/fieldWords.ts";
import { formSchema, isPlainAt, schemaAt } from "../../engine/fields/formSchema.ts";
import { formGroups } from "../../engine/fields/groups.ts";
import { applyChanges } from "../../engine/scenario/applyChanges.ts";
import { readScenario } from "../../engine/scenario/readScenario.ts";
import type { ScenarioInput } from "../../engine/scenario/scenario.ts";
import { scenarioSchemaText } from "../../engine/scenario/scenarioSchema.ts";
import { whyInWords } from "../../explorer/parts/whyInWords.ts";
import { wrongInWords } from "../../explorer/parts/wrongInWords.ts";

// What a person would write who adds two fields to the bank, and nothing else anywhere.
vi.mock("../../engine/scenario/bank.ts", async (original) => {
  const file = await original<typeof import("../../engine/scenario/bank.ts")>();
  const { quantity, word } = await import("../../engine/scenario/quantity.ts");
  const Bank = file.Bank.safeExtend({
    heaterW: quantity({
      unit: "W",
      low: 0,
      high: 300,
      what: "pad that warms the bank",
      typical: [10, 40],
      why: "a small pad",
    })
      .default(0)
      .meta({ label: "Heating pad", isPlain: true, change: "a pad of {now}, was {was}" }),
    lidKind: word(["openLid", "tightLid"], "how the box is closed")
      .default("openLid")
      .meta({ label: "Lid of the box", choices: { tightLid: "shut tight" } }),
  }).meta({ title: "Bank", description: "All batteries that work as one." });
  return { ...file, Bank };
});

const grove = JSON.parse(readFileSync("scenarios/walnut-grove.json", "utf8")) as ScenarioInput;

function changed(to: Readonly<Record<string, unknown>>): ScenarioInput {
  const changes = Object.entries(to).map(([key, value]) => ({ at: `bank.${key}`, to: value as never }));
  const applied = applyChanges(grove, changes);
  if (!applied.ok) throw new Error(applied.problems[0]!.message);
  return applied.document as ScenarioInput;
}

test("form, docs, errors, sizing, report and changes in words follow a field that its schema alone knows", () => {
  const warm = changed({ heaterW: 25, lidKind: "tightLid" });
  expect(readScenario(warm)).toMatchObject({ ok: true, scenario: { bank: { heaterW: 25, lidKind: "tightLid" } } });

  const node = schemaAt(warm, ["bank", "heaterW"])!;
  expect(formGroups().find(({ keys }) => keys.includes("bank"))?.name).toBe("Bank");
  expect(formSchema().properties!.bank!.properties!.heaterW).toBe(node);
  expect([fieldLabel("bank.heaterW"), whyInWords(node)]).toEqual([
    "Heating pad",
    "Pad that warms the bank. Usually 10 to 40\u202fW: a small pad.",
  ]);
  expect([isPlainAt(warm, ["bank", "heaterW"]), isPlainAt(warm, ["bank", "lidKind"])]).toEqual([true, false]);
  expect(choiceLabel("tightLid", schemaAt(warm, ["bank", "lidKind"]))).toBe("shut tight");
  expect(withLabels("change heaterW")).toBe("change “Heating pad”");

  expect(changesInWords([], grove, warm)).toEqual([
    "a pad of 25\u202fW, was 0\u202fW",
    "lid of the box shut tight, was open lid",
  ]);

  const far = readScenario(changed({ heaterW: 250_000 }));
  if (far.ok) throw new Error("250 kW is no pad");
  expect(far.problems[0]!.message).toBe(
    "bank.heaterW is 250000 but must be a number from 0 to 300 W (pad that warms the bank).",
  );
  expect(wrongInWords(far.problems[0]!, 250_000, node, 25).sentence).toBe("This stops at 300\u202fW.");

  expect(scenarioFormatText()).toContain(
    "| `heaterW` | pad that warms the bank | W | 0 to 300 | 10 to 40: a small pad | `0` |",
  );
  expect(scenarioSchemaText()).toContain("pad that warms the bank, from 0 to 300 W; usually 10 to 40 (a small pad)");
  expect(sizeFields(warm)).toContainEqual({ at: "bank.heaterW", of: "Bank", label: "Heating pad", present: 25 });
  const figures = scenarioFigures(warm).find(({ group }) => group === "Bank")!.figures;
  expect(figures).toContainEqual({ name: "Heating pad", says: "25\u202fW" });
  expect(figures).toContainEqual({ name: "Lid of the box", says: "shut tight" });
});
