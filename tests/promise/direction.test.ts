import { existsSync } from "node:fs";
import { basename } from "node:path";
import ts from "typescript-api";
import { expect, test } from "vitest";
import { type EngineModule, engineModules, parseModule } from "./engineModules.ts";
import { importCircle } from "./importCircle.ts";

/** Each folder may import itself and the folders before it. A new folder takes its place here. */
const ORDER = [
  "chance",
  "scenario",
  "gear",
  "start",
  "meter",
  "place",
  "towns",
  "sky",
  "shade",
  "array",
  "load",
  "source",
  "bank",
  "run",
  "ensemble",
  "task",
  "odds",
  "versus",
  "size",
  "drivers",
  "spots",
  "reach",
  "packing",
  "pool",
  "learn",
  "actual",
  "checks",
  "library",
  "words",
  "fields",
  "ruler",
  "drawing",
  "answers",
  "notebook",
  "report",
];

/** Packages that need neither the DOM nor Node. */
const PURE_PACKAGES =
  /^(zod|suncalc|seedrandom|@photostructure\/tz-lookup|fastest-levenshtein|marked|d3(-[a-z]+)?|@fontsource-variable\/radio-canada)(\/|$)/;

/** What makes a run depend on more than its input. The compiler already refuses names of the DOM and of Node. */
const IMPURE = /^(Date\.now|Math\.random|performance\.now|globalThis\.\w+|crypto\.\w+)$/;

const modules = engineModules();
const pure = [...modules.values()].filter((module) => module.folder !== "cli");

function wrongImports(module: EngineModule): string[] {
  return module.imports.flatMap((target) => {
    const fault = importFault(module, target);
    return fault ? [`${module.path} imports ${target}: ${fault}`] : [];
  });
}

function importFault(from: EngineModule, target: string): string | undefined {
  if (!target.startsWith("engine/")) {
    return PURE_PACKAGES.test(target) ? undefined : "the engine takes no DOM, no Node and no package that needs them";
  }
  if (from.path === "engine/index.ts") return undefined; // the public face names them all
  const [, folder, file] = target.split("/");
  if (!/\.(ts|json)$|\.css\?raw$/.test(target)) return "name the file, with its ending";
  if (basename(target) === "index.ts") return "inside the engine, import the file itself";
  if (file === undefined) return undefined; // a file directly in engine/ is everybody's
  if (from.folder === "") return "a file directly in engine/ knows no folder";
  const [mine, theirs] = [ORDER.indexOf(from.folder), ORDER.indexOf(folder!)];
  return theirs >= 0 && theirs <= mine ? undefined : `${from.folder} may not know ${folder}`;
}

function impurities(module: EngineModule): string[] {
  const found: string[] = [];
  const visit = (node: ts.Node): void => {
    const now = ts.isNewExpression(node) && node.expression.getText() === "Date" && !node.arguments?.length;
    if (now || (ts.isPropertyAccessExpression(node) && IMPURE.test(node.getText()))) {
      const line = module.syntax.getLineAndCharacterOfPosition(node.getStart()).line + 1;
      found.push(`${module.path}:${line} ${node.getText()}`);
    }
    ts.forEachChild(node, visit);
  };
  visit(module.syntax);
  return found;
}

test("engine modules import only what is to their left, by file, and nothing of the DOM or Node", () => {
  expect(pure.length).toBeGreaterThan(3);
  expect(pure.flatMap(wrongImports)).toEqual([]);
});

test.each([
  ["engine/sky/sunTrack.ts", 'import { readFileSync } from "node:fs";'],
  ["engine/sky/sunTrack.ts", 'import { render } from "solid-js/web";'],
  ["engine/sky/sunTrack.ts", 'import type { Bank } from "../bank/stepBank.ts";'],
  ["engine/sky/sunTrack.ts", 'import { wrapBearingDeg } from "../angle";'],
  ["engine/array/mount.ts", 'import { sunTrack } from "../sky/index.ts";'],
  ["engine/array/mount.ts", 'export * from "../run/trace.ts";'],
  ["engine/array/mount.ts", 'type Bank = import("../bank/stepBank.ts").Bank;'],
  ["engine/array/mount.ts", 'const late = import("../cli/main.ts");'],
  ["engine/angle.ts", 'import { sunTrack } from "./sky/sunTrack.ts";'],
])("in %s, %s would be refused", (path, text) => {
  expect(wrongImports(parseModule(path, text))).toHaveLength(1);
});

test("no engine modules import one another in a circle", () => {
  expect(importCircle(modules)).toBeUndefined();
  const circle = [
    parseModule("engine/sky/a.ts", 'import "./b.ts";'),
    parseModule("engine/sky/b.ts", 'import type { C } from "./c.ts";'),
    parseModule("engine/sky/c.ts", 'export * from "./b.ts";'),
  ];
  expect(importCircle(new Map(circle.map((module) => [module.path, module])))).toEqual([
    "engine/sky/b.ts",
    "engine/sky/c.ts",
    "engine/sky/b.ts",
  ]);
});

test("the engine asks no clock and no chance of its own", () => {
  expect(pure.flatMap(impurities)).toEqual([]);
  expect(impurities(parseModule("engine/x.ts", "new Date(); Math.random(); Date.now(); new Date(0);"))).toHaveLength(3);
});

test("each engine folder has its place in the order and an index.ts that only names what it holds", () => {
  const folders = [...new Set(pure.map((module) => module.folder))].filter((folder) => folder !== "");
  expect(folders.filter((folder) => !ORDER.includes(folder))).toEqual([]);
  expect(folders.filter((folder) => !existsSync(`engine/${folder}/index.ts`))).toEqual([]);
  for (const module of pure.filter(({ path }) => basename(path) === "index.ts")) {
    const strays = module.syntax.statements.filter((s) => !(ts.isExportDeclaration(s) && s.moduleSpecifier));
    expect(strays.map((statement) => `${module.path}: ${statement.getText()}`)).toEqual([]);
  }
});
