import { describe, expect, test } from "vitest";
import { mountTrack } from "../../../engine/array/mountTrack.ts";
import { gridAt } from "./oneGroup.ts";

const hours = (from: number, to: number) => Array.from({ length: to - from }, (_, h) => (from + h) * 60 + 30);

/** A sun that climbs 10° an hour from six to noon and sinks till six, moving 15° an hour through south. */
function sunOver(grid: ReturnType<typeof gridAt>) {
  return {
    elevationDeg: grid.localMinute.map((minute) => 60 - Math.abs(minute - 720) / 6),
    azimuthDeg: grid.localMinute.map((minute) => 180 + (minute - 720) / 4),
  };
}

function facingAt(mount: Parameters<typeof mountTrack>[0], grid: ReturnType<typeof gridAt>) {
  const { facings, facingAt } = mountTrack(mount, grid, sunOver(grid));
  return Array.from(facingAt, (facing) => facings[facing]!);
}

const twoDays = gridAt([...hours(0, 24), ...hours(0, 24)], 60);

test("a flat group is level and keeps its heading, a fixed one its angles", () => {
  expect(facingAt({ kind: "flat", headingDeg: 40 }, twoDays)[30]).toEqual({ tiltDeg: 0, azimuthDeg: 40 });
  expect(facingAt({ kind: "fixed", tiltDeg: 33, azimuthDeg: 170 }, twoDays)[30]).toEqual({
    tiltDeg: 33,
    azimuthDeg: 170,
  });
});

describe("aims with angles", () => {
  const mount = {
    kind: "aimed" as const,
    aims: [
      { at: "08:00", tiltDeg: 50, azimuthDeg: 110 },
      { at: "14:00", tiltDeg: 40, azimuthDeg: 240 },
    ],
  };
  const azimuths = facingAt(mount, twoDays).map((facing) => facing.azimuthDeg);

  test("hold from their time until the next, the last one over night", () => {
    expect(azimuths[7]).toBe(240); // before the event's first aim the last one is taken to hold
    expect(azimuths[8]).toBe(110);
    expect(azimuths[13]).toBe(110);
    expect(azimuths[14]).toBe(240);
    expect(azimuths[24 + 7]).toBe(240);
    expect(azimuths[24 + 8]).toBe(110);
  });
});

describe("aims without angles", () => {
  const mount = { kind: "aimed" as const, aims: [{ at: "05:00" }, { at: "10:00" }, { at: "15:00" }] };
  const facings = facingAt(mount, twoDays);

  test("face the sun's place half-way from the aim (or sunrise) to the next aim (or sunset)", () => {
    expect(facings[8]).toEqual({ tiltDeg: expect.closeTo(90 - 20), azimuthDeg: expect.closeTo(120) }); // 06–10: 08:00
    expect(facings[12]).toEqual({ tiltDeg: expect.closeTo(90 - 55), azimuthDeg: expect.closeTo(187.5) }); // 10–15: 12:30
    expect(facings[16]).toEqual({ tiltDeg: expect.closeTo(90 - 15), azimuthDeg: expect.closeTo(247.5) }); // 15–18: 16:30
  });

  test("where the sun does not set, the day's last aim counts to midnight", () => {
    const polar = { ...sunOver(twoDays), elevationDeg: twoDays.localMinute.map(() => 20) };
    const evening = { kind: "aimed" as const, aims: [{ at: "06:00" }, { at: "18:00" }] };
    const track = mountTrack(evening, twoDays, polar);
    expect(track.facings[track.facingAt[20]!]).toEqual({ tiltDeg: 70, azimuthDeg: expect.closeTo(315) }); // 18–24: 21:00
  });

  test("a day cut short takes the aim of the nearest day that has the whole period", () => {
    const fromNoon = gridAt([...hours(12, 24), ...hours(0, 24), ...hours(0, 12)], 60);
    const cut = facingAt(mount, fromNoon);
    expect(cut[0]).toEqual({ tiltDeg: expect.closeTo(35), azimuthDeg: expect.closeTo(187.5) });
    expect(cut.at(-1)).toEqual({ tiltDeg: expect.closeTo(35), azimuthDeg: expect.closeTo(187.5) });
  });

  test("an event that has no whole period aims by what it has", () => {
    const afternoon = gridAt(hours(12, 15), 60);
    expect(facingAt(mount, afternoon)[0]!.azimuthDeg).toBeCloseTo(180 + 90 / 4);
  });

  test("lie level while the sun is never up in their period", () => {
    const night = facingAt({ kind: "aimed", aims: [{ at: "12:00" }, { at: "20:00" }] }, twoDays);
    expect(night[21]).toEqual({ tiltDeg: 0, azimuthDeg: 0 });
  });

  test("before the day's first aim yesterday's last still holds", () => {
    const sun = sunOver(twoDays);
    for (let i = 24; i < 48; i++) sun.azimuthDeg[i]! += 5; // the second day's sun is elsewhere
    const { facings, facingAt } = mountTrack(mount, twoDays, sun);
    expect(facings[facingAt[24 + 3]!]!.azimuthDeg).toBeCloseTo(247.5);
    expect(facings[facingAt[24 + 16]!]!.azimuthDeg).toBeCloseTo(252.5);
  });

  test("south of the tropics the sun runs the other way over north", () => {
    const grid = gridAt([690, 750], 60);
    const sun = { elevationDeg: Float64Array.of(30, 30), azimuthDeg: Float64Array.of(10, 350) };
    const { facings } = mountTrack({ kind: "aimed", aims: [{ at: "10:00" }] }, grid, sun);
    expect(facings[0]!.azimuthDeg % 360).toBeCloseTo(0);
  });

  test("a sun that crosses north between two steps is met at north", () => {
    const grid = gridAt([690, 750], 60);
    const sun = { elevationDeg: Float64Array.of(30, 30), azimuthDeg: Float64Array.of(350, 10) };
    const { facings } = mountTrack({ kind: "aimed", aims: [{ at: "10:00" }] }, grid, sun);
    expect(facings[0]!.azimuthDeg % 360).toBeCloseTo(0);
  });
});
