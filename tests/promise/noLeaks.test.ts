import { execFileSync } from "node:child_process";
import { readFileSync } from "node:fs";
import { expect, test } from "vitest";

const MACHINE_PATH = new RegExp(`(?<![\\w.~*-])/(${["work", "root", "tmp", "home"].join("|")})/`);
const REGISTRY = /https?:\/\/[\w.-]*(registry|npmjs|yarnpkg)/;

function leaks(path: string, text: string): string[] {
  return text.split("\n").flatMap((line, i) => {
    const isLeak = MACHINE_PATH.test(line) || REGISTRY.test(line);
    return isLeak ? [`${path}:${i + 1}: ${line.trim().slice(0, 120)}`] : [];
  });
}

test("no committed file names a folder of one machine or the address of a registry", () => {
  const paths = execFileSync("git", ["ls-files", "-z", "--cached"], { encoding: "utf8" }).split("\0").filter(Boolean);
  expect(paths).toContain("package.json");
  const found = paths.flatMap((path) => {
    const text = readIfPresent(path);
    return text === undefined || text.includes("\0") ? [] : leaks(path, text); // a NUL marks a picture or a font
  });
  expect(found).toEqual([]);
});

test("the lock file names no download address", () => {
  expect(readFileSync("package-lock.json", "utf8")).not.toMatch(/"resolved": "http/);
});

test("a leak would be seen", () => {
  for (const folder of ["work", "root", "tmp"]) expect(leaks("x", `see "/${folder}/x"`)).toHaveLength(1);
  expect(leaks("x", `https://${"registry"}.example.org/zod`)).toHaveLength(1);
  expect(leaks("x", `import "../${"root"}/x"; // and/or, his/her work/life`)).toEqual([]);
});

/** A file that is committed but just now deleted from the work tree holds nothing to look at. */
function readIfPresent(path: string): string | undefined {
  try {
    return readFileSync(path, "utf8");
  } catch {
    return undefined;
  }
}
