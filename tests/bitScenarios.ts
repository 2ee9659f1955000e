import { readWeatherFile } from "../engine/place/readWeatherFile.ts";
import type { Surroundings } from "../engine/run/surroundings.ts";
import { applyChanges } from "../engine/scenario/applyChanges.ts";
import type { Change } from "../engine/scenario/change.ts";
import { readScenario, readVariant } from "../engine/scenario/readScenario.ts";
import type { Scenario, ScenarioInput } from "../engine/scenario/scenario.ts";
import peatMoor from "../scenarios/peat-moor.json";
import polarHut from "../scenarios/polar-hut.json";
import walnutGrove from "../scenarios/walnut-grove.json";

/** A scenario in which some part of the engine is at work that others leave out. */
export interface BitScenario {
  readonly name: string;
  readonly scenario: Scenario;
  readonly surroundings: Surroundings;
}

const AREA_MODULE = { ratedW: 100, wiring: "area" };

/** Ways through the engine: wiring, controllers, chemistries, sources, sky models, aims, converter, weather from a file. */
const WAYS: readonly {
  readonly name: string;
  readonly document: unknown;
  readonly variant?: string;
  readonly changes?: Change[];
}[] = [
  { name: "series wiring under trees, drawn weather", document: walnutGrove },
  { name: "two groups, one moved", document: walnutGrove, variant: "meadow" },
  { name: "lead, PWM, aims", document: peatMoor },
  { name: "generator and selector", document: polarHut },
  { name: "generator without selector, cold bank", document: polarHut, variant: "cold-box" },
  {
    name: "area wiring, Perez, other published forms",
    document: walnutGrove,
    changes: [
      { at: "panels.roof.module", to: AREA_MODULE },
      { at: "panels.roof.mount", to: { kind: "fixed", tiltDeg: 25, azimuthDeg: 160 } }, // a flat panel sees no horizon
      {
        at: "models",
        to: { transposition: "perez", incidence: "ashrae", cellTemperature: "sandia", sectionRule: "mildShade" },
      },
      { at: "panels.roof.controller.maxChargeA", to: 8 },
    ],
  },
  {
    name: "24 V behind a converter, known days, unsure figures",
    document: walnutGrove,
    changes: [
      {
        at: "bank",
        to: {
          chemistry: "flooded",
          nominalV: 24,
          inSeries: 2,
          blockAh: 130,
          startShare: 0.8,
          reserveShare: 0.4,
          temperature: "air",
        },
      },
      { at: "converter", to: { efficiencyShare: 0.87, outputV: 13.4 } },
      { at: "sureness", to: { idleDraw: "guess", canopy: "guess", bankHealth: "guess" } },
      { at: "models", to: { transposition: "isotropic" } },
    ],
  },
  {
    name: "weather from a file",
    document: walnutGrove,
    changes: [{ at: "weather", to: { kind: "file", file: "made.csv" } }],
  },
];

/** Every way, read and ready. @throws Error saying which does not read */
export function bitScenarios(climate: Surroundings["climate"]): BitScenario[] {
  return WAYS.map(({ name, document, variant, changes = [] }) => {
    const changed = applyChanges(document as ScenarioInput, changes);
    if (!changed.ok) throw new Error(`${name}: ${changed.problems[0]!.message}`);
    const text = JSON.stringify(changed.document);
    const read = variant === undefined ? readScenario(text) : readVariant(text, variant);
    if (!read.ok) throw new Error(`${name}: ${read.problems[0]!.message}`);
    const isFile = read.scenario.weather.kind === "file";
    const surroundings = {
      ...(climate === undefined ? {} : { climate }),
      ...(isFile ? { weatherFile: madeWeather() } : {}),
    };
    return { name, scenario: read.scenario, surroundings };
  });
}

/** Invented autumn days, an hour a line, from whole numbers alone. */
function madeWeather() {
  const lines = ["# latitude: 46.9", "# longitude: 15.6", "# elevation: 310", "# utcOffset: 1", "time,ghi,temp_c"];
  for (let day = 0; day < 91; day++) {
    const date = new Date(Date.UTC(2025, 8, 1 + day)).toISOString().slice(0, 10);
    const cloud = (day * 37) % 11; // tenths, in no order
    for (let hour = 0; hour < 24; hour++) {
      const sun = Math.max(0, (hour - 5) * (20 - hour));
      const clock = `${String(hour).padStart(2, "0")}:00`;
      lines.push(`${date}T${clock},${Math.floor((sun * (160 - 11 * cloud)) / 10)},${10 + ((hour * 5 + day) % 13)}`);
    }
  }
  const read = readWeatherFile(lines.join("\n"), "made.csv");
  if (!read.ok) throw new Error(read.problems[0]!.message);
  return read.file;
}
