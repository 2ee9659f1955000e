import { readFileSync } from "node:fs";
import { expect, test } from "vitest";
import { checkedScenario } from "../../../engine/scenario/checkedScenario.ts";
import { PanelGroup } from "../../../engine/scenario/panelGroup.ts";
import { readScenario, readVariant } from "../../../engine/scenario/readScenario.ts";
import { withZone, zoneAt } from "../../../engine/scenario/withZone.ts";
import { zoneOf } from "../../../engine/scenario/zoneOf.ts";

const TEXT = readFileSync("scenarios/walnut-grove.json", "utf8");

function read(document: unknown) {
  const result = readScenario(document);
  if (!result.ok) throw new Error(result.problems.map((problem) => problem.message).join("\n"));
  return result.scenario;
}

test("text and value read alike, and reading changes nothing", () => {
  const value = JSON.parse(TEXT) as unknown;
  const before = structuredClone(value);
  expect(read(TEXT)).toEqual(read(value));
  expect(value).toEqual(before);
});

test("what has been read reads again to the same", () => {
  for (const name of ["walnut-grove", "peat-moor", "polar-hut"]) {
    const once = read(readFileSync(`scenarios/${name}.json`, "utf8"));
    expect(read(JSON.parse(JSON.stringify(once)))).toEqual(once);
  }
});

test("what is left out is filled in", () => {
  const { weather, models, selector, bank, sources, stations } = read(TEXT);
  expect(weather).toEqual({ kind: "typical", windMs: 1 }); // how clear the air is goes by place, season and height
  expect(models).toMatchObject({ transposition: "hayDavies", albedoShare: 0.2 });
  expect(selector).toEqual({ mode: "both" });
  expect(bank).toMatchObject({ inSeries: 1, inParallel: 1 });
  expect(sources).toEqual([]);
  expect(stations[2]).toMatchObject({ whenUnstaffed: "off", radio: { minimumV: 11.73 }, companions: [] });
});

test("a module's gaps are filled from what its sheet does say", () => {
  const module = (sheet: object) =>
    PanelGroup.parse({
      id: "a",
      name: "a",
      count: 1,
      module: sheet,
      mount: { kind: "flat" },
      at: { eastM: 0, northM: 0, heightM: 1 },
    }).module;
  // Arithmetic by hand, from the rules that docs/scenario-format.md states.
  expect(module({ ratedW: 100 })).toMatchObject({ cells: 36, vmpV: 18, bypassSections: 2 });
  expect(module({ ratedW: 100 }).impA).toBeCloseTo(100 / 18, 12);
  expect(module({ ratedW: 400 })).toMatchObject({ cells: 60, vmpV: 30, bypassSections: 3 });
  expect(module({ ratedW: 100, impA: 5 }).vmpV).toBe(20);
  expect(module({ ratedW: 100, vmpV: 20 }).impA).toBe(5);
  expect(module({ ratedW: 100, vmpV: 20 }).vocV).toBeCloseTo(24.4, 12);
  expect(module({ ratedW: 190 })).toMatchObject({
    lengthM: expect.closeTo(Math.SQRT2, 9),
    widthM: expect.closeTo(Math.SQRT1_2, 9),
  });
  expect(module({ ratedW: 190, lengthM: 1.6 }).widthM).toBeCloseTo(0.625, 12);
});

test("a variant is the scenario with its changes, and carries both names", () => {
  const result = readVariant(TEXT, "two-blocks");
  expect(result).toMatchObject({
    ok: true,
    scenario: { name: "Autumn weekend in the walnut grove, a second block", bank: { inParallel: 2 }, variants: [] },
  });
});

test("a zone that is left out is looked up from the position", () => {
  expect(zoneAt(46.93, 15.62)).toBe("Europe/Vienna");
  expect(zoneAt(39.74, 360 - 104.99)).toBe("America/Denver");
  expect(zoneAt(-18.1, 178.4 - 360)).toBe("Pacific/Fiji");
  const { zone, ...place } = JSON.parse(TEXT).place as { zone: string; latitudeDeg: number; longitudeDeg: number };
  const zoneAs = (written: object) => {
    const read = readScenario({ ...JSON.parse(TEXT), place: { ...place, ...written } });
    return read.ok ? zoneOf(read.scenario.place) : read.problems;
  };
  expect(zoneAs({})).toBe(zone);
  expect(zoneAs({ latitudeDeg: 60, longitudeDeg: 10 })).toBe("Europe/Oslo");
  expect(zoneAs({ zone: "Asia/Tokyo" })).toBe("Asia/Tokyo");
  // What is no position is told as what it is, and no zone is made up for it.
  for (const wrong of [{ latitudeDeg: 91 }, { longitudeDeg: "15" }, { latitudeDeg: null }, { zone: null }]) {
    expect(zoneAs(wrong)).toMatchObject([{ path: ["place", Object.keys(wrong)[0]] }]);
  }
  for (const nothing of [null, undefined, 7, "x", [], {}, { place: null }, { place: 3 }]) {
    expect(withZone(nothing)).toBe(nothing);
  }
  expect(checkedScenario({ ...JSON.parse(TEXT), place })).toMatchObject({
    ok: false,
    problems: [{ code: "no-zone", path: ["place", "zone"] }],
  });
});
