import { spawnSync } from "node:child_process";
import { existsSync, readFileSync } from "node:fs";
import { expect, test } from "vitest";
import { duskline, dusklineProcess } from "../cli/duskline.ts";

const README = readFileSync("README.md", "utf8");
const between = (name: string) => README.split(`<!-- ${name} -->`)[1]!.split(`<!-- /${name} -->`)[0]!;

test("the library example runs as it stands and gives the command line's verdict", () => {
  if (!existsSync("dist/index.js")) throw new Error("dist/index.js is not there; run npm run build:node first.");
  const [, code] = /```js\n([\s\S]*?)```/.exec(README)!;
  expect(code!.trimEnd().split("\n").length).toBeLessThanOrEqual(6);
  const ran = spawnSync(process.execPath, ["--input-type=module", "--eval", code!], { encoding: "utf8" });
  expect(ran.stderr).toBe("");
  expect(ran.status).toBe(0);
  const told = dusklineProcess("trace", "scenarios/walnut-grove.json");
  for (const sentence of ran.stdout.trimEnd().split("\n")) expect(told.out).toContain(sentence);
  expect(ran.stdout).toMatch(/^The bank /);
});

test("every command of the README that shows a result ends well", () => {
  const commands = [...README.matchAll(/^npx duskline (.*)$/gm)].map(([, call]) => call!);
  expect(commands.length).toBeGreaterThan(3);
  for (const call of commands) {
    const { code, err } = duskline(...call.split(" "));
    expect([code, err], call).toEqual([0, ""]);
  }
});

test("the scripts and files that the README names are there", () => {
  const { scripts, license } = JSON.parse(readFileSync("package.json", "utf8")) as {
    scripts: Record<string, string>;
    license: string;
  };
  for (const [, script] of README.matchAll(/npm (?:run )?(start|test|docs|bench)\b/g))
    expect(scripts).toHaveProperty(script!);
  for (const [, path] of README.matchAll(/`((?:scenarios|docs|engine|explorer|tests)\/[\w./-]*)`/g))
    expect(existsSync(path!), path).toBe(true);
  expect(license).toBe("MIT");
  expect(readFileSync("LICENSE", "utf8")).toMatch(/^MIT License\n\nCopyright \(c\) \d{4} the duskline authors/);
});

test("the README's accuracy table says no more than docs/validation.md, which a test run measured", () => {
  const validation = readFileSync("docs/validation.md", "utf8");
  const cells = (line: string) =>
    line
      .split("|")
      .slice(1, -1)
      .map((cell) => cell.trim());
  const measured = validation
    .split("\n")
    .filter((line) => line.startsWith("| "))
    .map(cells);
  const shown = between("accuracy").trim().split("\n").slice(2).map(cells);
  expect(shown.length).toBeGreaterThan(4);
  for (const [what, worst, allowed, , source] of shown) {
    // The worst of some rows stands for them, so its figure and source must be those of a measured row.
    const same = measured.find((row) => row[1] === worst && row[4] === source);
    expect(same, what).toBeDefined();
    expect(
      measured.some((row) => row[2] === allowed && row[4] === source),
      what,
    ).toBe(true);
  }
});

test("every row's largest difference lies within what is allowed", () => {
  const page = readFileSync("docs/validation.md", "utf8");
  // The chapter before the first group has tables of its own.
  const validation = page.slice(page.indexOf("## Sun, sky and climate"));
  const rows = validation.split("\n").filter((line) => /^\| (?!what|---)/.test(line));
  expect(rows.length).toBeGreaterThan(30);
  for (const row of rows) {
    const [, worst, allowed] = row
      .split("|")
      .slice(1)
      .map((cell) => Number.parseFloat(cell));
    expect(worst, row).toBeLessThanOrEqual(allowed!);
  }
});
