import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, expect, test } from "vitest";
import * as z from "zod";
import { applyChanges } from "../../engine/scenario/applyChanges.ts";
import type { Change } from "../../engine/scenario/change.ts";
import { duskline } from "./duskline.ts";

const GROVE = "scenarios/walnut-grove.json";
const OWNED = "scenarios/walnut-grove-owned.csv";
const PAGE = readFileSync("docs/command-line.md", "utf8");
const folder = mkdtempSync(join(tmpdir(), "duskline-pack-"));
afterAll(() => rmSync(folder, { recursive: true }));

const Odds = z.strictObject({ count: z.int(), of: z.int(), share: z.number(), low: z.number(), high: z.number() });
const Total = z.strictObject({ sum: z.number(), notStated: z.int(), typical: z.int() });
const PackSet = z.strictObject({
  key: z.int(),
  take: z.array(z.int()),
  totals: z.strictObject({ mass: Total, minutes: Total, money: Total }),
  holds: Odds.nullable(),
  outcome: z.enum(["reaches", "fails", "beaten"]),
  isWithin: z.boolean(),
});
const of3 = <Inner extends z.ZodType>(inner: Inner) => z.strictObject({ mass: inner, minutes: inner, money: inner });
const Line = z.strictObject({
  name: z.string(),
  count: z.int(),
  massKg: z.number().nullable(),
  isTypical: z.boolean(),
  who: z.string().nullable(),
});
/** The shape that docs/command-line.md promises, written down a second time and on purpose. */
const PackJson = z.strictObject({
  format: z.literal("duskline-packing"),
  version: z.literal(1),
  scenario: z.strictObject({ name: z.string().min(1), place: z.looseObject({ name: z.string() }) }),
  things: z.array(z.looseObject({ id: z.string(), kind: z.string(), name: z.string(), count: z.int() })),
  passedOver: z.array(z.string()),
  fitted: z.array(z.string()),
  seed: z.string(),
  members: z.int(),
  targetShare: z.number(),
  order: z.enum(["mass", "minutes", "money"]),
  limits: of3(z.number().nullable()),
  all: z.int(),
  run: z.int(),
  sets: z.array(PackSet).nullable(),
  frontier: z.array(PackSet),
  changes: z.array(z.array(z.looseObject({ at: z.string() }))),
  isWithin: z.boolean(),
  leastOf: of3(z.int()),
  proposed: PackSet.nullable(),
  without: z.array(z.strictObject({ thing: z.int(), holds: Odds })),
  beaten: PackSet.nullable(),
  nearest: PackSet.nullable(),
  leftOut: z.array(z.strictObject({ thing: z.int(), why: z.string() })),
  list: z
    .strictObject({
      sections: z.array(z.strictObject({ title: z.string(), lines: z.array(Line) })),
      massKg: z.number(),
      notStated: z.int(),
      home: z.array(Line.omit({ isTypical: true }).extend({ why: z.string() })),
      heavy: z.array(z.string()),
    })
    .nullable(),
});

const call = (...args: readonly string[]) => duskline("pack", GROVE, ...args);
const few = ["--members", "40", "--seed", "4127"];
const answer = (...args: readonly string[]) => {
  const { code, err, out } = call("--owned", OWNED, ...few, ...args, "--json");
  expect([code, err]).toEqual([0, ""]);
  return PackJson.parse(JSON.parse(out));
};

test("the answer has the shape that the page names, field by field, and its odds are those of odds for the scenario made of it", () => {
  const found = answer("--target", "80", "--max-kg", "60");
  const part = PAGE.slice(PAGE.indexOf("### `duskline-packing`"), PAGE.indexOf("### What a club owns"));
  for (const field of [...Object.keys(PackJson.shape), ...Object.keys(PackSet.shape)])
    expect([field, part.includes(`\`${field}\``)]).toEqual([field, true]);
  expect([found.all, found.run, found.sets!.length]).toEqual([30, 30, 30]);
  for (const [k, set] of found.frontier.slice(0, 2).entries()) {
    const changed = applyChanges(JSON.parse(readFileSync(GROVE, "utf8")), found.changes[k] as unknown as Change[]);
    if (!changed.ok) throw new Error(changed.problems[0]!.message);
    const path = join(folder, `set-${k}.json`);
    writeFileSync(path, JSON.stringify(changed.document));
    const odds = JSON.parse(duskline("odds", path, ...few, "--json").out);
    expect([set.holds!.count, set.holds!.of]).toEqual([odds.holds.count, odds.holds.of]);
  }
});

