import { type ClockWindow, windowShare } from "../scenario/clockWindow.ts";
import { drawnW } from "../scenario/draw.ts";
import type { Gear } from "../scenario/gear.ts";
import { presentShare } from "../scenario/presence.ts";
import type { Station } from "../scenario/station.ts";
import type { TimeGrid } from "../scenario/timeGrid.ts";
import type { DeviceLoad } from "./deviceLoad.ts";
import { type PreparedStation, peakTogetherW, prepareStation, shareTheAir } from "./prepareStation.ts";

/** All loads on the step grid; arrays have one value per step. */
export interface PreparedLoads {
  readonly devices: readonly DeviceLoad[];
  readonly stations: readonly PreparedStation[];
  /** Everything that is wanted, with stations sending their mean share. */
  readonly wantedW: Float64Array;
  /** The same with every station silent: what flows between transmissions. */
  readonly quietW: Float64Array;
}

/** Id of the pad in the battery box among the devices; no gear can have it, for a slash is in no id. */
const HEATER_ID = "bank/heater";

/**
 * Lays the gear and the stations out on the step grid.
 * @param dark share of each step with the sun down, for things that work after dark
 * @param heaterW what a pad in the battery box draws, W per step; null without one
 */
export function prepareLoads(
  gear: readonly Gear[],
  stations: readonly Station[],
  grid: TimeGrid,
  dark: Float64Array,
  heaterW: Float64Array | null,
): PreparedLoads {
  const prepared = stations.map((station) => prepareStation(station, grid));
  shareTheAir(stations, prepared);
  peakTogetherW(stations, prepared);
  const staffedAnywhere = new Float64Array(grid.steps);
  for (const station of prepared) {
    for (let i = 0; i < grid.steps; i++) staffedAnywhere[i] = Math.max(staffedAnywhere[i]!, station.staffedShare[i]!);
  }
  const staffedAt = (id: string | undefined) =>
    id === undefined ? staffedAnywhere : prepared[stations.findIndex((station) => station.id === id)]!.staffedShare;
  const devices = [
    ...gear.map((thing) => gearLoad(thing, grid, dark, staffedAt(thing.use.station))),
    ...prepared.flatMap((station) => station.devices),
    ...(heaterW === null
      ? []
      : [
          {
            id: HEATER_ID,
            name: "Heating pad in the battery box",
            alwaysW: heaterW,
            usedW: new Float64Array(grid.steps),
          },
        ]),
  ];
  const wantedW = new Float64Array(grid.steps);
  const sendingW = new Float64Array(grid.steps);
  for (const device of devices) {
    for (let i = 0; i < grid.steps; i++) wantedW[i]! += device.alwaysW[i]! + device.usedW[i]!;
  }
  for (const station of prepared) {
    for (let i = 0; i < grid.steps; i++) sendingW[i]! += station.sendingShare[i]! * station.sendingExtraW;
  }
  const quietW = wantedW.map((wanted, i) => Math.max(0, wanted - sendingW[i]!));
  return { devices, stations: prepared, wantedW, quietW };
}

function activeShare(thing: Gear, grid: TimeGrid, dark: Float64Array, staffed: Float64Array): Float64Array {
  switch (thing.use.when) {
    case "always":
      return new Float64Array(grid.steps).fill(1);
    case "byTheClock":
      return windowShare(grid, thing.use.windows as readonly ClockWindow[]);
    case "afterDark":
      return dark;
    case "whenStaffed":
      return staffed;
  }
}

function gearLoad(thing: Gear, grid: TimeGrid, dark: Float64Array, staffed: Float64Array): DeviceLoad {
  const active = activeShare(thing, grid, dark, staffed);
  const idleW = drawnW(thing.idle) * thing.count;
  const extraW = (drawnW(thing.working) * thing.count - idleW) * thing.use.share;
  // A fridge or a router works by itself: nobody's presence decides it, so all of it counts as always on.
  const byItself = thing.use.when === "always";
  const there = presentShare(grid, thing);
  const alwaysW = (there ?? new Float64Array(grid.steps).fill(1)).map(
    (share) => share * (byItself ? idleW + extraW : idleW),
  );
  const usedW = byItself
    ? new Float64Array(grid.steps)
    : active.map((share, i) => Math.min(share, there === null ? 1 : there[i]!) * extraW);
  return { id: thing.id, name: thing.name, alwaysW, usedW };
}
