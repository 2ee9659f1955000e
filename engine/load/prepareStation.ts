import { windowShare } from "../scenario/clockWindow.ts";
import { drawnW } from "../scenario/draw.ts";
import { presentShare } from "../scenario/presence.ts";
import type { Station } from "../scenario/station.ts";
import type { TimeGrid } from "../scenario/timeGrid.ts";
import type { DeviceLoad } from "./deviceLoad.ts";
import { transmitDrawOf } from "./transmitDrawOf.ts";

/** A station on the step grid; arrays have one value per step. */
export interface PreparedStation {
  readonly id: string;
  readonly name: string;
  /** Share of the step during which somebody is at it. */
  readonly staffedShare: Float64Array;
  /** Share of the step spent sending, after interlocks. */
  readonly sendingShare: Float64Array;
  /** Watts on top of receiving while it sends, averaged over its modes and with what works only while sending. */
  readonly sendingExtraW: number;
  /** Watts on top of receiving at the peak of what it sends. */
  readonly peakExtraW: number;
  /** Amperes in its own feed at that peak. */
  readonly peakA: number;
  /** Peak watts on top of receiving of all stations that may send together with it, itself included; 0 while unstaffed. */
  readonly peakTogetherW: Float64Array;
  readonly minimumV: number;
  /** The radio while it listens, and what sending adds to that. */
  readonly receiving: DeviceLoad;
  readonly sending: DeviceLoad;
  /** What works only while it sends, the radio's sending included. */
  readonly whileSending: readonly DeviceLoad[];
  /** All that is at the station. */
  readonly devices: readonly DeviceLoad[];
}

/** Hour of the clock, 0…23; the middle of a step may lie past the midnight that ends its day. */
const hourOf = (minute: number) => ((Math.floor(minute / 60) % 24) + 24) % 24;

export function prepareStation(station: Station, grid: TimeGrid): PreparedStation {
  const { radio } = station;
  const draw = transmitDrawOf(station);
  const { receiveW } = draw;
  let fullSending = 0;
  let weightedExtraW = 0;
  for (const entry of station.modes) {
    const share = entry.share * (entry.sendingShare ?? station.sendingShare);
    fullSending += share;
    weightedExtraW += share * (draw.sendingW(entry.mode) - receiveW);
  }
  const there = presentShare(grid, station);
  const isThere = (i: number) => (there === null ? 1 : there[i]!);
  const staffedShare = windowShare(grid, station.staffed).map((staffed, i) => Math.min(staffed, isThere(i)));
  const sendingShare = staffedShare.map(
    (staffed, i) => staffed * fullSending * station.activityByHour[hourOf(grid.localMinute[i]!)]!,
  );
  const radioExtraW = fullSending === 0 ? 0 : weightedExtraW / fullSending;
  const companions = station.companions.map((companion) => {
    const idleW = drawnW(companion.idle) * companion.count;
    return { ...companion, idleW, extraW: drawnW(companion.working) * companion.count - idleW };
  });
  const keyed = companions.filter((companion) => companion.works === "sending");
  const sendingExtraW = radioExtraW + keyed.reduce((sum, companion) => sum + companion.extraW, 0);
  const restW = station.whenUnstaffed === "receive" ? receiveW : 0;
  const atV = radio.fullPower.atV ?? 13.8;
  const filled = (watts: number) => new Float64Array(grid.steps).map((_, i) => watts * isThere(i));
  // The sending arrays are filled in by `shareTheAir`, once the interlocks are known.
  const receiving: DeviceLoad = {
    id: `${station.id}/receive`,
    name: `${station.name}: radio, receiving`,
    alwaysW: filled(restW),
    usedW: staffedShare.map((staffed) => staffed * (receiveW - restW)),
  };
  const sending: DeviceLoad = {
    id: `${station.id}/send`,
    name: `${station.name}: radio, sending`,
    alwaysW: filled(0),
    usedW: sendingShare.map((share) => share * radioExtraW),
  };
  const beside = companions.map((companion) => {
    const active = companion.works === "sending" ? sendingShare : staffedShare;
    const load: DeviceLoad = {
      id: `${station.id}/${companion.id}`,
      name: `${station.name}: ${companion.name}`,
      alwaysW: filled(companion.idleW),
      usedW: active.map((share) => share * companion.extraW),
    };
    return { load, works: companion.works };
  });
  return {
    id: station.id,
    name: station.name,
    staffedShare,
    sendingShare,
    sendingExtraW,
    peakExtraW: draw.peakW - receiveW + keyed.reduce((sum, companion) => sum + companion.extraW, 0),
    peakA: draw.peakW / atV,
    peakTogetherW: new Float64Array(grid.steps),
    minimumV: radio.minimumV,
    receiving,
    sending,
    whileSending: [sending, ...beside.flatMap(({ load, works }) => (works === "sending" ? [load] : []))],
    devices: [receiving, sending, ...beside.map(({ load }) => load)],
  };
}

function interlockGroups(stations: readonly Station[]): number[][] {
  const groups = new Map<string, number[]>();
  stations.forEach((station, s) => {
    const name = station.interlock === undefined ? `/${s}` : station.interlock;
    groups.set(name, [...(groups.get(name) ?? []), s]);
  });
  return [...groups.values()];
}

/**
 * Stations in one interlock group never send at once, so their shares of the clock may not add up to more than one:
 * where they do, each waits in proportion. Changes the prepared arrays in place, before anybody else has seen them.
 */
export function shareTheAir(stations: readonly Station[], prepared: readonly PreparedStation[]): void {
  for (const group of interlockGroups(stations)) {
    const steps = prepared[group[0]!]!.sendingShare.length;
    for (let i = 0; i < steps; i++) {
      const sum = group.reduce((total, s) => total + prepared[s]!.sendingShare[i]!, 0);
      if (sum <= 1) continue;
      for (const s of group) {
        const station = prepared[s]!;
        station.sendingShare[i]! /= sum;
        for (const { usedW } of station.whileSending) usedW[i]! /= sum;
      }
    }
  }
}

/** Fills in the peak that a station can meet: its own, and the largest of every other interlock group that is staffed. */
export function peakTogetherW(stations: readonly Station[], prepared: readonly PreparedStation[]): void {
  const groups = interlockGroups(stations);
  prepared.forEach((station, s) => {
    for (let i = 0; i < station.peakTogetherW.length; i++) {
      if (station.staffedShare[i] === 0) continue;
      let sum = station.peakExtraW;
      for (const group of groups) {
        if (group.includes(s)) continue;
        sum += group.reduce(
          (most, other) => Math.max(most, prepared[other]!.staffedShare[i]! > 0 ? prepared[other]!.peakExtraW : 0),
          0,
        );
      }
      station.peakTogetherW[i] = sum;
    }
  });
}
