import { readFileSync } from "node:fs";
import { posix } from "node:path";
import ts from "typescript-api";
import { expect, test } from "vitest";

type Declared = ts.FunctionDeclaration | ts.ClassDeclaration | ts.InterfaceDeclaration | ts.TypeAliasDeclaration;

const parsed = (path: string, text = readFileSync(path, "utf8")) =>
  ts.createSourceFile(path, text, ts.ScriptTarget.Latest, true);

/** What an entry of the package names, each with where it is declared. A type beside a schema counts as the type. */
function publicNames(entry: string): Map<string, Declared[]> {
  const names = new Map<string, Declared[]>();
  for (const statement of parsed(entry).statements) {
    if (!ts.isExportDeclaration(statement)) continue;
    const file = posix.join(posix.dirname(entry), (statement.moduleSpecifier as ts.StringLiteral).text);
    const declarations = parsed(file).statements.filter(isDeclared);
    for (const { name, propertyName } of (statement.exportClause as ts.NamedExports).elements) {
      const own = (propertyName ?? name).text;
      names.set(
        name.text,
        declarations.filter((declaration) => declaration.name?.text === own),
      );
    }
  }
  return names;
}

function isDeclared(node: ts.Statement): node is Declared {
  return (
    ts.isFunctionDeclaration(node) ||
    ts.isClassDeclaration(node) ||
    ts.isInterfaceDeclaration(node) ||
    ts.isTypeAliasDeclaration(node)
  );
}

/** What a doc comment leaves unsaid. */
function unsaid(declaration: Declared): string[] {
  const doc = ts.getJSDocCommentsAndTags(declaration).find(ts.isJSDoc);
  if (doc?.comment === undefined) return ["what it is"];
  if (!ts.isFunctionDeclaration(declaration)) return [];
  const words = (tag: ts.JSDocTag) => ts.getTextOfJSDocComment(tag.comment)?.trim() ?? "";
  const tags = [...(doc.tags ?? [])];
  const missing = ["returns", "throws", "see"]
    .filter((name) => !tags.some((tag) => tag.tagName.text === name && tag.getText().length > `@${name} `.length))
    .map((name) => `@${name}`);
  const told = tags.filter(ts.isJSDocParameterTag).filter((tag) => words(tag) !== "");
  const asked = declaration.parameters.map(({ name }) => (ts.isIdentifier(name) ? name.text : "options"));
  return [...missing, ...asked.filter((name) => !told.some((tag) => tag.name.getText() === name))];
}

const main = publicNames("engine/index.ts");
const exported = (declaration: Declared) =>
  declaration.modifiers?.some(({ kind }) => kind === ts.SyntaxKind.ExportKeyword) === true;
const node = new Map([
  ["makeNodePool", parsed("engine/cli/nodePool.ts").statements.filter(isDeclared).filter(exported)],
]);
const functions = [...main, ...node].filter(([, [first]]) => first !== undefined && ts.isFunctionDeclaration(first));

test("some thirty names are public, and no step loop, task or part is among them", () => {
  expect(main.size).toBeLessThanOrEqual(36);
  expect([...main.keys()].filter((name) => /^(step|prepare|run|serve|make|merge)[A-Z]/.test(name))).toEqual([]);
  for (const call of ["trace", "odds", "versus", "size", "drivers", "learn", "actual", "limits"]) {
    expect(functions.map(([name]) => name)).toContain(call);
  }
});

test("each has a doc comment; a function's says parameters, result, errors and source", () => {
  for (const [name, declarations] of [...main, ...node]) {
    expect(declarations, name).not.toEqual([]);
    expect(declarations.flatMap(unsaid), name).toEqual([]);
  }
});

test("the library's page shows every function", () => {
  const page = readFileSync("docs/library.md", "utf8");
  expect(functions.filter(([name]) => !new RegExp(`\\b${name}\\(`).test(page)).map(([name]) => name)).toEqual([]);
});

test.each([
  ["export function f(): void {}", ["what it is"]],
  ["/** Does. */ export function f(a: number): number { return a; }", ["@returns", "@throws", "@see", "a"]],
  [
    "/** Does. @param a it @returns it @throws none */ export function f(a: number, { b = 1 } = {}): void {}",
    ["@see", "options"],
  ],
])("%s leaves something unsaid", (text, missing) => {
  expect(parsed("x.ts", text).statements.filter(isDeclared).flatMap(unsaid)).toEqual(missing);
});
