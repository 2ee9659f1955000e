import { readFileSync } from "node:fs";
import { dirname, posix } from "node:path";
import ts from "typescript-api";

/** A name of a file, as some other file takes it. "*" is a file that is fetched, or taken whole, without a name. */
export interface Taken {
  /** Who takes it. */
  readonly by: string;
  readonly file: string;
  readonly name: string;
}

/** Parses a file. */
export const parsed = (path: string, text = readFileSync(path, "utf8")): ts.SourceFile =>
  ts.createSourceFile(path, text, ts.ScriptTarget.Latest, true, path.endsWith("x") ? ts.ScriptKind.TSX : undefined);

/**
 * The folder whose index names a file: one under engine/ or explorer/, and each kind of answers and of entries has its own. Null for a file
 * directly in either.
 */
export function indexedFolder(path: string): string | null {
  const found =
    /^(engine\/answers|explorer\/entries)\/[a-z]+(?=\/)/.exec(path) ?? /^(engine|explorer)\/[a-z]+(?=\/)/.exec(path);
  return found?.[0] ?? null;
}

const isIndex = (path: string) => posix.basename(path) === "index.ts";

/** What a file takes from our files, by name: imported, exported on, fetched when it is needed, or meant as a type. */
export function takenBy(path: string, syntax = parsed(path)): Taken[] {
  const found: Taken[] = [];
  const say = (specifier: ts.Node | undefined, names: readonly string[]) => {
    if (specifier === undefined || !ts.isStringLiteral(specifier) || !specifier.text.startsWith(".")) return;
    const file = posix.join(dirname(path), specifier.text);
    if (!/^(engine|explorer)\/.*\.tsx?$/.test(file)) return;
    for (const name of names.length > 0 ? names : ["*"]) found.push({ by: path, file, name });
  };
  const visit = (node: ts.Node): void => {
    if (ts.isImportDeclaration(node)) {
      const bindings = node.importClause?.namedBindings;
      say(node.moduleSpecifier, bindings && ts.isNamedImports(bindings) ? bindings.elements.map(ownName) : []);
    } else if (ts.isExportDeclaration(node)) {
      const clause = node.exportClause;
      say(node.moduleSpecifier, clause && ts.isNamedExports(clause) ? clause.elements.map(ownName) : []);
    } else if (ts.isImportTypeNode(node) && ts.isLiteralTypeNode(node.argument)) {
      say(node.argument.literal, node.qualifier ? [node.qualifier.getText().split(".")[0]!] : []);
    } else if (ts.isCallExpression(node) && node.expression.kind === ts.SyntaxKind.ImportKeyword) {
      say(node.arguments[0], fetchedNames(node));
    }
    ts.forEachChild(node, visit);
  };
  visit(syntax);
  return found;
}

const ownName = ({ name, propertyName }: ts.ImportSpecifier | ts.ExportSpecifier) => (propertyName ?? name).text;

/** Names that are taken from a file as it comes: `import(…).then(({ name }) => …)` and `const { name } = await import(…)`. */
function fetchedNames(call: ts.CallExpression): string[] {
  const namesIn = (pattern: ts.Node | undefined) =>
    pattern && ts.isObjectBindingPattern(pattern)
      ? pattern.elements.map(({ name, propertyName }) => (propertyName ?? name).getText())
      : [];
  const { parent } = call;
  if (ts.isAwaitExpression(parent) && ts.isVariableDeclaration(parent.parent)) return namesIn(parent.parent.name);
  if (!ts.isPropertyAccessExpression(parent) || !ts.isCallExpression(parent.parent)) return [];
  const [then] = parent.parent.arguments;
  return then && ts.isArrowFunction(then) ? namesIn(then.parameters[0]?.name) : [];
}

/** Names that an index exports, each with its file. */
export function listedIn(index: string, syntax = parsed(index)): Taken[] {
  return takenBy(index, syntax).filter(({ file }) => !isIndex(file));
}

/** What is taken from another folder's file and its index does not name, or names nothing of the file where it is fetched whole. */
export function unlisted(taken: readonly Taken[], listed: ReadonlyMap<string, readonly Taken[]>): string[] {
  return taken
    .filter(
      ({ by, file }) => indexedFolder(file) !== null && indexedFolder(by) !== indexedFolder(file) && !isIndex(file),
    )
    .filter(({ file, name }) => {
      const names = (listed.get(indexedFolder(file)!) ?? []).filter((each) => each.file === file);
      return !names.some((each) => name === "*" || each.name === name);
    })
    .map(({ by, file, name }) => `${by} takes ${name} of ${file}`);
}
