import { spawnSync } from "node:child_process";
import {
  cpSync,
  existsSync,
  mkdirSync,
  mkdtempSync,
  readFileSync,
  rmSync,
  statSync,
  symlinkSync,
  writeFileSync,
} from "node:fs";
import { tmpdir } from "node:os";
import { join, relative, resolve } from "node:path";
import { afterAll, beforeAll, expect, test } from "vitest";

const MOST_BYTES = 3_000_000;
const RECIPES = [...readFileSync("docs/library.md", "utf8").matchAll(/```js\n([\s\S]*?)```/g)].map(([, code]) => code!);

const folder = mkdtempSync(join(tmpdir(), "duskline-packed-"));
const elsewhere = join(folder, "elsewhere");
afterAll(() => rmSync(folder, { recursive: true }));
let tarball = "";

function ran(command: string, args: readonly string[], cwd: string): string {
  const { status, stdout, stderr } = spawnSync(command, args, { cwd, encoding: "utf8", maxBuffer: 1e8 });
  if (status !== 0) throw new Error(`${command} ${args.join(" ")} ended with ${status}: ${stderr}${stdout}`);
  return stdout;
}

const recipe = (number: number) => {
  const file = `recipe-${number}.mjs`;
  writeFileSync(join(elsewhere, file), RECIPES[number - 1]!);
  return ran(process.execPath, [file], elsewhere).trimEnd();
};
const duskline = (...args: string[]) => ran(join(elsewhere, "node_modules/.bin/duskline"), args, elsewhere);

interface LockedPackage {
  readonly dev?: boolean;
  readonly optional?: boolean;
  readonly devOptional?: boolean;
  readonly bin?: Readonly<Record<string, string>>;
  readonly dependencies?: Readonly<Record<string, string>>;
}

/** Lays down the packages that the lock file gives to whoever installs duskline, and no other, as an install from the registry would. */
function layDependencies(): void {
  const { packages } = JSON.parse(readFileSync("package-lock.json", "utf8")) as {
    packages: Record<string, LockedPackage>;
  };
  mkdirSync(join(elsewhere, "node_modules/.bin"), { recursive: true });
  for (const [path, { dev, optional, devOptional, bin = {} }] of Object.entries(packages)) {
    if (path === "" || dev || optional || devOptional) continue;
    cpSync(path, join(elsewhere, path), { recursive: true });
    for (const [name, file] of Object.entries(bin)) {
      symlinkSync(join("..", relative("node_modules", path), file), join(elsewhere, "node_modules/.bin", name));
    }
  }
  const { dependencies } = packages[""]!;
  writeFileSync(join(elsewhere, "package.json"), JSON.stringify({ private: true, dependencies }));
}

/**
 * Packs what was built and installs it in an empty folder, without a network and from an empty cache: npm finds there what the packed file
 * depends on, and would ask for whatever is missing.
 */
beforeAll(() => {
  for (const built of ["dist/node.js", "dist/types/index.d.ts"]) {
    if (!existsSync(built)) throw new Error(`${built} is not there; run npm run build:node first.`);
  }
  const packed = ran("npm", ["pack", "--ignore-scripts", "--json", "--pack-destination", folder], ".");
  tarball = join(folder, (JSON.parse(packed) as { filename: string }[])[0]!.filename);
  layDependencies();
  cpSync("scenarios", join(elsewhere, "scenarios"), { recursive: true });
  const quietly = ["--offline", "--cache", join(folder, "cache"), "--ignore-scripts", "--no-audit", "--no-fund"];
  ran("npm", ["install", ...quietly, tarball], elsewhere);
});

