import { expect, test } from "vitest";
import * as z from "zod";
import { numbersOf } from "../../engine/answers/docField.ts";
import { KIND_NAMES, kindOf } from "../../engine/answers/kinds.ts";
import { LimitsDoc } from "../../engine/answers/limits/doc.ts";
import { SizingDoc } from "../../engine/answers/sizing/doc.ts";
import { USUAL_DROP_SHARE } from "../../engine/checks/usualDrop.ts";
import { choiceLabel } from "../../engine/fields/fieldWords.ts";
import { readingSchema } from "../../engine/learn/readingSchema.ts";
import { USUAL_DAYS, USUAL_TARGET_SHARE } from "../../engine/library/askOptions.ts";
import { type SchemaNode, scenarioInputSchema } from "../../engine/scenario/scenarioSchema.ts";

interface Field {
  readonly at: string;
  readonly key: string;
  readonly node: SchemaNode;
}

function fieldsOf(root: SchemaNode): Field[] {
  const fields: Field[] = [];
  const visit = (node: SchemaNode, at: string): void => {
    for (const [key, field] of Object.entries(node.properties ?? {})) {
      fields.push({ at: `${at}.${key}`, key, node: field });
      visit(field, `${at}.${key}`);
    }
    for (const option of node.oneOf ?? []) visit(option, `${at}(${option.properties?.kind?.const})`);
    if (node.items !== undefined) visit(node.items, `${at}[]`);
  };
  visit(root, "");
  return fields;
}

/** Fields of what an entry asks, whatever kind it is; what a meter wrote (`log`) nobody sets by hand. */
const ENTRY_FIELDS = KIND_NAMES.flatMap((kind) => {
  const schema = z.toJSONSchema(kindOf(kind).doc as z.ZodType, { io: "input", target: "draft-7" }) as SchemaNode;
  return fieldsOf(schema)
    .map((field) => ({ ...field, at: `${kind}${field.at}`, isNeeded: schema.required?.includes(field.key) === true }))
    .filter(({ at }) => !/\.log\./.test(at));
});

const FIELDS = [...fieldsOf(scenarioInputSchema()), ...fieldsOf(readingSchema()), ...ENTRY_FIELDS];

/** The unit that ends a name, by the convention in DEVELOPERS.md; longer endings first. */
const UNITS: readonly (readonly [ending: RegExp, unit: string])[] = [
  [/GhiKwhM2$/, "kWh/m² a day"],
  [/LPerH$/, "L/h"],
  [/PerH$/, "A per missing Ah"],
  [/WhPerK$/, "Wh/K"],
  [/WPerK$/, "W/K"],
  [/PerK$/, "per K"],
  [/Share$/, ""],
  [/Minutes$/, "min"],
  [/SolarHour$/, "h"],
  [/Deg$/, "°"],
  [/Ohm$/, "Ω"],
  [/Km$/, ""], // a whole number, whose meaning says kilometres
  [/Kg$/, "kg"],
  [/Ms$/, "m/s"],
  [/mm2$/, "mm²"],
  [/Ah$/, "Ah"],
  [/W$/, "W"],
  [/V$/, "V"],
  [/A$/, "A"],
  [/M$/, "m"],
  [/L$/, "L"],
  [/C$/, "°C"],
];

const numberOf = (node: SchemaNode) =>
  [node, ...(node.anyOf ?? []), ...(node.items === undefined ? [] : [node.items])].find(
    (each) => each.quantity !== undefined,
  )?.quantity;

test("every field of a scenario, of a reading and of an entry has a label and a meaning", () => {
  expect(FIELDS.length).toBeGreaterThan(300);
  const silent = FIELDS.filter(({ node }) => {
    const [label, meaning] = [node.label ?? node.title, node.quantity?.what ?? node.description ?? node.part];
    return !label || !meaning || /[a-z][A-Z]/.test(label.replaceAll(/\b(AWG|SSB|DC-DC)\b/g, ""));
  });
  expect(silent.map(({ at }) => at)).toEqual([]);
});

