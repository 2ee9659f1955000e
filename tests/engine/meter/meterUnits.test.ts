import { expect, test } from "vitest";
import { readMeterLog } from "../../../engine/meter/readMeterLog.ts";

/** Six rows of a discharge of 4 A at 13 V under 200 W of sun, as a meter with these titles and factors writes it. */
function logOf(titles: string, factors: readonly number[], unitRow?: string): string {
  const rows = Array.from({ length: 6 }, (_, k) => {
    const values = [90 - k, 13, -4, 200, 52];
    const cells = values
      .map((value, c) => (c in factors ? String(value * factors[c]!) : null))
      .filter((cell) => cell !== null);
    return [`2026-10-09T1${k}:00:00Z`, ...cells].join(",");
  });
  return [titles, ...(unitRow === undefined ? [] : [unitRow]), ...rows].join("\n");
}
const read = (text: string, mapping = {}) => {
  const reading = readMeterLog(text, { currentSign: "chargingPositive", ...mapping });
  if (!reading.ok) throw new Error(reading.problems.map(({ message }) => message).join(" "));
  return reading;
};
const first = (text: string, mapping = {}) => {
  const { bankV, bankA, pvW, loadW } = read(text, mapping).log;
  return [bankV?.[0], bankA?.[0], pvW?.[0], loadW?.[0]].map((value) =>
    value === undefined ? value : Math.round(value * 1e6) / 1e6,
  );
};
const PLAIN = [13, -4, 200, 52];

// The prefixes of the International System of Units (BIPM, SI Brochure, 9th ed. 2019, table 7): m 10⁻³, k 10³.
test.each([
  ["in brackets", "time,SOC %,Voltage (mV),Current (mA),PV power (W),Load power (kW)", [1, 1000, 1000, 1, 0.001]],
  ["in square brackets", "time,SOC [%],Voltage [V],Current [mA],PV power [kW],Load power [W]", [1, 1, 1000, 0.001, 1]],
  ["at the end", "time,SOC %,Bank mV,Bank mA,PV W,Load mW", [1, 1000, 1000, 1, 1000]],
  ["none", "time,SOC,Voltage,Current,PV power,Load power", [1, 1, 1, 1, 1]],
])("a unit in the title is the unit of its numbers: %s", (_, titles, factors) => {
  expect(first(logOf(titles, factors))).toEqual(PLAIN);
});

test("a row of units under the titles counts, and is no reading", () => {
  const text = logOf("time,SOC,Voltage,Current,PV power,Load power", [1, 1000, 1000, 1, 0.001], ",%,mV,mA,W,kW");
  expect(first(text)).toEqual(PLAIN);
  expect(read(text).log.timeMs).toHaveLength(6);
  expect(first(text.replace(",%,mV,mA,W,kW", "[s],[%],[mV],[mA],[W],[kW]"))).toEqual(PLAIN);
});

test("what was turned is said, and the mapping remembers it", () => {
  const text = logOf("time,SOC %,Voltage (V),Current (mA),PV (W),Load (W)", [1, 1, 1000, 1, 1]);
  const { findings, mapping } = read(text);
  expect(findings.map(({ message }) => message)).toContain('"Current (mA)" is in mA, and was turned into A.');
  expect(mapping.units).toEqual({ bankA: "mA" });
  expect(first(text, mapping)).toEqual(PLAIN);
});

test("a unit is said where the title says none or lies", () => {
  const text = logOf("time,SOC,U,I,P1,P2", [1, 1, 1000, 1, 1]);
  const columns = { charge: "SOC", bankV: "U", bankA: "I", pvW: "P1", loadW: "P2" };
  expect(first(text, { columns, units: { bankA: "mA" } })).toEqual(PLAIN);
});

test("a unit that is none of the quantity is refused in a sentence, and energy is no power", () => {
  const text = logOf("time,SOC %,Voltage (V),Current (A),PV (W),Load (W)", [1, 1, 1, 1, 1]);
  const wrong = readMeterLog(text, { columns: { bankA: "Voltage (V)" } });
  expect(wrong.ok).toBe(false);
  if (!wrong.ok)
    expect(wrong.problems[0]!.message).toMatch(/"Voltage \(V\)" is in V, which is no unit of bankA \(kept in A\)/);
  const energy = read(logOf("time,SOC %,Voltage (V),Current (A),PV energy (Wh),Load power (W)", [1, 1, 1, 1, 1]));
  expect(energy.log.pvW).toBeNull();
  expect(energy.findings.map(({ message }) => message)).toContain("Not read: PV energy (Wh).");
});

test("a column called PV, or Load, and nothing else, holds watts", () => {
  expect(first(logOf("time,SOC,Voltage,Current,PV,Load", [1, 1, 1, 1, 1]))).toEqual(PLAIN);
});
