import ts from "typescript-api";
import { type EngineModule, importedPath } from "./engineModules.ts";

/**
 * What every JavaScript engine rounds alike. `exp`, `log`, `pow` and the trigonometric functions differ in the last bit
 * between engines; they belong in *prepare*, whose tables are rounded to a grid.
 */
const EXACT_MATH = /^(sqrt|min|max|abs|floor|imul|fround|PI|E|LN2|LN10|SQRT2|SQRT1_2)$/;

/** Methods that make an array, a string, an iterator or a function each time they are called. */
const ALLOCATING_METHOD =
  /^(map|filter|slice|splice|subarray|concat|push|unshift|from|of|entries|keys|values|forEach|reduce|sort|toSorted|join|split|bind|call|apply|toFixed|toString|toPrecision)$/;

const KINDS: Partial<Record<ts.SyntaxKind, string>> = {
  [ts.SyntaxKind.NewExpression]: "makes something new",
  [ts.SyntaxKind.ObjectLiteralExpression]: "makes an object",
  [ts.SyntaxKind.ArrayLiteralExpression]: "makes an array",
  [ts.SyntaxKind.ArrowFunction]: "makes a closure",
  [ts.SyntaxKind.FunctionExpression]: "makes a closure",
  [ts.SyntaxKind.FunctionDeclaration]: "makes a closure",
  [ts.SyntaxKind.ClassExpression]: "makes a class",
  [ts.SyntaxKind.ClassDeclaration]: "makes a class",
  [ts.SyntaxKind.TemplateExpression]: "makes a string",
  [ts.SyntaxKind.RegularExpressionLiteral]: "makes a regular expression",
  [ts.SyntaxKind.SpreadElement]: "makes an array",
  [ts.SyntaxKind.ForOfStatement]: "makes an iterator",
  [ts.SyntaxKind.ForInStatement]: "makes an iterator",
  [ts.SyntaxKind.AwaitExpression]: "waits",
  [ts.SyntaxKind.YieldExpression]: "waits",
};

/** A function that has a name to be called by, and the module that it stands in. */
interface NamedFunction {
  module: EngineModule;
  name: string;
  node: ts.FunctionDeclaration | ts.ArrowFunction | ts.FunctionExpression;
}

/**
 * Functions that run once per member and step: all in files named `step….ts`, all whose doc comment says `@memberLoop`,
 * and all that these call, wherever they stand.
 * Calls through an object (`curve.voltage(x)`) cannot be followed from the text; mark what they reach.
 */
export function memberLoopFunctions(modules: ReadonlyMap<string, EngineModule>): NamedFunction[] {
  const all = [...modules.values()].flatMap(namedFunctions);
  const found = new Set(all.filter(isMarked));
  for (const caller of found) {
    for (const name of calledNames(caller.node)) {
      const [path, exportedName] = importedFrom(caller.module, name) ?? [caller.module.path, name];
      const callee = all.find((other) => other.module.path === path && other.name === exportedName);
      if (callee) found.add(callee); // a set visits what is added while it is walked
    }
  }
  return [...found];
}

/** What a member-loop function may not contain, one sentence each; `throw` may say what it likes. */
export function memberLoopFaults({ module, node }: NamedFunction): string[] {
  const faults: string[] = [];
  const visit = (child: ts.Node): void => {
    if (ts.isThrowStatement(child) || ts.isTypeNode(child)) return;
    const fault = faultOf(child);
    if (fault) {
      const line = module.syntax.getLineAndCharacterOfPosition(child.getStart()).line + 1;
      faults.push(`${module.path}:${line} ${child.getText().split("\n")[0]!.slice(0, 60)}: ${fault}`);
    }
    ts.forEachChild(child, visit);
  };
  ts.forEachChild(node, visit);
  return faults;
}

function faultOf(node: ts.Node): string | undefined {
  if (KINDS[node.kind]) return KINDS[node.kind];
  if (ts.isIdentifier(node)) {
    if (node.text === "Date" || node.text === "Temporal" || node.text === "Intl") return "reads a calendar";
    if (node.text === "Math" && !isExactMath(node.parent)) return "is not rounded alike everywhere";
  }
  if (ts.isBinaryExpression(node)) {
    const operator = node.operatorToken.kind;
    if (operator === ts.SyntaxKind.AsteriskAsteriskToken || operator === ts.SyntaxKind.AsteriskAsteriskEqualsToken) {
      return "is not rounded alike everywhere";
    }
  }
  if (ts.isCallExpression(node) && ts.isPropertyAccessExpression(node.expression)) {
    if (ALLOCATING_METHOD.test(node.expression.name.text)) return "allocates";
  }
  return undefined;
}

function isExactMath(node: ts.Node): boolean {
  return ts.isPropertyAccessExpression(node) && EXACT_MATH.test(node.name.text);
}

function namedFunctions(module: EngineModule): NamedFunction[] {
  return module.syntax.statements.flatMap((statement): NamedFunction[] => {
    if (ts.isFunctionDeclaration(statement) && statement.name) {
      return [{ module, name: statement.name.text, node: statement }];
    }
    if (!ts.isVariableStatement(statement)) return [];
    return statement.declarationList.declarations.flatMap(({ name, initializer }) =>
      initializer && (ts.isArrowFunction(initializer) || ts.isFunctionExpression(initializer))
        ? [{ module, name: name.getText(), node: initializer }]
        : [],
    );
  });
}

function isMarked({ module, node }: NamedFunction): boolean {
  const file = module.path.split("/").at(-1)!;
  const statement = ts.isFunctionDeclaration(node) ? node : node.parent.parent.parent;
  return /^step[A-Z.]/.test(file) || ts.getJSDocTags(statement).some((tag) => tag.tagName.text === "memberLoop");
}

function calledNames(node: ts.Node): Set<string> {
  const names = new Set<string>();
  const visit = (child: ts.Node): void => {
    if (ts.isThrowStatement(child)) return;
    if (ts.isCallExpression(child) && ts.isIdentifier(child.expression)) names.add(child.expression.text);
    ts.forEachChild(child, visit);
  };
  visit(node);
  return names;
}

/** The module and the name there that a local name was imported as. */
function importedFrom(module: EngineModule, localName: string): [path: string, name: string] | undefined {
  for (const declaration of module.syntax.statements.filter(ts.isImportDeclaration)) {
    const bindings = declaration.importClause?.namedBindings;
    if (!bindings || !ts.isNamedImports(bindings)) continue;
    const element = bindings.elements.find(({ name }) => name.text === localName);
    if (element) return [importedPath(module.path, declaration), (element.propertyName ?? element.name).text];
  }
  return undefined;
}
