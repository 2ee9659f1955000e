import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, describe, expect, test } from "vitest";
import * as z from "zod";
import { duskline } from "./duskline.ts";

const GROVE = "scenarios/walnut-grove.json";
const PAGE = readFileSync("docs/command-line.md", "utf8");
const folder = mkdtempSync(join(tmpdir(), "duskline-spots-"));
afterAll(() => rmSync(folder, { recursive: true }));

const Spot = z.strictObject({
  eastM: z.number(),
  northM: z.number(),
  leadM: z.number(),
  dayWh: z.number(),
  eventWh: z.number(),
  leadLossShare: z.number(),
});
const numbers = z.array(z.number());
/** The shape that docs/command-line.md promises, written down a second time and on purpose. */
const SpotsJson = z.strictObject({
  format: z.literal("duskline-spots"),
  version: z.literal(1),
  scenario: z.strictObject({ name: z.string().min(1), place: z.looseObject({ name: z.string() }) }),
  groups: z.array(
    z.strictObject({
      group: z.strictObject({ id: z.string(), name: z.string() }),
      days: z.int(),
      lead: z.strictObject({ statedM: z.number(), reachM: z.number().nullable() }),
      here: Spot,
      best: Spot,
      asGood: Spot,
      beyond: Spot.nullable(),
      grid: z.strictObject({
        westM: z.number(),
        southM: z.number(),
        stepM: z.number(),
        columns: z.int(),
        rows: z.int(),
      }),
      dayWh: numbers,
      leadLossShare: numbers,
      heading: z
        .strictObject({
          nowDeg: z.number(),
          headingDeg: numbers,
          flatWh: numbers,
          tiltDeg: z.number(),
          tiltedWh: numbers,
        })
        .nullable(),
    }),
  ),
});

describe("spots --json", () => {
  const { code, err, out } = duskline("spots", GROVE, "--variant", "meadow", "--json");
  const { groups } = SpotsJson.parse(JSON.parse(out));

  test("tells each group, with nothing on the error stream", () => {
    expect([code, err]).toEqual([0, ""]);
    expect(groups.map(({ group }) => group.id)).toEqual(["roof", "meadow"]);
    for (const { grid, dayWh, leadLossShare } of groups) {
      expect(dayWh).toHaveLength(grid.columns * grid.rows);
      expect(leadLossShare).toHaveLength(dayWh.length);
    }
    expect(groups[0]!.heading!.flatWh).toHaveLength(25);
    expect(groups[1]!.heading).toBeNull();
  });

  test("every field is named on the page", () => {
    const names = [...JSON.stringify(z.toJSONSchema(SpotsJson)).matchAll(/"required":\[([^\]]*)\]/g)].flatMap(
      ([, list]) => [...list!.matchAll(/"(\w+)"/g)].map(([, name]) => name!),
    );
    expect(new Set(names).size).toBeGreaterThan(25);
    for (const name of new Set(names)) expect(PAGE, name).toContain(`\`${name}\``);
  });

  test("a spot brings what the ledger of the scenario with the group there says", () => {
    const document = JSON.parse(readFileSync(GROVE, "utf8"));
    const { at, controller } = document.variants[0].changes[0].add;
    const { asGood } = groups[1]!;
    Object.assign(at, { eastM: asGood.eastM, northM: asGood.northM });
    controller.cable.oneWayM = asGood.leadM;
    const path = join(folder, "moved.json");
    writeFileSync(path, JSON.stringify(document));
    const ledger = JSON.parse(duskline("ledger", path, "--variant", "meadow", "--json").out);
    const { offeredWh } = ledger.harvest.find(({ id }: { id: string }) => id === "meadow");
    expect(Math.abs(asGood.eventWh - offeredWh)).toBeLessThan(0.001);
  });
});

test("in words: the sentence, the spots and what they are the mean of", () => {
  const { code, err, out } = duskline("spots", GROVE, "--group", "roof");
  expect([code, err]).toEqual([0, ""]);
  expect(out).toMatch(/^Van roof: 323 Wh a day where they are\. The nearest spot as good as the best brings \d+ Wh: /m);
  expect(out).toMatch(/Turned about where they are, 316 to 325\./);
  expect(out).toMatch(/^here now +here +323 +4 m +0\.2 %$/m);
  expect(out).toContain("typical sky, mean of the event's 2 whole days");
  expect(out).not.toMatch(/NaN|Infinity|undefined|null/);
});

test("--csv has every spot of the map", () => {
  const { code, out } = duskline("spots", "scenarios/peat-moor.json", "--csv");
  expect(code).toBe(0);
  expect(out).toMatch(/^panel group,\S+$/m);
  expect(out).toMatch(/^here now,/m);
  expect(
    out.split("\n").filter((line) => /^-?[\d.]+,-?[\d.]+,[\d.]+,[\d.]+,0\.\d{4}$/.test(line.trim())).length,
  ).toBeGreaterThan(200);
});

test("a call that asks for what is not there is refused in a sentence", () => {
  const wrong = duskline("spots", GROVE, "--group", "kettle");
  expect([wrong.code, wrong.out]).toEqual([2, ""]);
  expect(wrong.err).toContain('--group is "kettle" but must be one of roof');
  expect(duskline("spots", GROVE, "--json", "--csv").err).toContain("--json and --csv are two ways to print");
  const bare = join(folder, "bare.json");
  writeFileSync(bare, JSON.stringify({ ...JSON.parse(readFileSync(GROVE, "utf8")), panels: [], variants: [] }));
  const none = duskline("spots", bare);
  expect([none.code, none.out]).toEqual([1, ""]);
  expect(none.err).toContain("The scenario has no panels that could be put anywhere");
});
