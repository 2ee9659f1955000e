import { readFileSync } from "node:fs";
import { expect, test } from "vitest";
import { type EngineModule, parseModule } from "./engineModules.ts";
import { importCircle } from "./importCircle.ts";
import { sourceFiles } from "./sourceFiles.ts";

/** Each folder may import itself, the folders before it and the engine. Kinds of entries know nothing of one another, and their list knows them. */
const ORDER = [
  "words",
  "hosting",
  "offline",
  "single",
  "pool",
  "results",
  "notebook",
  "weather",
  "store",
  "download",
  "parts",
  "gear",
  "place",
  "charts",
  "report",
  "present",
  "share",
  "entries/*",
  "entries",
  "start",
  "page",
];
/** Files directly in explorer/ that all may import: they import nothing themselves. */
const EVERYBODYS = /^explorer\/(noEval\.ts|[a-z]+\.css)$/;
/** Where the page begins: it puts the screens together. */
const TOP = ["explorer/main.tsx", "explorer/singleMain.ts", "explorer/wordsLater.ts"];

const modules = new Map<string, EngineModule>(
  sourceFiles(["explorer"]).map((path) => [path, parseModule(path, readFileSync(path, "utf8"))]),
);

function folderOf(path: string): string {
  const parts = path.split("/").slice(1, -1);
  return parts[0] === "entries" ? parts.slice(0, 2).join("/") : (parts[0] ?? "");
}

function rank(folder: string): number {
  return ORDER.indexOf(/^entries\/./.test(folder) ? "entries/*" : folder);
}

function faultsOf({ path, imports }: EngineModule): string[] {
  if (TOP.includes(path)) return [];
  return imports.flatMap((target) => {
    if (!target.startsWith("explorer/") || EVERYBODYS.test(target)) return [];
    const [mine, theirs] = [folderOf(path), folderOf(target)];
    const isDown = mine === theirs || (rank(theirs) >= 0 && rank(theirs) < rank(mine));
    return isDown ? [] : [`${path} imports ${target}`];
  });
}

test("explorer modules import only what is below them", () => {
  expect(modules.size).toBeGreaterThan(100);
  expect([...new Set([...modules.keys()].map(folderOf))].filter((folder) => folder !== "" && rank(folder) < 0)).toEqual(
    [],
  );
  expect([...modules.values()].flatMap(faultsOf)).toEqual([]);
});

test.each([
  ["explorer/charts/x.tsx", 'import { Sheet } from "../page/Sheet.tsx";'],
  ["explorer/entries/run/x.tsx", 'import { DaysView } from "../days/DaysView.tsx";'],
  ["explorer/notebook/x.ts", 'import { ENTRY_KINDS } from "../entries/list.ts";'],
])("in %s, %s would be refused", (path, text) => {
  expect(faultsOf(parseModule(path, text))).toHaveLength(1);
});

/**
 * A form's fields hold fields: a list shows its things, each thing its fields, and one of those may be a list. This is the one circle, since a form
 * that contains itself is drawn by components that name one another.
 */
const FORM = /^explorer\/entries\/scenario\//;

test("no explorer modules import one another in a circle, except for the form that contains itself", () => {
  const outside = new Map([...modules].filter(([path]) => !FORM.test(path)));
  expect(importCircle(outside)).toBeUndefined();
});
