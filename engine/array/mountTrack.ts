import { clockMinute } from "../scenario/clockTime.ts";
import type { PanelGroup } from "../scenario/panelGroup.ts";
import type { TimeGrid } from "../scenario/timeGrid.ts";
import type { SunTrack } from "../sky/sunTrack.ts";

/** A way of facing. */
export interface Facing {
  readonly tiltDeg: number;
  readonly azimuthDeg: number;
}

/** The few ways a group faces in turn, and which of them holds at each step. */
export interface MountTrack {
  readonly facings: readonly Facing[];
  /** Index into `facings`, one per step. */
  readonly facingAt: Int32Array;
}

/**
 * Where a group faces at each step. An aim holds until the next; the day's last holds until the next day's first. An
 * aim without angles faces the place the sun has in the middle of its period: from the aim (or sunrise) to the next
 * aim (or sunset). A period that the event cuts short takes the aim of the nearest day that has the whole of it, as
 * somebody who knows the sun's path would.
 */
export function mountTrack(mount: PanelGroup["mount"], grid: TimeGrid, sun: SunTrack): MountTrack {
  const facingAt = new Int32Array(grid.steps);
  if (mount.kind === "flat") return { facings: [{ tiltDeg: 0, azimuthDeg: mount.headingDeg }], facingAt };
  if (mount.kind === "fixed") {
    return { facings: [{ tiltDeg: mount.tiltDeg, azimuthDeg: mount.azimuthDeg }], facingAt };
  }
  const minutes = mount.aims.map((aim) => clockMinute(aim.at));
  const slots = minutes.length;
  const days = grid.steps === 0 ? 0 : grid.localDay[grid.steps - 1]! + 1;
  const facings: Facing[] = [];
  const facingOf = new Int32Array(days * slots);
  for (let slot = 0; slot < slots; slot++) {
    const { tiltDeg, azimuthDeg } = mount.aims[slot]!;
    if (tiltDeg !== undefined && azimuthDeg !== undefined) {
      facings.push({ tiltDeg, azimuthDeg });
      for (let day = 0; day < days; day++) facingOf[day * slots + slot] = facings.length - 1;
      continue;
    }
    const fromMinute = minutes[slot]!;
    const toMinute = minutes[slot + 1] ?? 1440;
    const aimed = Array.from({ length: days }, (_, day) => midPeriodFacing(grid, sun, day, fromMinute, toMinute));
    for (let day = 0; day < days; day++) {
      facings.push(nearestWhole(aimed, day));
      facingOf[day * slots + slot] = facings.length - 1;
    }
  }
  for (let i = 0; i < grid.steps; i++) {
    let day = grid.localDay[i]!;
    let slot = slots - 1;
    while (slot >= 0 && minutes[slot]! > grid.localMinute[i]!) slot--;
    if (slot < 0) {
      // Before the day's first aim yesterday's last still holds; before the event it is taken as that of the first day.
      slot = slots - 1;
      day = Math.max(0, day - 1);
    }
    facingAt[i] = facingOf[day * slots + slot]!;
  }
  return { facings, facingAt };
}

interface PeriodFacing extends Facing {
  /** Share of the period that the event covers. */
  readonly coveredShare: number;
}

/** @returns null when the sun is not up in the part of the period that the event covers */
function midPeriodFacing(
  grid: TimeGrid,
  sun: SunTrack,
  day: number,
  fromMinute: number,
  toMinute: number,
): PeriodFacing | null {
  let covered = 0;
  let first = -1;
  let last = -1;
  for (let i = 0; i < grid.steps; i++) {
    if (grid.localDay[i] !== day) continue;
    const minute = grid.localMinute[i]!;
    if (minute < fromMinute || minute >= toMinute) continue;
    covered++;
    if (!(sun.elevationDeg[i]! > 0)) continue;
    if (first < 0) first = i;
    last = i;
  }
  if (first < 0) return null;
  const low = (first + last) >> 1;
  const high = (first + last + 1) >> 1;
  // The two middle steps may lie on either side of north.
  const turnDeg = ((sun.azimuthDeg[high]! - sun.azimuthDeg[low]! + 540) % 360) - 180;
  return {
    tiltDeg: 90 - (sun.elevationDeg[low]! + sun.elevationDeg[high]!) / 2,
    azimuthDeg: (sun.azimuthDeg[low]! + turnDeg / 2 + 360) % 360,
    coveredShare: (covered * grid.stepMs) / 60_000 / (toMinute - fromMinute),
  };
}

/** The aim of the nearest day that covers nearly as much of the period as any; level when the sun is never up in it. */
function nearestWhole(aimed: readonly (PeriodFacing | null)[], day: number): Facing {
  const most = Math.max(0, ...aimed.map((facing) => facing?.coveredShare ?? 0));
  let best: Facing = { tiltDeg: 0, azimuthDeg: 0 };
  let bestAway = Number.POSITIVE_INFINITY;
  for (const [other, facing] of aimed.entries()) {
    if (facing === null || facing.coveredShare < most - 0.1) continue;
    const away = Math.abs(other - day);
    if (away < bestAway) {
      best = { tiltDeg: facing.tiltDeg, azimuthDeg: facing.azimuthDeg };
      bestAway = away;
    }
  }
  return best;
}
