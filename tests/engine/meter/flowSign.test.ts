import { expect, test } from "vitest";
import { flowSign } from "../../../engine/meter/flowSign.ts";
import { usedAhDrawn } from "../../../engine/meter/usedAhDrawn.ts";

/** A day in minutes of five: sun by day, current that follows it less a steady load. */
const pvW = Float64Array.from({ length: 288 }, (_, i) => Math.max(0, 100 * Math.sin(((i - 72) / 144) * Math.PI)));
const chargingA = pvW.map((watts) => watts / 13 - 2);
const witnesses = { chargeShare: null, pvW, bankV: null };

test("current that rises with the sun charges above 0, and below 0 where it falls with it", () => {
  expect(flowSign(undefined, chargingA, witnesses)).toMatchObject({ sign: "chargingPositive" });
  const turned = chargingA.map((amperes) => -amperes);
  const found = flowSign(undefined, turned, witnesses);
  expect(found?.sign).toBe("chargingNegative");
  expect(found?.findings.map(({ message }) => message)).toEqual([expect.stringMatching("is written below 0")]);
});

test("the mapping has the last word, and is doubted where the log goes the other way", () => {
  const found = flowSign("chargingNegative", chargingA, witnesses);
  expect(found?.sign).toBe("chargingNegative");
  expect(found?.findings).toMatchObject([{ code: "sign-doubtful", proposal: { currentSign: "chargingPositive" } }]);
  expect(flowSign("chargingPositive", chargingA, witnesses)?.findings).toEqual([]);
});

test("current with nothing beside it tells nothing", () => {
  const nothing = { chargeShare: null, pvW: null, bankV: null };
  expect(flowSign(undefined, chargingA, nothing)).toBeNull();
  expect(flowSign("chargingNegative", chargingA, nothing)?.sign).toBe("chargingNegative");
});

test("ampere-hours drawn come out at 0 or above, whichever way they are written", () => {
  expect([...usedAhDrawn(Float64Array.of(0, 2, 5, -0.1)).usedAh]).toEqual([0, 2, 5, 0]);
  const below = usedAhDrawn(Float64Array.of(0, -2, Number.NaN, -5));
  expect([...below.usedAh]).toEqual([0, 2, Number.NaN, 5]);
  expect(below.findings.map(({ code }) => code)).toEqual(["used-negative"]);
});
