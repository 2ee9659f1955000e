import { expect, test } from "vitest";
import { radioVolts } from "../../../engine/checks/radioVolts.ts";
import { runOhm } from "../../../engine/checks/wireSizes.ts";
import { record } from "../record.ts";

const M_PER_FT = 0.3048;

/** A 22 A radio alone on its bank, copper at 25 °C, 10 mΩ of fuses and plugs. */
function radioV(openV: number, packOhm: number, awg: "8" | "12", oneWayFt: number) {
  const cable = { awg, oneWayM: oneWayFt * M_PER_FT, tempC: 25 };
  return radioVolts({
    openV,
    siteA: 22,
    packOhm,
    mainCableOhm: 0,
    mainContactsOhm: 0,
    radioA: 22,
    leadOhm: runOhm(cable),
    leadContactsOhm: 0.01,
  });
}

test("volts at a radio, four worked examples", () => {
  // Trade arithmetic: pack 20 mΩ (LFP with its electronics) or 6 mΩ (AGM), both from memory; rest volts 13.1 (LFP), 12.70 and 12.06 (AGM
  // full and half); 8 ft of 8 AWG is a loop of 10.4 mΩ, 15 ft of 12 AWG 49.8 mΩ.
  const rows = [
    { printedV: 12.21, found: radioV(13.1, 0.02, "8", 8) },
    { printedV: 11.34, found: radioV(13.1, 0.02, "12", 15) },
    { printedV: 12.12, found: radioV(12.7, 0.006, "8", 8) },
    { printedV: 11.48, found: radioV(12.06, 0.006, "8", 8) },
  ];
  const worst = Math.max(...rows.map(({ printedV, found }) => Math.abs(found.radioV - printedV)));
  record({
    what: "volts at a 22 A radio on a transmit peak",
    source: "trade arithmetic from NEC chapter 9 table 8 at 25 °C; resistances of packs from memory",
    tolerance: 0.006,
    why: "two decimals",
    worst,
    unit: "V",
    n: rows.length,
  });
  expect(worst).toBeLessThan(0.006);
  // By hand, 22 A: pack 0.44 V, 8 AWG 0.23 V, contacts 0.22 V: the pack; in 12 AWG 1.10 V: the lead.
  expect(rows[0]!.found.weakLink).toMatchObject({ link: "pack", lostV: 0.44 });
  expect(rows[1]!.found.weakLink.link).toBe("lead");
  expect(rows[1]!.found.weakLink.lostV).toBeCloseTo(1.1, 2);
});
