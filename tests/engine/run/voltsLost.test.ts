import { describe, expect, test } from "vitest";
import { openCircuitV } from "../../../engine/bank/bankVoltage.ts";
import { limits } from "../../../engine/checks/limits.ts";
import { loadClimateTables } from "../../../engine/place/loadClimateTables.ts";
import { trace } from "../../../engine/run/trace.ts";
import { voltsCause, voltsLostWords } from "../../../engine/run/voltsLost.ts";
import { applyChanges } from "../../../engine/scenario/applyChanges.ts";
import type { Change } from "../../../engine/scenario/change.ts";
import { readScenario } from "../../../engine/scenario/readScenario.ts";
import { exampleDocument } from "../ensemble/exampleEnsemble.ts";

const climate = await loadClimateTables();
function runOf(changes: readonly Change[]) {
  const changed = applyChanges(exampleDocument("walnut-grove"), changes);
  if (!changed.ok) throw new Error(JSON.stringify(changed.problems));
  const read = readScenario(changed.document);
  if (!read.ok) throw new Error(JSON.stringify(read.problems));
  const run = trace(read.scenario, { climate });
  if (!run.ok) throw new Error(JSON.stringify(run.problems));
  return run.trace;
}

test("what takes most is named first, and all three are told", () => {
  expect(voltsCause({ chargeV: 1, leadV: 0.9, packV: 0.2 })).toBe("charge");
  expect(voltsCause({ chargeV: 0.1, leadV: 0.9, packV: 0.2 })).toBe("lead");
  expect(voltsCause({ chargeV: 0.1, leadV: 0.2, packV: 0.3 })).toBe("pack");
  expect(voltsLostWords({ chargeV: 0.1, leadV: 0.9, packV: 0.2 })).toBe(
    "mostly the lead: lead and fuses take 0.90 V, a full bank has 0.10 V more at rest, the pack takes 0.20 V",
  );
});

describe("a run's dips and the wiring's line say the same of one plan", () => {
  const LONG: Change = {
    at: "stations.hf-run.feed",
    to: { cable: { awg: "12", oneWayM: 6 }, contactsOhm: 0.02 },
  } as Change;
  const SMALL: Change = { at: "bank.blockAh", to: 120 };
  const SOFT: Change[] = [
    { at: "bank.internalResistanceOhm", to: 0.08 },
    { at: "bank.blockAh", to: 600 },
  ];
  test.each([
    ["charge", [SMALL]],
    ["lead", [LONG, { at: "bank.blockAh", to: 600 } as Change]],
    ["pack", SOFT],
  ] as const)("mostly the %s", (cause, changes) => {
    const run = runOf(changes);
    const radio = run.verdict.radios.find(({ id }) => id === "hf-run")!;
    const { chargeV, leadV, packV } = radio.lost!;
    expect(voltsCause(radio.lost!)).toBe(cause);
    // Nothing is left over: a full bank at rest, less the three, is what the radio gets.
    const { bank } = run.prepared;
    expect(openCircuitV(bank, bank.fullAh) - chargeV - leadV - packV).toBeCloseTo(radio.lowestV!, 6);
    // A lead's drop is its current times twice its length of copper and its contacts: Ohm's law.
    const peakA = run.prepared.loads.stations.find(({ id }) => id === "hf-run")!.peakA;
    expect(leadV).toBeGreaterThan(0.99 * peakA * run.prepared.feedOhm[0]!);
    if (radio.dropoutH > 0) expect(run.verdict.sentences.join(" ")).toContain(`mostly the ${cause}: `);
    // Met at the same charge: left out, the wiring meets the reserve that a plan may come down to.
    const { startMs, stepMs } = run.prepared.grid;
    const lowestShare = run.chargeShare[(radio.lowestMs! - startMs) / stepMs]!;
    const line = limits(run, { lowestShare }).lines.find(({ id }) => id === "radio-volts/hf-run")!;
    expect(line.quantity).toBe(`volts on the worst peak (mostly the ${cause})`);
  });
});
