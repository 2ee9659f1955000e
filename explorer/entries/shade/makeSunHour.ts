import { createMemo, createSignal } from "solid-js";
import { wrapLongitudeDeg } from "../../../engine/angle.ts";
import type { Sunlight } from "../../../engine/answers/shade/sunlight.ts";
import type { Scenario } from "../../../engine/scenario/scenario.ts";
import { sunTrack } from "../../../engine/sky/sunTrack.ts";
import { compassPoint } from "./skyView.ts";
import { sunPath } from "./sunPath.ts";

const QUARTER_MS = 900_000;

/** The hour for which plan and sky are drawn: where the sun stands then, its ways on each day, and where panels face. */
export function makeSunHour(scenario: () => Scenario, light: () => Sunlight | null) {
  const [wantedMs, setWantedMs] = createSignal<number | null>(null);
  const longitudeDeg = () => wrapLongitudeDeg(scenario().place.longitudeDeg);
  const ruler = createMemo(() => light()?.ruler ?? null, null, {
    equals: (a, b) => a?.zone === b?.zone && a?.startMs === b?.startMs && a?.endMs === b?.endMs,
  });
  const paths = createMemo(() => {
    const { latitudeDeg } = scenario().place;
    return (ruler()?.days ?? []).map((day) => sunPath(latitudeDeg, longitudeDeg(), day.startMs, day.endMs));
  });
  /** Until somebody chooses: the sun's highest on the middle day, at a full quarter of an hour. */
  const usualMs = createMemo(() => {
    const now = light();
    if (now === null) return 0;
    const path = paths()[paths().length >> 1];
    if (path === undefined || path.ms.length === 0) return now.startMs;
    let best = 0;
    path.elevationDeg.forEach((deg, i) => {
      if (deg > path.elevationDeg[best]!) best = i;
    });
    return quarter(path.ms[best]!);
  });
  const ms = () => {
    const now = light();
    const wanted = wantedMs() ?? usualMs();
    return now === null ? wanted : Math.min(now.startMs + now.steps * now.stepMs, Math.max(now.startMs, wanted));
  };
  const sun = createMemo(() => {
    const track = sunTrack(scenario().place.latitudeDeg, longitudeDeg(), Float64Array.of(ms()));
    return { azimuthDeg: track.azimuthDeg[0]!, elevationDeg: track.elevationDeg[0]! };
  });
  return {
    ms,
    sun,
    paths,
    choose: (wanted: number) => setWantedMs(quarter(wanted)),
    sunWords: () => {
      const { azimuthDeg, elevationDeg } = sun();
      if (elevationDeg <= 0) return "the sun is down";
      return `sun ${Math.round(elevationDeg)}° up in the ${compassPoint(azimuthDeg)}`;
    },
    /** Day of the ruler on which the hour lies. */
    day: () => {
      const days = ruler()?.days ?? [];
      const found = days.findIndex((each) => ms() < each.endMs);
      return found < 0 ? Math.max(0, days.length - 1) : found;
    },
    /** Where a panel group faces at that hour. */
    facing: (id: string) => {
      const now = light();
      const group = now?.groups.find((each) => each.id === id);
      if (now === null || group === undefined) return { tiltDeg: 0, azimuthDeg: 0 };
      const step = Math.min(now.steps - 1, Math.max(0, Math.floor((ms() - now.startMs) / now.stepMs)));
      return { tiltDeg: group.tiltDeg[step]!, azimuthDeg: group.azimuthDeg[step]! };
    },
  };
}

export type SunHour = ReturnType<typeof makeSunHour>;

const quarter = (ms: number) => Math.round(ms / QUARTER_MS) * QUARTER_MS;
