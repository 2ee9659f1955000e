import type { PanelGroup } from "../scenario/panelGroup.ts";
import type { Scenario } from "../scenario/scenario.ts";
import { ofOneScenario, type Stretch, type TaskKind } from "../task/taskKind.ts";
import { type Place, type PlaceFigure, placeFigures } from "./placeFigure.ts";

/** A panel group of a scenario at one place after another; what other tasks call members are places here. */
export interface SpotsTask extends Stretch {
  readonly scenario: Scenario;
  /** Id of the group. */
  readonly group: string;
  /** `PLACE_SLOTS` numbers for each place: east, north, lead (m); heading (°), NaN where the group stands as it is; tilt (°). */
  readonly places: Float64Array;
  /** Rows of the dome that are looked at, see `placeFigures`. */
  readonly skyRows: number;
}

/** What places `from` to `to` (not included) bring: `FIGURE_SLOTS` numbers for each, as a `PlaceFigure` has them. Plain data. */
export interface SpotsPart {
  readonly from: number;
  readonly to: number;
  readonly figures: Float64Array;
}

const PLACE_SLOTS = 5;
const FIGURE_SLOTS = 3;
/** Places between two pauses, and places that are worth a worker of their own: preparing there takes as long as some twenty. */
const PLACES_AT_ONCE = 10;
const FEWEST_PLACES = 24;

/** Writes places down as they are sent. Of mounts it knows those that lie or are propped up. */
export function writePlaces(places: readonly Place[]): Float64Array {
  return Float64Array.from(
    places.flatMap(({ eastM, northM, leadM, mount }) => {
      const faces = mount === undefined || mount.kind === "aimed" ? [Number.NaN, 0] : facingOf(mount);
      return [eastM, northM, leadM, ...faces];
    }),
  );
}

function facingOf(mount: Exclude<PanelGroup["mount"], { kind: "aimed" }>): [number, number] {
  return mount.kind === "flat" ? [mount.headingDeg, 0] : [mount.azimuthDeg, mount.tiltDeg];
}

function readPlace(places: Float64Array, k: number): Place {
  const [eastM, northM, leadM, headingDeg, tiltDeg] = [0, 1, 2, 3, 4].map(
    (slot) => places[k * PLACE_SLOTS + slot]!,
  ) as [number, number, number, number, number];
  if (Number.isNaN(headingDeg)) return { eastM, northM, leadM };
  const mount: PanelGroup["mount"] =
    tiltDeg === 0 ? { kind: "flat", headingDeg } : { kind: "fixed", tiltDeg, azimuthDeg: headingDeg };
  return { eastM, northM, leadM, mount };
}

/** The figures of a part or of several put together. */
export function figuresOf({ figures }: SpotsPart): PlaceFigure[] {
  return Array.from({ length: figures.length / FIGURE_SLOTS }, (_, k) => ({
    dayWh: figures[k * FIGURE_SLOTS]!,
    eventWh: figures[k * FIGURE_SLOTS + 1]!,
    leadLossShare: figures[k * FIGURE_SLOTS + 2]!,
  }));
}

/** What a group brings at many places, each by itself. */
export const spotsTask: TaskKind<"spots", SpotsTask, SpotsPart> = {
  name: "spots",
  fewest: FEWEST_PLACES,
  ...ofOneScenario,
  work: ({ scenario, surroundings, group, places, skyRows, from: first }, store) => {
    const ready = store.prepared({ scenario, surroundings });
    if (!ready.ok) return ready;
    const g = scenario.panels.findIndex(({ id }) => id === group);
    const figureOf = placeFigures(ready.value, g);
    const figures: number[] = [];
    const run = (from: number, to: number) => {
      for (let k = from; k < to; k++) {
        const { dayWh, eventWh, leadLossShare } = figureOf(readPlace(places, k), skyRows);
        figures.push(dayWh, eventWh, leadLossShare);
      }
    };
    const part = () => ({
      from: first,
      to: first + figures.length / FIGURE_SLOTS,
      figures: Float64Array.from(figures),
    });
    return { ok: true, value: { membersAtOnce: PLACES_AT_ONCE, run, part } };
  },
  merge: mergeSpots,
};

/**
 * Puts parts together.
 * @throws RangeError if the parts do not follow one another
 */
export function mergeSpots(parts: readonly SpotsPart[]): SpotsPart {
  const sorted = [...parts].sort((a, b) => a.from - b.from);
  const first = sorted[0];
  if (first === undefined) throw new RangeError("parts must hold at least one part, got none");
  sorted.slice(1).forEach((part, p) => {
    const before = sorted[p]!;
    if (before.to !== part.from)
      throw new RangeError(`parts must follow one another, got places up to ${before.to} and then from ${part.from}`);
  });
  return {
    from: first.from,
    to: sorted.at(-1)!.to,
    figures: Float64Array.from(sorted.flatMap(({ figures }) => Array.from(figures))),
  };
}
