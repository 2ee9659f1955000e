import { existsSync } from "node:fs";
import { posix } from "node:path";
import { expect, test } from "vitest";
import { indexedFolder, listedIn, parsed, type Taken, takenBy, unlisted } from "./indexListing.ts";
import { sourceFiles } from "./sourceFiles.ts";

const isIndex = (path: string) => posix.basename(path) === "index.ts";
const OURS = sourceFiles(["engine", "explorer"]);
const INDEXES = OURS.filter((path) => isIndex(path) && path !== "engine/index.ts");
const listed = new Map(INDEXES.map((index) => [indexedFolder(index)!, listedIn(index)]));
const taken = OURS.filter((path) => !INDEXES.includes(path)).flatMap((path) => takenBy(path));

test("each folder that others take from, and each kind of answers and of entries, has an index of its own", () => {
  const folders = [...new Set(taken.map(({ file }) => indexedFolder(file)).filter((folder) => folder !== null))];
  expect(folders.length).toBeGreaterThan(70);
  expect(folders.filter((folder) => folder !== "engine/cli" && !existsSync(`${folder}/index.ts`))).toEqual([]);
});

test("nothing of another folder is taken that its index does not name", () => {
  expect(unlisted(taken, listed)).toEqual([]);
});

test("an index names nothing that nobody outside its folder takes", () => {
  const also = sourceFiles(["tests", "docs"]).flatMap((path) => takenBy(path));
  const isTaken = ({ file, name }: Taken) =>
    [...taken, ...also].some(
      (each) =>
        indexedFolder(each.by) !== indexedFolder(file) &&
        (each.name === name || each.name === "*") &&
        (each.file === file || each.file === `${indexedFolder(file)}/index.ts`),
    );
  const idle = [...listed.values()].flat().filter((each) => !isTaken(each));
  expect(idle.map(({ file, name }) => `${name} of ${file}`)).toEqual([]);
});

test.each([
  ['import { stepBank } from "../run/stepBank.ts";', "engine/run/stepBank.ts", "stepBank"],
  ['import type { A as B } from "../run/a.ts";', "engine/run/a.ts", "A"],
  ['export { A } from "../run/a.ts";', "engine/run/a.ts", "A"],
  ['type A = import("../run/a.ts").A;', "engine/run/a.ts", "A"],
  ['const a = () => import("../run/a.ts").then(({ A }) => A);', "engine/run/a.ts", "A"],
  ['async function f() { const { A: a } = await import("../run/a.ts"); }', "engine/run/a.ts", "A"],
  ['import "../answers/days/a.ts";', "engine/answers/days/a.ts", "*"],
])("%s would be found", (text, file, name) => {
  const found = takenBy("engine/odds/x.ts", parsed("engine/odds/x.ts", text));
  expect(found).toEqual([{ by: "engine/odds/x.ts", file, name }]);
  expect(unlisted(found, new Map())).toHaveLength(1);
  const other = [{ by: "", file, name: "other" }];
  expect(unlisted(found, new Map([[indexedFolder(file)!, other]]))).toHaveLength(name === "*" ? 0 : 1);
  expect(unlisted([{ ...found[0]!, by: file }], new Map())).toEqual([]); // a folder's own files are its own affair
});