test("the set that is a variant of the plan has the variant's odds", () => {
  const { sets } = answer();
  const set = sets!.find(({ take }) => take.join(" ") === "1 0 2 1 0")!;
  const odds = JSON.parse(duskline("odds", GROVE, "--variant", "meadow", ...few, "--json").out);
  expect([set.holds!.count, set.holds!.of]).toEqual([odds.holds.count, odds.holds.of]);
  const bare = sets!.find(({ take }) => take.join(" ") === "1 0 0 0 0")!;
  expect(bare.holds!.count).toBe(JSON.parse(duskline("odds", GROVE, ...few, "--json").out).holds.count);
});

test("words say what to take, what earns its place, what stays, and the list has two boxes a line", () => {
  const { code, err, out } = call("--owned", OWNED, ...few, "--target", "80", "--max-money", "0");
  expect([code, err]).toEqual([0, ""]);
  expect(out).toMatch(
    /^Take .+: \d+ of 100, \d+.kg, \d+.min\. .+ (earns its|earn their) place: without (it|them), \d+\. /m,
  );
  expect(out).toMatch(/generator and can stay at home\.$/m);
  expect(out).toMatch(/^\[ \] {2}\[ \] {2}Block, 280 Ah +1 +23 +club/m);
  expect(out).toMatch(/^All: [\d.]+.kg, \d+ not stated$/m);
  expect(out).toMatch(/^ {2}Generator and can, 27 kg: not needed: \d+ of 100 without it$/m);
  expect(out).toContain("Two people lift: Block, 280 Ah.");
  expect(out).not.toMatch(/NaN|Infinity|undefined|null/);
});

test("--csv has a line for each set", () => {
  const { code, out } = call("--owned", OWNED, ...few, "--csv");
  expect(code).toBe(0);
  expect(out.trim().split("\n")).toHaveLength(31);
  expect(out).toMatch(/^"Block, 280 Ah","Block, 100 Ah",.*,holds,kg,kg not stated of,min/);
});

test("nothing within the limits, nothing on the list that is enough, and things that fit nothing, are answers", () => {
  expect(call("--owned", OWNED, ...few, "--max-kg", "5").out).toMatch(
    /Nothing within the limits holds in 90 of 100\. Beyond them, /,
  );
  const path = join(folder, "little.csv");
  writeFileSync(
    path,
    "what,name,chemistry,Ah,V,m,AWG,Shelf\nbattery,Small,lfp,10,12,,,a\nbattery,Large,lfp,100,48,,,b\nlead,Reel,,,,5,10,c\n",
  );
  const { code, out } = call("--owned", path, ...few);
  expect(code).toBe(0);
  expect(out).toContain("Nothing that is on the list holds in 90 of 100; the nearest is small, ");
  expect(out).toContain("Large is in no set: 48 V does not make up the plan's 12 V.");
  expect(out).toContain("Reel is in no set: no panels on the list need it.");
  expect(out).toContain("Columns of the list that nothing here knows: Shelf.");
});

test.each([
  [[], "pack needs --owned FILE.csv"],
  [["--owned", "nowhere.csv"], "There is no file nowhere.csv"],
  [["--owned", GROVE], `${GROVE}: The file's first line has no column "what"`],
  [["--owned", OWNED, "--target", "101"], '--target is "101" but must be a number from 1 to 100'],
  [["--owned", OWNED, "--most", "hours"], '--most is "hours" but must be one of mass, minutes, money'],
  [["--owned", OWNED, "--max-kg", "-1"], '--max-kg is "-1" but must be a number from 0 to'],
  [["--owned", OWNED, "--max-money", "much"], '--max-money is "much" but must be a number from 0 to'],
  [["--owned", OWNED, "--members", "5:9"], '--members is "5:9" but must be one number here'],
  [["--owned", OWNED, "--json", "--csv"], "--json and --csv are two ways to print"],
])("%s is refused in a sentence", (args, sentence) => {
  const { code, err, out } = call(...args);
  expect([code, out]).toEqual([2, ""]);
  expect(err).toContain(sentence);
});

test("a list with more sets than are run is refused with what to do", () => {
  const path = join(folder, "many.csv");
  const things = Array.from({ length: 4 }, (_, k) => `panel,Fold ${k},60,${50 + k},`);
  writeFileSync(path, `what,name,how many,W,Ah\n${things.join("\n")}\n`);
  const { code, err } = call("--owned", path, ...few);
  expect(code).toBe(1);
  expect(err).toMatch(
    /things can be packed in [\d,]+ ways, and at most 200,000 are run; set what is sure to stay at home to 0\./,
  );
});
