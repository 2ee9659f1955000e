/** What README, model page and the notes of the examples say in figures is what the engine says today. */
import { readFileSync } from "node:fs";
import { expect, test } from "vitest";
import { prepareEnsemble } from "../../engine/ensemble/prepareEnsemble.ts";
import { transmitDraw } from "../../engine/load/modeCurrent.ts";
import { runMembers } from "../../engine/odds/odds.ts";
import { loadClimateTables } from "../../engine/place/loadClimateTables.ts";
import { type Ledger, ledger } from "../../engine/run/ledger.ts";
import { type Trace, trace } from "../../engine/run/trace.ts";
import { readScenario, readVariant } from "../../engine/scenario/readScenario.ts";
import type { Scenario } from "../../engine/scenario/scenario.ts";

const README = readFileSync("README.md", "utf8");
const MODEL = readFileSync("docs/model.md", "utf8");
const climate = await loadClimateTables();

function scenario(name: string, variant?: string): Scenario {
  const text = readFileSync(`scenarios/${name}.json`, "utf8");
  const read = variant === undefined ? readScenario(text) : readVariant(text, variant);
  if (!read.ok) throw new Error(read.problems[0]!.message);
  return read.scenario;
}

function run(name: string, variant?: string): Trace {
  const result = trace(scenario(name, variant), { climate });
  if (!result.ok) throw new Error(result.problems[0]!.message);
  return result.trace;
}

const wh = (lines: Ledger["loads"], what: "alwaysWh" | "usedWh", names = /./) =>
  lines.filter((line) => names.test(line.name)).reduce((sum, line) => sum + line[what], 0);

test("the moor: the turned-down radio takes what the note says, and a small one holds where it does not", () => {
  const note = scenario("peat-moor").note!;
  const [, keyDownA, receiveA] = /still draws (\d+) A with the key down, and the receiver draws (\d+) A/.exec(note)!;
  const moor = run("peat-moor");
  expect(Math.round(moor.prepared.loads.stations[0]!.peakA)).toBe(Number(keyDownA));
  expect(moor.prepared.scenario.stations[0]!.radio.receive.drawA).toBe(Number(receiveA));
  expect(README).toContain(
    "Is a 100 W radio turned down to 10 W as good as a small one? (No: see `scenarios/peat-moor.json`.)",
  );
  const small = run("peat-moor", "small-radio");
  expect([moor.verdict.holds, moor.verdict.dark]).toEqual([false, true]);
  expect([small.verdict.holds, small.verdict.dark]).toEqual([true, false]);
  expect(moor.verdict.radios[0]!.dropoutH).toBeGreaterThan(0);
});

test("the hut: ten days take fuel, and a frozen battery box puts it in the dark", () => {
  const hut = run("polar-hut");
  const burntL = ledger(hut).sources[0]!.fuelL;
  expect(hut.verdict).toMatchObject({ holds: true, dark: false });
  expect(burntL).toBeGreaterThan(1);
  expect(burntL).toBeLessThan(hut.prepared.sources[0]!.fuelL);
  expect(scenario("polar-hut").note).toContain("an LFP bank that is colder than 0 °C takes no charge at all");
  const cold = run("polar-hut", "cold-box");
  expect(Math.max(...cold.prepared.airTempC)).toBeLessThan(0);
  expect(Math.max(...cold.record.bankW)).toBe(0);
  expect(cold.verdict.dark).toBe(true);
});

test("the grove: leaf shade takes most, always on takes more than sending, and the meadow's panels turn it", () => {
  const grove = run("walnut-grove");
  const book = ledger(grove);
  expect(scenario("walnut-grove").note).toContain("in leaf shade for most of the day");
  expect(book.harvest[0]!.shadeLossWh).toBeGreaterThan(0.5 * book.harvest[0]!.unshadedWh);
  expect(README).toContain("What drains it: the transmitter, or what is always on? (Often the second.)");
  expect(wh(book.loads, "alwaysWh")).toBeGreaterThan(wh(book.loads, "usedWh", /, sending$/));
  expect(grove.verdict.holds).toBe(false);
  expect(run("walnut-grove", "meadow").verdict.holds).toBe(true);
});

test("one October weekend in twenty brings little more than half of a typical one", () => {
  expect(README).toContain("one October weekend in twenty brings little more than half of a typical one");
  const ready = prepareEnsemble(scenario("walnut-grove"), { climate }, "readme");
  if (!ready.ok) throw new Error(ready.problems[0]!.message);
  const members = 400;
  const solarWh = [...runMembers(ready.ensemble, 0, members).outcomes.solarWh].sort((a, b) => a - b);
  const share = solarWh[members / 20]! / solarWh[members / 2]!;
  expect(share).toBeGreaterThan(0.5);
  expect(share).toBeLessThan(0.65);
});

test("a 100 W set turned down to 5 W takes what the model's page says", () => {
  const [, amps] = /A 100 W set turned down to 5 W still takes about ([\d.]+) A/.exec(MODEL)!;
  const draw = transmitDraw(
    { ratedW: 100, receiveW: 1.2 * 13.8, fullPowerW: 20 * 13.8, biasW: 3 * 13.8 },
    5,
    "envelope",
  );
  expect((draw.peakW / 13.8).toFixed(1)).toBe(amps);
});