test("every number that an entry asks for has a unit, a range, and a default or what stands for it", () => {
  const numbers = ENTRY_FIELDS.filter(({ at, node }) => node.type === "number" && !/\[\]/.test(at));
  expect(numbers.map(({ at }) => at)).toEqual(
    expect.arrayContaining(["sizing.targetIn100", "sizing.autonomyDays", "limits.dropIn100", "reach.targetIn100"]),
  );
  for (const { at, node, isNeeded } of numbers) {
    expect(node.quantity?.unit, at).toBeTruthy();
    expect([node.minimum, node.maximum], at).toEqual([node.quantity!.low, node.quantity!.high]);
    expect(isNeeded, at).toBe(false);
    expect(node.default ?? node.leftOut, at).toBeTruthy();
  }
});

test("views read an entry's numbers where its schema has them, and defaults are the engine's own", () => {
  expect(numbersOf(LimitsDoc).map(({ field, low, high }) => [field, low, high])).toEqual([
    ["dropIn100", 0.1, 50],
    ["chargeIn100", 0, 100],
    ["coldestC", -90, 60],
  ]);
  expect(numbersOf(LimitsDoc)[0]).toMatchObject({ label: "Most that a run may lose", unit: "% of its volts" });
  expect(Number(numbersOf(LimitsDoc)[0]!.leftOut)).toBe(100 * USUAL_DROP_SHARE);
  expect(numbersOf(SizingDoc).map(({ label }) => label)).toEqual(["Is to hold in", "The handbook bridges"]);
  expect(SizingDoc.parse({ scenario: "plan" })).toEqual({
    scenario: "plan",
    targetIn100: 100 * USUAL_TARGET_SHARE,
    autonomyDays: USUAL_DAYS,
  });
});

test("every number's unit is the one that ends its name", () => {
  const numbers = FIELDS.flatMap(({ at, key, node }) => {
    const [, unit] = UNITS.find(([ending]) => ending.test(key)) ?? [];
    const facts = numberOf(node);
    return unit === undefined || facts === undefined ? [] : [{ at, unit, said: facts.unit }];
  });
  expect(numbers.length).toBeGreaterThan(150);
  expect(numbers.filter(({ unit, said }) => unit !== said)).toEqual([]);
});

test("every choice is called by words, and every word that is named can be chosen", () => {
  const strange = FIELDS.flatMap(({ at, node }) => {
    const words = [node, node.items ?? {}, ...(node.anyOf ?? [])].flatMap((each) => [
      ...(each.enum ?? []),
      ...(each.const === undefined ? [] : [each.const]),
    ]);
    const odd = words.filter((word) => /[a-z][A-Z]/.test(choiceLabel(word, node)));
    const own = node.refersTo === undefined ? Object.keys(node.choices ?? {}) : [];
    return [...odd, ...own.filter((word) => !words.includes(word))].map((word) => `${at}: ${word}`);
  });
  expect(strange).toEqual([]);
});

test("what a sentence or a condition names is a field beside it", () => {
  const fields = new Set(["now", "was", "item", "thing"]);
  const lost: string[] = [];
  const visit = (node: SchemaNode, at: string, around: SchemaNode | undefined): void => {
    const cases = typeof node.change === "object" ? node.change : { changed: node.change };
    const all = typeof cases === "object" && "all" in cases ? cases.all?.says : undefined;
    const about = node.properties === undefined ? around : node;
    const says = [[node.says ?? []].flat(), Object.values(cases).filter((each) => typeof each === "string"), all ?? []];
    for (const said of says.flat()) {
      for (const [, name] of String(said).matchAll(/\{([^}|]*)\}/g)) {
        const [first] = name!.split(".");
        const known = about?.properties?.[first!] ?? around?.properties?.[first!];
        if (!fields.has(name!) && known === undefined) lost.push(`${at}: ${name}`);
      }
    }
    for (const [key, word] of Object.entries(node.onlyWith ?? {})) {
      if (around?.properties?.[key]?.enum?.includes(word) !== true) lost.push(`${at}: ${key} ${word}`);
    }
    for (const [key, field] of Object.entries(node.properties ?? {})) visit(field, `${at}.${key}`, node);
    for (const option of node.oneOf ?? []) visit(option, at, node);
    if (node.items !== undefined) visit(node.items, `${at}[]`, node);
  };
  visit(scenarioInputSchema(), "", undefined);
  expect(lost).toEqual([]);
});
