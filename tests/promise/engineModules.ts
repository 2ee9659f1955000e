import { readdirSync, readFileSync } from "node:fs";
import { dirname, join, posix } from "node:path";
import ts from "typescript-api";

/** One source file of the engine, parsed. */
export interface EngineModule {
  /** Path from the repository's top, with forward slashes: `engine/sky/sunTrack.ts`. */
  path: string;
  /** Folder under `engine/`, or "" for a file that lies directly in it. */
  folder: string;
  syntax: ts.SourceFile;
  /** Everything it imports or re-exports, types included; relative ones as paths from the top. */
  imports: string[];
}

/** Every module under `engine/`, by path. */
export function engineModules(): Map<string, EngineModule> {
  const names = readdirSync("engine", { recursive: true, encoding: "utf8" });
  const paths = names.map((name) => posix.join("engine", name.replaceAll("\\", "/")));
  const sources = paths.filter((path) => path.endsWith(".ts")).sort();
  return new Map(sources.map((path) => [path, parseModule(path, readFileSync(join(path), "utf8"))]));
}

/** Parses one module's text as if it lay at `path`. */
export function parseModule(path: string, text: string): EngineModule {
  const syntax = ts.createSourceFile(path, text, ts.ScriptTarget.Latest, true);
  const imports: string[] = [];
  const visit = (node: ts.Node): void => {
    const specifier = specifierOf(node);
    if (specifier) imports.push(fromTop(path, specifier));
    ts.forEachChild(node, visit);
  };
  visit(syntax);
  const [, folder, file] = path.split("/");
  return { path, folder: file === undefined ? "" : folder!, syntax, imports };
}

/** What an import declaration in the file at `path` names, as a path from the top. */
export function importedPath(path: string, declaration: ts.ImportDeclaration): string {
  return fromTop(path, specifierOf(declaration)!);
}

function fromTop(path: string, specifier: string): string {
  return specifier.startsWith(".") ? posix.join(dirname(path), specifier) : specifier;
}

function specifierOf(node: ts.Node): string | undefined {
  if ((ts.isImportDeclaration(node) || ts.isExportDeclaration(node)) && node.moduleSpecifier) {
    return (node.moduleSpecifier as ts.StringLiteral).text;
  }
  if (ts.isCallExpression(node) && node.expression.kind === ts.SyntaxKind.ImportKeyword) {
    const [argument] = node.arguments;
    return argument && ts.isStringLiteral(argument) ? argument.text : `a computed name (${argument?.getText() ?? ""})`;
  }
  if (ts.isImportTypeNode(node) && ts.isLiteralTypeNode(node.argument) && ts.isStringLiteral(node.argument.literal)) {
    return node.argument.literal.text;
  }
  return undefined;
}
