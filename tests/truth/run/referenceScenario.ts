import { readFileSync } from "node:fs";
import type { ScenarioInput } from "../../../engine/scenario/scenario.ts";

/** One obstacle of the reference: bearing and distance from the site's origin. */
interface ReferenceTree {
  bearing: number;
  distance: number;
  height: number;
  crownRadius: number;
  trunkRadius: number;
}

/** One scenario of `tests/truth/data/end-to-end.json`. */
export interface ReferenceScenario {
  id: string;
  inputs: {
    baseLoadA: number;
    busV: number;
    batteryWh: number;
    etaPv: number;
    etaCharge: number;
    etaDischarge: number;
    minSoc: number;
    startSoc: number;
    gamma: number;
    wind: number;
    albedo: number;
    lat: number;
    lon: number;
    altM: number;
    utcOffsetH: number;
    startLocal: string;
    days: number;
    linkeTurbidity: number;
    airMean: number;
    airAmp: number;
    panels: {
      name: string;
      count: number;
      pStc: number;
      tilt: number;
      azimuth: number;
      rect: { centre: [number, number, number]; width: number; length: number };
    }[];
    transmit: [from: number, to: number, extraA: number, duty: number][];
    obstacles?: ReferenceTree[];
  };
  daily: {
    pvBusWh: number[];
    loadWh: number[];
    ghiWh: number[];
    dniWh: number[];
    dhiWh: number[];
    unservedWh: number[];
    curtailedBusWh: number[];
  };
  hourlyPvBusW: number[];
  socAtHour: number[];
  minSoc: number;
  endSoc: number;
}

export const references = (
  JSON.parse(readFileSync(new URL("../data/end-to-end.json", import.meta.url), "utf8")) as {
    scenarios: ReferenceScenario[];
  }
).scenarios;

const clock = (hour: number) =>
  `${String(Math.floor(hour)).padStart(2, "0")}:${String(Math.round((hour % 1) * 60)).padStart(2, "0")}`;

function plusDays(local: string, days: number): string {
  return new Date(Date.parse(`${local}Z`) + days * 86_400_000).toISOString().slice(0, 16);
}

/** Solar hour that a clock with a fixed offset shows at 15:00, with the equation of time in minutes. */
function warmestSolarHour(inputs: ReferenceScenario["inputs"], equationOfTimeMin: number): number {
  return 15 - inputs.utcOffsetH + inputs.lon / 15 + equationOfTimeMin / 60;
}

/**
 * Writes a reference scenario in our format. The reference has no battery voltages, so the bank is one whose voltage stands
 * still and whose resistance is nothing: counting ampere-hours at a fixed voltage is then the same as the reference's
 * counting of watt-hours, with both of its efficiencies in the coulombic one and the discharge side in the size.
 * A bank that may not fall below a share of its charge is one of the rest of its size.
 */
export function fromReference(
  { id, inputs }: ReferenceScenario,
  stepMinutes: 1 | 5 | 10 | 15 | 60,
  equationOfTimeMin: number,
): ScenarioInput {
  const usable = 1 - inputs.minSoc;
  return {
    format: "duskline-scenario",
    version: 1,
    name: id,
    place: {
      name: id,
      latitudeDeg: inputs.lat,
      longitudeDeg: inputs.lon,
      elevationM: inputs.altM,
      zone: `Etc/GMT-${inputs.utcOffsetH}`,
    },
    time: { start: inputs.startLocal, end: plusDays(inputs.startLocal, inputs.days), stepMinutes },
    weather: {
      kind: "clear",
      linkeTurbidity: inputs.linkeTurbidity,
      windMs: inputs.wind,
      air: {
        maxC: inputs.airMean + inputs.airAmp,
        minC: inputs.airMean - inputs.airAmp,
        warmestSolarHour: warmestSolarHour(inputs, equationOfTimeMin),
      },
    },
    models: { incidence: "ashrae", diffuseShade: "none", albedoShare: inputs.albedo },
    gear: [
      { id: "base", name: "base", working: { drawA: inputs.baseLoadA, atV: inputs.busV }, use: { when: "always" } },
      ...inputs.transmit.map(([from, to, extraA, duty], k) => ({
        id: `transmit-${k}`,
        name: "transmit",
        working: { drawA: extraA, atV: inputs.busV },
        use: { when: "byTheClock" as const, share: duty, windows: [{ from: clock(from), to: clock(to) }] },
      })),
    ],
    // Several modules of one name share one rectangle in the reference: one large module here, losing by lit area.
    panels: inputs.panels.map((panel) => ({
      id: panel.name,
      name: panel.name,
      count: 1,
      module: {
        ratedW: panel.count * panel.pStc,
        powerTempCoeffPerK: inputs.gamma,
        lengthM: panel.rect.length,
        widthM: panel.rect.width,
        wiring: "area" as const,
      },
      mount:
        panel.tilt === 0
          ? { kind: "flat" as const, headingDeg: 0 }
          : { kind: "fixed" as const, tiltDeg: panel.tilt, azimuthDeg: panel.azimuth },
      at: { eastM: panel.rect.centre[0], northM: panel.rect.centre[1], heightM: panel.rect.centre[2] },
      cooling: "openRack" as const,
      losses: [],
      controller: { efficiencyShare: inputs.etaPv, ownDrawW: 0, stepDownOnly: false, cable: { mm2: 240, oneWayM: 0 } },
    })),
    obstacles: (inputs.obstacles ?? []).map((tree, k) => ({
      kind: "tree" as const,
      id: `tree-${k}`,
      eastM: tree.distance * Math.sin((tree.bearing * Math.PI) / 180),
      northM: tree.distance * Math.cos((tree.bearing * Math.PI) / 180),
      heightM: tree.height,
      crownBaseM: tree.height - 2 * tree.crownRadius,
      crownRadiusM: tree.crownRadius,
      trunkRadiusM: tree.trunkRadius,
      transmittanceInLeafShare: 0,
      leafShare: 1,
    })),
    bank: {
      chemistry: "lfp",
      blockAh: (inputs.batteryWh * usable * inputs.etaDischarge) / inputs.busV,
      startShare: (inputs.startSoc - inputs.minSoc) / usable,
      reserveShare: 0,
      openCircuitCurve: [
        { share: 0, cellV: inputs.busV / 4 },
        { share: 1, cellV: inputs.busV / 4 },
      ],
      coulombicEfficiencyShare: inputs.etaCharge * inputs.etaDischarge,
      internalResistanceOhm: 0,
      chargingResistanceOhm: 0,
      maxChargeA: 5000,
      maxDischargeA: 5000,
      acceptancePerH: 1000,
      absorptionV: 60,
      disconnectV: 0,
      reconnectV: 0,
      coldChargeLockC: null,
      temperature: 25,
    },
  };
}