test("the packed file is small and holds neither page, maps, sources nor tests", () => {
  expect(statSync(tarball).size).toBeLessThanOrEqual(MOST_BYTES);
  const names = ran("tar", ["-tzf", tarball], ".").trimEnd().split("\n");
  expect(names.length).toBeGreaterThan(100);
  const strays = names.filter((name) => /\.map$|explorer|^package\/(engine|tests)\//.test(name));
  expect(strays.filter((name) => !name.startsWith("package/docs/"))).toEqual([]);
});

test("npx duskline trace runs there on a copied scenario, and says what it says here", () => {
  const told = ran("npx", ["--offline", "duskline", "trace", "scenarios/walnut-grove.json"], elsewhere);
  expect(told).toBe(ran(process.execPath, ["dist/duskline.js", "trace", "scenarios/walnut-grove.json"], "."));
});

test("there are five recipes", () => {
  expect(RECIPES).toHaveLength(5);
});

test("recipe 1 gives the verdict and the limits that the command line gives", () => {
  const lines = recipe(1).split("\n");
  const told = duskline("trace", "scenarios/walnut-grove.json");
  expect(lines[0]).toMatch(/^The bank /);
  expect(told).toContain(lines[0]);
  const lowest = Number(/^Lowest: ([\d.]+) %$/m.exec(lines.join("\n"))![1]);
  expect(told).toContain(`lowest at ${Math.round(lowest)} %`);
  const wiring = JSON.parse(duskline("limits", "scenarios/walnut-grove.json", "--coldest", "-10", "--json")) as {
    sentences: string[];
  };
  expect(lines.slice(-wiring.sentences.length)).toEqual(wiring.sentences);
});

test("recipe 2 counts as the command line counts, and replays a member that fails", () => {
  const out = recipe(2);
  const said = JSON.parse(
    duskline("odds", "scenarios/walnut-grove.json", "--members", "300", "--seed", "club", "--json"),
  ) as {
    holds: { count: number; of: number };
    tailMember: number;
  };
  expect(out).toContain(`Holds in ${said.holds.count} of ${said.holds.of};`);
  expect(out).toMatch(new RegExp(`^Member ${said.tailMember}: The bank does not hold`, "m"));
});

test("recipe 3 holds plans against the first, as the command line does", () => {
  const out = recipe(3);
  const call = ["versus", "scenarios/walnut-grove.json", "--variants", "meadow", "--members", "200", "--json"];
  const { others } = JSON.parse(duskline(...call)) as { others: { holds: { mean: number } }[] };
  const gains = [...out.matchAll(/holds (-?[\d.]+) more in 100/g)].map(([, gain]) => Number(gain));
  expect(gains).toHaveLength(2);
  expect(gains[0]).toBeCloseTo(100 * others[0]!.holds.mean, 1);
  expect(gains[1]).toBeGreaterThan(0); // a larger bank under the same skies
});

test("recipe 4 names a size as the command line does, and what decides it", () => {
  const out = recipe(4);
  const call = ["--x", "bank.blockAh=200:500:4", "--y", "none", "--target", "90", "--members", "60", "--json"];
  const said = JSON.parse(duskline("size", "scenarios/walnut-grove.json", ...call)) as { sentences: string[] };
  expect(out.split("\n").slice(0, said.sentences.length)).toEqual(said.sentences);
  expect(out.match(/: -?\d+ ± \d+ % of what differs$/gm)).toHaveLength(3);
});

test("recipe 5 learns from readings, splits the miss of a log and calibrates", () => {
  const out = recipe(5);
  expect(out).toMatch(/^From Fri 9 Oct 09:00 on, the bank holds /m);
  expect(out).toMatch(/^Fri 9 Oct \d\d:00: the bank had 66\.0 %, planned /m);
  expect(out).toMatch(/^The calibrated plan reads\.$/m);
});

test("its types read in a stranger's strict program", () => {
  const program = `import { type Answer, loadClimateTables, type OddsReport, odds, readScenario } from "duskline";
import { makeNodePool } from "duskline/node";
const read = readScenario("{}");
if (read.ok) {
  const asked: Promise<Answer<OddsReport>> = odds(read.scenario, { climate: await loadClimateTables() }, { pool: makeNodePool(2) });
  const answer = await asked;
  if (answer.ok) answer.report.holds.share.toFixed(2);
  // @ts-expect-error the report is there only where the answer is well
  answer.report;
}
`;
  writeFileSync(join(elsewhere, "program.mts"), program);
  const flags = ["--strict", "--noEmit", "--skipLibCheck", "false", "--target", "es2023", "--module", "nodenext"];
  ran(resolve("node_modules/.bin/tsc"), [...flags, "program.mts"], elsewhere);
});
