import { readFileSync } from "node:fs";
import { expect, test } from "vitest";
import { loadClimateTables } from "../../../engine/place/loadClimateTables.ts";
import { prepare } from "../../../engine/run/prepare.ts";
import { makeRunRows } from "../../../engine/run/runRows.ts";
import { stepRun } from "../../../engine/run/stepRun.ts";
import { DROPOUT_H } from "../../../engine/run/stepState.ts";
import { trace } from "../../../engine/run/trace.ts";
import { readScenario } from "../../../engine/scenario/readScenario.ts";

/** Hours in which a radio falls short, with every voltage worked out and with those only that may fall short. */
async function hoursShort(minimumV: number, internalResistanceOhm: number, mainOhm: number) {
  const { variants: _, ...document } = JSON.parse(readFileSync("scenarios/walnut-grove.json", "utf8"));
  document.bank.internalResistanceOhm = internalResistanceOhm;
  document.mainFeed = { ...document.mainFeed, contactsOhm: mainOhm };
  for (const station of document.stations) station.radio.minimumV = minimumV;
  const read = readScenario(document);
  if (!read.ok) throw new Error(read.problems[0]!.message);
  const around = { climate: await loadClimateTables() };
  const run = trace(read.scenario, around);
  const ready = prepare(read.scenario, around);
  if (!run.ok || !ready.ok) throw new Error("the example does not run");
  const { prepared } = ready;
  const rows = makeRunRows(prepared);
  stepRun(prepared, prepared.light, prepared.airTempC, prepared.inputs, rows);
  const whole = run.trace.verdict.radios.reduce((sum, { dropoutH }) => sum + dropoutH, 0);
  return { short: rows.state[DROPOUT_H]!, whole };
}

test("an ensemble's short way counts every hour in which a radio falls short", async () => {
  const found: number[] = [];
  for (const minimumV of [11, 11.6, 12, 12.3, 12.6, 12.9]) {
    for (const [ohm, mainOhm] of [
      [0.002, 0],
      [0.02, 0.004],
      [0.05, 0.02],
      [0.002, 0.06],
    ] as const) {
      const { short, whole } = await hoursShort(minimumV, ohm, mainOhm);
      expect(short, `${minimumV} V, ${ohm} Ω and ${mainOhm} Ω`).toBeCloseTo(whole, 9);
      found.push(whole);
    }
  }
  // From none to most of the hours: both ways out are taken.
  expect(Math.min(...found)).toBe(0);
  expect(found.filter((hours) => hours > 0 && hours < 30).length).toBeGreaterThan(4);
});
