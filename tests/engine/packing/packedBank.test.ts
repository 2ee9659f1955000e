import { expect, test } from "vitest";
import { prepareBank } from "../../../engine/bank/prepareBank.ts";
import type { OwnedThing } from "../../../engine/packing/ownedThing.ts";
import { packedBank, readBank, type Strings } from "../../../engine/packing/packedBank.ts";
import { Bank } from "../../../engine/scenario/bank.ts";

const WRITTEN = {
  name: "Behind the seats",
  chemistry: "lfp",
  blockAh: 280,
  inParallel: 2,
  startShare: 1,
  reserveShare: 0.2,
  healthShare: 0.96,
  internalResistanceOhm: 0.01,
  chargingResistanceOhm: 0.012,
  maxChargeA: 200,
  absorptionV: 14.2,
  temperature: 15,
  bring: { massKg: 23 },
};
const PLAN = Bank.parse(WRITTEN);
const battery = (more: Partial<OwnedThing>): OwnedThing => ({
  id: "b",
  kind: "battery",
  name: "Battery",
  count: 4,
  chemistry: "lfp",
  blockAh: 280,
  ...more,
});
const made = (...strings: readonly Strings[]) => readBank(packedBank(PLAN, WRITTEN, strings))!;

test("as many of its own batteries as the plan has are the plan's bank, word for word", () => {
  expect(packedBank(PLAN, WRITTEN, [{ thing: battery({}), strings: 2 }])).toBe(WRITTEN);
  expect(packedBank(PLAN, WRITTEN, [{ thing: battery({ healthShare: 0.96 }), strings: 2 }])).toBe(WRITTEN);
  expect(packedBank(PLAN, WRITTEN, [{ thing: battery({ healthShare: 0.8 }), strings: 2 }])).not.toBe(WRITTEN);
});

test("one of two takes half of the current and twice the resistance: Kirchhoff's laws", () => {
  const { blockAh, inParallel, internalResistanceOhm, chargingResistanceOhm, maxChargeA, healthShare, absorptionV } =
    made({
      thing: battery({}),
      strings: 1,
    });
  expect([blockAh, inParallel, healthShare, absorptionV]).toEqual([280, 1, 0.96, 14.2]);
  expect([internalResistanceOhm, chargingResistanceOhm, maxChargeA]).toEqual([0.02, 0.024, 100]);
});

test("batteries of other sizes side by side: ampere-hours and conductances add, and the first to be at its limit sets the bank's", () => {
  const small = battery({ blockAh: 100, healthShare: 0.8, maxChargeA: 20, internalResistanceOhm: 0.05 });
  const bank = made({ thing: battery({}), strings: 1 }, { thing: small, strings: 2 });
  expect([bank.blockAh, bank.inParallel]).toEqual([480, 1]);
  expect(bank.healthShare).toBeCloseTo((280 * 0.96 + 2 * 100 * 0.8) / 480, 5);
  expect(bank.internalResistanceOhm).toBeCloseTo(1 / (1 / 0.02 + 2 / 0.05), 7);
  // 20 A into 100 Ah is less for its size than 100 A into 280: at 0.2 A for each Ah all of them are charged.
  expect(bank.maxChargeA).toBeCloseTo(0.2 * 480, 5);
  // What the small ones resist to charging is not stated, and their chemistry's does not mix with a stated one.
  expect(bank.chargingResistanceOhm).toBeUndefined();
});

test("what nobody states of two sizes comes to what the chemistry says of one bank of their ampere-hours", () => {
  const plain = Bank.parse({ chemistry: "lfp", blockAh: 50, startShare: 1, reserveShare: 0.2 });
  const { chemistry: _, ...rest } = { ...plain };
  const bank = readBank(
    packedBank(plain, { ...rest, chemistry: "lfp" }, [
      { thing: battery({ blockAh: 60 }), strings: 1 },
      { thing: battery({ blockAh: 90 }), strings: 1 },
    ]),
  )!;
  const air = new Float64Array(4).fill(20);
  const [mixed, whole] = [bank, Bank.parse({ ...plain, blockAh: 150 })].map((each) => prepareBank(each, air, 1));
  for (const field of ["fullAh", "internalOhm", "chargingOhm", "maxDischargeA", "startAh", "reserveAh"] as const)
    expect([field, mixed![field]]).toEqual([field, whole![field]]);
});

test("another chemistry brings its own volts, and keeps the plan's start, reserve and warmth", () => {
  const bank = made({ thing: battery({ chemistry: "agm", blockAh: 100 }), strings: 3 });
  expect([bank.chemistry, bank.absorptionV, bank.maxChargeA, bank.internalResistanceOhm]).toEqual([
    "agm",
    undefined,
    undefined,
    undefined,
  ]);
  expect([bank.startShare, bank.reserveShare, bank.temperature, bank.healthShare]).toEqual([1, 0.2, 15, 1]);
});

test("blocks of 6 V go in series, and a bank that cannot be is none", () => {
  const six = battery({ chemistry: "agm", blockAh: 200, blockV: 6 });
  expect(made({ thing: six, strings: 2 })).toMatchObject({ inSeries: 2, inParallel: 2, blockAh: 200 });
  expect(readBank(packedBank(PLAN, WRITTEN, [{ thing: battery({ blockV: 6 }), strings: 1 }]))).toBeNull();
});

test("the heat that a box's bank is said to hold goes with its size", () => {
  const boxed = { ...WRITTEN, temperature: "air", box: { lossWPerK: 1, heatCapacityWhPerK: 20 } };
  const plan = Bank.parse(boxed);
  const bank = readBank(packedBank(plan, boxed, [{ thing: battery({}), strings: 1 }]))!;
  expect(bank.box).toMatchObject({ lossWPerK: 1, heatCapacityWhPerK: 10 });
});
