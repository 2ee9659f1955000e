import { describe, expect, test } from "vitest";
import { type Trace, trace } from "../../../engine/run/trace.ts";
import { readScenario } from "../../../engine/scenario/readScenario.ts";
import { record } from "../record.ts";
import { fromReference, type ReferenceScenario, references } from "./referenceScenario.ts";

// Three scenarios of three clear days each, computed at 1-minute steps with pvlib-python's irradiance functions (2026) and a
// plain energy balance, and matched by a second implementation to 0.002 % (see the file's header). Tolerances are that header's.
const SOURCE =
  "pvlib-python 2026 (SPA, Ineichen–Perez, Hay–Davies, ASHRAE, Faiman) with a plain energy balance, 1-minute steps";
/** Equation of time on the middle day of each, minutes, from the SPA; it only moves the warmest hour. */
const EQUATION_OF_TIME_MIN: Record<string, number> = {
  "V1-bern-july": -4.7,
  "V2-stockholm-september": 8.5,
  "V3-sydney-may-tree": 3.6,
};

function run(reference: ReferenceScenario, stepMinutes: 1 | 5 | 10 | 15 | 60): Trace {
  const read = readScenario(fromReference(reference, stepMinutes, EQUATION_OF_TIME_MIN[reference.id]!));
  if (!read.ok) throw new Error(JSON.stringify(read.problems));
  const result = trace(read.scenario);
  if (!result.ok) throw new Error(JSON.stringify(result.problems));
  return result.trace;
}

/** Charge in the reference's own measure, where the last part that may not be drawn counts as well. */
function socAt(reference: ReferenceScenario, traced: Trace, hour: number): number {
  const perHour = Math.round(1 / traced.prepared.grid.stepH);
  return reference.inputs.minSoc + traced.chargeShare[hour * perHour]! * (1 - reference.inputs.minSoc);
}

const cases = [
  { stepMinutes: 1, pv: { open: 0.3, shaded: 0.5 }, soc: { open: 0.002, shaded: 0.003 } },
  { stepMinutes: 5, pv: { open: 0.3, shaded: 0.5 }, soc: { open: 0.002, shaded: 0.003 } },
  { stepMinutes: 10, pv: { open: 0.3, shaded: 1 }, soc: { open: 0.002, shaded: 0.005 } },
  { stepMinutes: 15, pv: { open: 0.3, shaded: 1 }, soc: { open: 0.002, shaded: 0.005 } },
  { stepMinutes: 60, pv: { open: 0.5, shaded: 4 }, soc: { open: 0.005, shaded: 0.03 } },
] as const;

describe.each(references)("$id", (reference) => {
  const kind = reference.inputs.obstacles === undefined ? "open" : "shaded";
  test.each(cases)("the day's sun and the bank's charge at $stepMinutes-minute steps", ({ stepMinutes, pv, soc }) => {
    const traced = run(reference, stepMinutes);
    const days = reference.daily.pvBusWh.map((wh, day) => 100 * (traced.days[day]!.solarWh / wh - 1));
    const worstPv = Math.max(...days.map(Math.abs));
    const charges = reference.socAtHour.map((share, hour) => socAt(reference, traced, hour) - share);
    const worstSoc = Math.max(...charges.map(Math.abs));
    record({
      what: `end to end, ${reference.id}, ${stepMinutes} min: daily solar energy at the bank`,
      source: SOURCE,
      tolerance: pv[kind],
      why: "step error as measured in the reference's own variants",
      worst: worstPv,
      unit: "%",
      n: days.length,
    });
    record({
      what: `end to end, ${reference.id}, ${stepMinutes} min: charge at each hour`,
      source: SOURCE,
      tolerance: soc[kind],
      why: "follows from the daily energy's tolerance",
      worst: worstSoc,
      unit: "of full",
      n: charges.length,
    });
    expect(worstPv).toBeLessThan(pv[kind]);
    expect(worstSoc).toBeLessThan(soc[kind]);
    traced.days.forEach((day, d) => {
      expect(day.demandWh).toBeCloseTo(reference.daily.loadWh[d]!, 3);
    });
  });

  test("what is spilled and what goes unserved", () => {
    const traced = run(reference, 1);
    reference.daily.curtailedBusWh.forEach((wh, day) => {
      expect(Math.abs(traced.days[day]!.spilledWh - wh)).toBeLessThan(0.01 * reference.daily.pvBusWh[day]!);
    });
    reference.daily.unservedWh.forEach((wh, day) => {
      expect(Math.abs(traced.days[day]!.unservedWh - wh)).toBeLessThan(12);
    });
  });
});
