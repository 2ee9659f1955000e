/**
 * `npm test`: every check of the project; `npm run test:quick`: the tests that need no browser. Ends with the accuracy table and, as
 * its last line, `N passed, N failed` (and `, N skipped`). Each check outside vitest counts as one test; a stage that breaks down
 * counts as a failure.
 */
import { spawn } from "node:child_process";
import { existsSync, readFileSync, rmSync } from "node:fs";
import { join } from "node:path";
import { accuracyRows, TRUTH_FOLDER } from "./accuracyRows.ts";

interface Count {
  passed: number;
  failed: number;
  skipped: number;
}

type Bins = Record<string, string>;

interface Outcome {
  ok: boolean;
  output: string;
}

const total: Count = { passed: 0, failed: 0, skipped: 0 };
const failures: string[] = [];

const buildsForNode = [
  () => check("library's types are written", "typescript", "tsc", ["--project", "tsconfig.types.json"]),
  () =>
    check("command line and library build", "vite", "vite", [
      "build",
      "--logLevel",
      "warn",
      "--config",
      "vite.node.config.ts",
    ]),
];

try {
  await (process.argv.includes("--quick") ? quickStages() : everyStage());
} catch (error) {
  add("the test run itself", { passed: 0, failed: 1, skipped: 0 });
  console.log(error);
}
if (failures.length > 0) console.log(`\nFailed: ${failures.join(", ")}`);
const { passed, failed, skipped } = total;
console.log(`\n${passed} passed, ${failed} failed${skipped > 0 ? `, ${skipped} skipped` : ""}`);
process.exitCode = failed > 0 || passed === 0 ? 1 : 0;

async function everyStage(): Promise<void> {
  await sideBySide([
    () => check("types of everything else", "typescript", "tsc", ["--project", "tsconfig.json"]),
    () => check("page builds", "vite", "vite", ["build", "--logLevel", "warn"]),
    () =>
      check("page builds as one file", "vite", "vite", [
        "build",
        "--logLevel",
        "warn",
        "--config",
        "vite.single.config.ts",
      ]),
    () => check("nothing unused", "knip", "knip", []),
    () => check("types of the engine", "typescript", "tsc", ["--project", "tsconfig.engine.json"]),
    () => check("lint and format", "@biomejs/biome", "biome", ["ci", "--error-on-warnings", "--colors=off", "."]),
    ...buildsForNode,
  ]);
  rmSync(TRUTH_FOLDER, { recursive: true, force: true });
  await suite("node", "mocked");
  await suite("browser");

  const rows = accuracyRows();
  if (rows.length > 0) console.log(`\nAccuracy: largest difference from what is published\n${table(rows)}`);
}

/** `npm run test:quick`: what needs no browser, after the builds that the command line's tests run. */
async function quickStages(): Promise<void> {
  await sideBySide(buildsForNode);
  await suite("node", "mocked");
}

/** Goes through jobs two at a time, one for each of two cores, the longest first. */
async function sideBySide(jobs: readonly (() => Promise<void>)[]): Promise<void> {
  const waiting = [...jobs];
  const lane = async () => {
    for (let job = waiting.shift(); job !== undefined; job = waiting.shift()) await job();
  };
  await Promise.all([lane(), lane()]);
}

/** Runs one tool to its end: quiet when it passes, with all that it printed when it fails. */
async function check(name: string, packageName: string, command: string, args: string[]): Promise<void> {
  const startMs = performance.now();
  const { ok, output } = await run(packageName, command, args, false);
  add(name, { passed: ok ? 1 : 0, failed: ok ? 0 : 1, skipped: 0 });
  const tookS = ((performance.now() - startMs) / 1000).toFixed(1);
  console.log(`${ok ? "✓" : "✗"} ${name} (${tookS} s)`);
  if (!ok) console.log(output);
}

