import { readFileSync } from "node:fs";
import { basename } from "node:path";
import ts from "typescript-api";
import { expect, test } from "vitest";
import { sourceFiles } from "./sourceFiles.ts";

/** Lines of a function that somebody new can still hold in mind (our choice, no source). */
const MOST_LINES = 120;

interface Length {
  readonly path: string;
  readonly name: string;
  readonly lines: number;
  readonly isStep: boolean;
}

/** Every function of a file that has a body, arrows and methods too. */
function lengths(path: string, text: string): Length[] {
  const kind = path.endsWith("x") ? ts.ScriptKind.TSX : ts.ScriptKind.TS;
  const syntax = ts.createSourceFile(path, text, ts.ScriptTarget.Latest, true, kind);
  const lineOf = (position: number) => syntax.getLineAndCharacterOfPosition(position).line;
  const found: Length[] = [];
  const visit = (node: ts.Node): void => {
    if (ts.isFunctionLike(node) && "body" in node && node.body !== undefined) {
      const owner = ts.isVariableDeclaration(node.parent) ? node.parent : node;
      const name = owner.name?.getText() ?? "(no name)";
      const lines = lineOf(node.end) - lineOf(node.getStart()) + 1;
      const isMarked = ts.getJSDocTags(owner).some(({ tagName }) => tagName.text === "memberLoop");
      found.push({ path, name, lines, isStep: isMarked || /^step/.test(basename(path)) });
    }
    ts.forEachChild(node, visit);
  };
  visit(syntax);
  return found;
}

const all = sourceFiles(["engine", "explorer"]).flatMap((path) => lengths(path, readFileSync(path, "utf8")));
const tooLong = all.filter(({ lines, isStep }) => lines > MOST_LINES && !isStep);

test(`no function has more than ${MOST_LINES} lines, but for step loops`, () => {
  expect(tooLong.map(({ path, name, lines }) => `${path} ${name}: ${lines}`)).toEqual([]);
});

test("components are of a size to be read at once", () => {
  const components = all
    .filter(({ path, name }) => path.endsWith(".tsx") && /^[A-Z]/.test(name))
    .map(({ lines }) => lines)
    .sort((a, b) => a - b);
  expect(components.length).toBeGreaterThan(50);
  expect(components[Math.floor(components.length / 2)]).toBeGreaterThanOrEqual(30);
  expect(components[Math.floor(components.length / 2)]).toBeLessThanOrEqual(120);
  expect(components[Math.floor(components.length * 0.9)]).toBeLessThanOrEqual(150);
});

test("a long function is found, whatever kind it is, and a step loop is told from others", () => {
  const body = `{\n${"x();\n".repeat(MOST_LINES)}}`;
  const wrote = [`function a() ${body}`, `const b = () => ${body};`, `class C { d() ${body} }`];
  for (const text of wrote) {
    expect(lengths("engine/x/y.ts", text).filter(({ lines }) => lines > MOST_LINES)).toHaveLength(1);
  }
  expect(lengths("engine/x/stepY.ts", wrote[0]!)[0]!.isStep).toBe(true);
  expect(lengths("engine/x/y.ts", `/** @memberLoop */\nexport ${wrote[0]!}`)[0]!.isStep).toBe(true);
  expect(lengths("engine/x/y.ts", wrote[0]!)[0]!.isStep).toBe(false);
});
