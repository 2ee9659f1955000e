import { readFileSync } from "node:fs";
import { expect, test } from "vitest";
import { cautionsFor, NO_PERMIT } from "../../../engine/checks/index.ts";
import { TOUCH_LIMITS_V } from "../../../engine/checks/touchLimits.ts";
import type { ScenarioInput } from "../../../engine/scenario/scenario.ts";
import { plainInput, readPlain } from "../../truth/run/plainScenario.ts";
import { panelOf, stationOf } from "./oneStation.ts";

const of = (parts: Partial<ScenarioInput>, coldestBankC?: number) =>
  cautionsFor(readPlain(plainInput(parts)), coldestBankC);
const ids = (parts: Partial<ScenarioInput>) => of(parts).map(({ id }) => id);
const wholeDay = [{ from: "00:00", to: "24:00" }];
const generator = {
  kind: "generator" as const,
  id: "set",
  name: "Generator behind the barn",
  continuousW: 900,
  chargerA: 30,
  allowed: wholeDay,
  startShare: 0.3,
  stopShare: 0.9,
  burnIdleLPerH: 0.2,
  burnFullLPerH: 0.6,
  fuelL: 5,
};

test("a bare bank: no permit, fire, its chemistry, its weight", () => {
  expect(ids({})).toEqual(["permit", "fire", "lithium", "lifting"]);
  expect(of({})[0]!.words).toBe(NO_PERMIT);
  expect(ids({ bank: { chemistry: "agm", blockAh: 50, startShare: 1, reserveShare: 0.5 } })).toContain("lead");
});

test("each thing brings its own, with the reason", () => {
  expect(ids({ panels: [panelOf("p")] })).toEqual(expect.arrayContaining(["shock", "roof"]));
  expect(ids({ panels: [panelOf("p", { count: 0 })] })).not.toContain("shock");
  expect(ids({ stations: [stationOf("a")] })).toEqual(expect.arrayContaining(["rf-exposure", "lightning"]));
  const withSet = of({ sources: [generator, { ...generator, id: "second" }] });
  expect(withSet.filter(({ id }) => id === "fumes")).toHaveLength(1);
  expect(withSet.find(({ id }) => id === "fumes")!.why).toBe("Generator behind the barn");
  expect(withSet.map(({ id }) => id)).toContain("mains");
  const van = { kind: "vehicle" as const, id: "van", name: "Van", outputA: 20, running: wholeDay };
  expect(ids({ sources: [van] })).toContain("vehicle");
  expect(ids({ sources: [van] })).not.toContain("mains");
});

test("a string over what may be touched is called what it is, in the wet and in the dry, and cold is named", () => {
  const shock = (inSeries: number) =>
    of({ panels: [panelOf("p", { count: inSeries, inSeries })] }).find(({ id }) => id === "shock")!;
  expect(shock(1).words).not.toMatch(/A string of yours/);
  expect(shock(2).words).toMatch(/44 V: codes allow 60 V DC bare where it is dry, but 30 V where .* wet/);
  expect(shock(2).words).not.toMatch(/can kill/);
  expect(shock(3).words).toMatch(/66 V, above the 60 V DC .* dry, and the 30 V where it is wet: touching it can kill/);
  expect(of({}, -12).find(({ id }) => id === "lithium")!.why).toBe("LFP, -12 °C at its coldest");
});

test("documents state the volts that the caution goes by", () => {
  const { wet, dry } = TOUCH_LIMITS_V;
  expect(readFileSync("README.md", "utf8")).toContain(
    `the ${wet} V DC that may be touched where it is wet, and the ${dry} V where it is dry`,
  );
  expect(readFileSync("docs/model.md", "utf8")).toContain(
    `${dry} V DC where it is dry and ${wet} V DC where ground, skin or plugs are wet`,
  );
});