/** Runs vitest projects, their progress shown as it comes, and counts from their report. The first gives its name. */
async function suite(...projects: readonly [string, ...string[]]): Promise<void> {
  const [name] = projects;
  const report = `.cache/${name}-tests.json`;
  rmSync(report, { force: true });
  console.log(`\n${name} tests`);
  const { ok } = await run(
    "vitest",
    "vitest",
    [
      "run",
      ...projects.map((each) => `--project=${each}`),
      "--reporter=default",
      "--reporter=json",
      `--outputFile.json=${report}`,
    ],
    true,
  );
  add(`${name} tests`, countOf(report, ok));
}

/**
 * What a vitest report says, and one failure for each breakdown that no single test answers for: a file that would not
 * load, an error between tests, a report that was never written.
 */
function countOf(report: string, ok: boolean): Count {
  if (!existsSync(report)) return { passed: 0, failed: 1, skipped: 0 };
  const { numPassedTests, numFailedTests, numPendingTests, numTodoTests, testResults } = JSON.parse(
    readFileSync(report, "utf8"),
  ) as {
    numPassedTests: number;
    numFailedTests: number;
    numPendingTests: number;
    numTodoTests: number;
    testResults: { status: string; assertionResults: { status: string }[] }[];
  };
  const brokenFiles = testResults.filter(
    (file) => file.status === "failed" && !file.assertionResults.some((test) => test.status === "failed"),
  ).length;
  const failedCount = numFailedTests + brokenFiles;
  return {
    passed: numPassedTests,
    failed: failedCount === 0 && !ok ? 1 : failedCount,
    skipped: numPendingTests + numTodoTests,
  };
}

function add(name: string, count: Count): void {
  total.passed += count.passed;
  total.failed += count.failed;
  total.skipped += count.skipped;
  if (count.failed > 0) failures.push(name);
}

/** Runs a package's command with this very Node, so that no shell and no platform's wrapper stands between. */
function run(packageName: string, command: string, args: string[], show: boolean): Promise<Outcome> {
  return new Promise((resolve) => {
    const folder = join("node_modules", packageName);
    const { bin } = JSON.parse(readFileSync(join(folder, "package.json"), "utf8")) as { bin: string | Bins };
    const script = join(folder, typeof bin === "string" ? bin : bin[command]!);
    const child = spawn(process.execPath, [script, ...args], { stdio: ["ignore", "pipe", "pipe"], env: toolEnv() });
    let output = "";
    for (const stream of [child.stdout, child.stderr]) {
      stream.setEncoding("utf8").on("data", (text: string) => {
        if (show) process.stdout.write(text);
        else output += text;
      });
    }
    child.on("error", (error) => resolve({ ok: false, output: output + String(error) }));
    child.on("close", (code) => resolve({ ok: code === 0, output }));
  });
}

/** Tools see a pipe here, never the terminal: tell them whether colours reach a person. */
function toolEnv(): NodeJS.ProcessEnv {
  const { NO_COLOR, FORCE_COLOR, ...env } = process.env;
  const colours = process.stdout.isTTY && NO_COLOR === undefined;
  return { ...env, ...(colours ? { FORCE_COLOR: FORCE_COLOR ?? "1" } : { NO_COLOR: "1" }) };
}

/** Rows under one another, columns padded; the reasons for the tolerances stand in docs/validation.md. */
function table(rows: ReturnType<typeof accuracyRows>): string {
  const cells = [["what", "worst", "allowed", "n", "source"]];
  const leftOut: string[] = [];
  for (const row of rows) {
    if ("skipped" in row) leftOut.push(`Not compared here: ${row.what} (${row.skipped})`);
    else cells.push([row.what, figure(row.worst), `${figure(row.tolerance)} ${row.unit}`, `${row.n}`, row.source]);
  }
  const widths = cells[0]!.map((_, column) => Math.max(...cells.map((row) => row[column]!.length)));
  const lines = cells.map((row) =>
    row
      .map((cell, column) => cell.padEnd(widths[column]!))
      .join("  ")
      .trimEnd(),
  );
  return [...lines, ...leftOut].join("\n");
}

function figure(value: number): string {
  return String(Number(value.toPrecision(3)));
}
