import { readFileSync } from "node:fs";
import ts from "typescript-api";
import { expect, test } from "vitest";
import { KIND_NAMES } from "../../engine/answers/kinds.ts";
import { sourceFiles } from "./sourceFiles.ts";

/** The one list of kinds that each layer has; and where the page that is one file lists its workers, two of which are a kind's own. */
const LISTS = ["engine/answers/kinds.ts", "explorer/entries/list.ts", "explorer/singleMain.ts"];
/** A kind's own folders, and its word on the command line. Kinds may name one another there: an entry says which questions it asks. */
const OWN = /^(engine\/answers|explorer\/entries)\/[a-z]+\/|^engine\/cli\/[a-z]+Verb\.ts$/;

const kinds = new Set<string>(KIND_NAMES);

/** Places of a file that name a kind: as the value of something called kind, or by a path into its folder. */
function namings(path: string, text: string): string[] {
  const syntax = ts.createSourceFile(path, text, ts.ScriptTarget.Latest, true);
  const found: string[] = [];
  const say = (node: ts.Node, what: string) => {
    const { line } = syntax.getLineAndCharacterOfPosition(node.getStart());
    found.push(`${path}:${line + 1} ${what}`);
  };
  const isKindText = (node: ts.Node): node is ts.StringLiteral => ts.isStringLiteral(node) && kinds.has(node.text);
  const isKind = (node: ts.Node) => /(^|\.)kind$/.test(node.getText());
  const visit = (node: ts.Node): void => {
    if (ts.isPropertyAssignment(node) && node.name.getText() === "kind" && isKindText(node.initializer))
      say(node, node.getText());
    if (ts.isBinaryExpression(node)) {
      const [left, right] = [node.left, node.right];
      if ((isKindText(left) && isKind(right)) || (isKindText(right) && isKind(left))) say(node, node.getText());
    }
    if (ts.isCaseClause(node) && isKindText(node.expression) && isKind(node.parent.parent.expression))
      say(node, `case ${node.expression.text}`);
    if (ts.isStringLiteral(node) && /(answers|entries)\/([a-z]+)\//.test(node.text)) {
      const [, , kind] = /(answers|entries)\/([a-z]+)\//.exec(node.text)!;
      if (kinds.has(kind!)) say(node, node.text);
    }
    ts.forEachChild(node, visit);
  };
  visit(syntax);
  return found;
}

/**
 * What else may reach into a kind's folder, with the reason: the sheet's ruler, its charts' time and the reading line at its head are those of one
 * run, whatever entries there are.
 */
const RULER = /answers\/run\//;
const RULER_READERS = /^explorer\/(charts|page)\/|^engine\/(cli|report)\//;
/** And a figure that is quoted says on the page what it is, whatever entry quotes it. */
const QUOTED = /answers\/note\/noteFigures/;
const QUOTED_READERS = /^explorer\/(notebook\/notebookPage|page\/FigureOrigin)\./;

test("outside a kind's own folder, only the list of each layer names it", () => {
  const strays = sourceFiles(["engine/answers", "engine/notebook", "engine/report", "engine/cli", "explorer"])
    .filter((path) => !LISTS.includes(path) && !OWN.test(path))
    .flatMap((path) =>
      namings(path, readFileSync(path, "utf8")).filter(
        (what) => !(RULER_READERS.test(path) && RULER.test(what)) && !(QUOTED_READERS.test(path) && QUOTED.test(what)),
      ),
    );
  expect(strays).toEqual([]);
});

test.each([
  ["explorer/page/x.ts", 'if (entry.kind === "drivers") show();'],
  ["explorer/page/x.ts", 'const entry = { id: "x", kind: "drivers", title: "x" };'],
  ["explorer/page/x.ts", 'import { tellDrivers } from "../../engine/answers/drivers/tell.ts";'],
  ["explorer/page/x.ts", 'const view = () => import("../entries/drivers/DriversView.tsx");'],
  ["engine/report/x.ts", 'switch (asked.kind) { case "drivers": break; }'],
])("in %s, %s would be found", (path, text) => {
  expect(namings(path, text)).toHaveLength(1);
});
