import { readdirSync, readFileSync } from "node:fs";
import { expect, test } from "vitest";
import { replaceBetween } from "../../docs/replaceBetween.ts";
import { scenarioFormatText } from "../../docs/scenarioFormat.ts";
import { readScenario } from "../../engine/scenario/readScenario.ts";
import { type SchemaNode, scenarioInputSchema, scenarioSchemaText } from "../../engine/scenario/scenarioSchema.ts";

const committed = (path: string) => readFileSync(path, "utf8");

test("docs/scenario.schema.json is what the engine's schema says; else run npm run docs", () => {
  expect(committed("docs/scenario.schema.json")).toBe(scenarioSchemaText());
});

test("docs/scenario-format.md is what the engine's schema says; else run npm run docs", () => {
  expect(committed("docs/scenario-format.md")).toBe(scenarioFormatText());
});

test("every part of the format has a title, and every field says what it is", () => {
  const silent: string[] = [];
  const visit = (node: SchemaNode, path: string) => {
    if (node.type === "object" && (node.title === undefined || (node.description ?? node.part) === undefined))
      silent.push(path);
    for (const [name, field] of Object.entries(node.properties ?? {})) {
      if ((field.description ?? field.part) === undefined) silent.push(`${path}.${name}`);
      visit(field, `${path}.${name}`);
    }
    for (const option of [...(node.anyOf ?? []), ...(node.oneOf ?? [])]) visit(option, path);
    if (node.items !== undefined) visit(node.items, `${path}[]`);
  };
  visit(scenarioInputSchema(), "scenario");
  expect(silent).toEqual([]);
});

test("every number of the format says its unit, its range and what it is", () => {
  const bare: string[] = [];
  const visit = (node: SchemaNode, path: string) => {
    const isNumber = (node.type === "number" || node.type === "integer") && node.const === undefined;
    if (isNumber && node.quantity === undefined && node.enum === undefined) bare.push(path);
    for (const [name, field] of Object.entries(node.properties ?? {})) visit(field, `${path}.${name}`);
    for (const option of [...(node.anyOf ?? []), ...(node.oneOf ?? [])]) visit(option, path);
    if (node.items !== undefined) visit(node.items, `${path}[]`);
  };
  visit(scenarioInputSchema(), "scenario");
  expect(bare).toEqual([]);
});

test("every JSON document shown on a page of the documentation reads", () => {
  const pages = [
    "README.md",
    ...readdirSync("docs")
      .filter((name) => name.endsWith(".md"))
      .map((name) => `docs/${name}`),
  ];
  const shown = pages.flatMap((page) =>
    [...committed(page).matchAll(/```json\n([\s\S]*?)```/g)].map(([, text]) => ({ page, text: text! })),
  );
  const scenarios = shown.filter(({ text }) => text.includes('"duskline-scenario"'));
  expect(scenarios.length).toBeGreaterThan(0);
  for (const { page, text } of scenarios) expect(readScenario(text), page).toMatchObject({ ok: true });
});

test("every example scenario and all its variants read, and each points at the schema", () => {
  const names = readdirSync("scenarios").filter((name) => name.endsWith(".json"));
  expect(names).toEqual(expect.arrayContaining(["peat-moor.json", "polar-hut.json", "walnut-grove.json"]));
  for (const name of names) {
    const result = readScenario(committed(`scenarios/${name}`));
    expect(result, name).toMatchObject({ ok: true });
    expect(JSON.parse(committed(`scenarios/${name}`)), name).toMatchObject({ $schema: "../docs/scenario.schema.json" });
    expect(result.ok && result.scenario.note, name).toMatch(/^Invented/);
    expect(result.ok && result.scenario.place.name, name).toMatch(/\(invented\)$/);
  }
});

test("links between the pages of the documentation lead somewhere", () => {
  const pages = [
    "README.md",
    "DEVELOPERS.md",
    "docs/guide.md",
    "docs/scenario-format.md",
    "docs/model.md",
    "docs/odds.md",
    "docs/command-line.md",
    "docs/validation.md",
  ];
  const anchors = (page: string) =>
    [...committed(page).matchAll(/^#+ (.*)$/gm)].map(([, title]) =>
      title!
        .toLowerCase()
        .replace(/[^\p{L}\p{N} _-]/gu, "")
        .replaceAll(" ", "-"),
    );
  const dead: string[] = [];
  for (const page of pages) {
    const folder = page.includes("/") ? "docs/" : "";
    for (const [, target] of committed(page).matchAll(/\]\(([^)\s]+)\)/g)) {
      if (/^[a-z]+:/.test(target!)) continue;
      const [file, anchor] = target!.split("#") as [string, string?];
      const path = file === "" ? page : new URL(folder + file, "file:///").pathname.slice(1);
      try {
        const text = textOrFolder(path);
        if (anchor !== undefined && text !== null && !anchors(path).includes(anchor)) dead.push(`${page}: ${target}`);
      } catch {
        dead.push(`${page}: ${target}`);
      }
    }
  }
  expect(dead).toEqual([]);
});

/** The text of a file; null for a folder. */
function textOrFolder(path: string): string | null {
  try {
    readdirSync(path);
    return null;
  } catch {
    return committed(path);
  }
}

test("a part of a page is replaced between its marks and nowhere else", () => {
  expect(replaceBetween("a <!-- x -->old<!-- /x --> b", "x", "new")).toBe("a <!-- x -->\nnew\n<!-- /x --> b");
  expect(() => replaceBetween("a", "x", "new")).toThrow("<!-- x -->");
});
