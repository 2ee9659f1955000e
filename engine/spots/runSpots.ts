import type { Surroundings } from "../run/surroundings.ts";
import type { Problem } from "../scenario/problem.ts";
import { SKY_ROWS } from "../shade/skyViewShare.ts";
import { type CancelSignal, TaskCancelled, type TaskPool } from "../task/taskRun.ts";
import { COARSE_SKY_ROWS, type Place, type PlaceFigure } from "./placeFigure.ts";
import { coarseGrid, type Spot, type SpotGrid, spotAt } from "./spotGrid.ts";
import type { SpotsPlan } from "./spotsPlan.ts";
import type { HeadingStrip, SpotFigure, SpotsReport } from "./spotsReport.ts";
import { figuresOf, spotsTask, writePlaces } from "./spotsTask.ts";
import { wholeDays } from "./wholeDayWeights.ts";

/** How it is worked out. */
export interface SpotsWorks {
  readonly pool: TaskPool;
  readonly surroundings: Surroundings;
  readonly signal?: CancelSignal;
  /** Told what is known after every fourth spot of every fourth row. */
  readonly early?: (report: SpotsReport) => void;
  /** Told how far it is, 0…1. */
  readonly onProgress?: (share: number) => void;
}

/** What is wrong with a scenario, on its way to whoever asked. */
export class SpotsRefused extends Error {
  readonly problems: readonly Problem[];
  constructor(problems: readonly Problem[]) {
    super(problems[0]?.message);
    this.problems = problems;
  }
}

/** A spot is as good as the best within this share of it. */
const AS_GOOD = 0.01;
/** Bearings that a vehicle is turned to, and the tilt to which roof panels are commonly raised, ° (common practice, no source). */
const TURN_DEG = 15;
const RAISED_DEG = 15;

/**
 * What a panel group brings at every spot of its site, under the sky as written: first at every fourth, then at all, then to the last digit at
 * the spots that are named, and over the headings of a vehicle.
 * @throws SpotsRefused where the surroundings lack what the scenario needs; what `TaskPool.run` throws
 */
export async function runSpots(plan: SpotsPlan, works: SpotsWorks): Promise<SpotsReport> {
  const { group, lead, grid } = plan;
  const whole = Array.from({ length: grid.columns * grid.rows }, (_, k) => spotAt(grid, k));
  const coarse = coarseGrid(grid, group.at);
  const first = Array.from({ length: coarse.columns * coarse.rows }, (_, k) => spotAt(coarse, k));
  const placed = (spots: readonly Spot[]): Place[] => spots.map((spot) => ({ ...onSite(spot), leadM: lead.at(spot) }));

  const looked = async (
    places: readonly Place[],
    skyRows: number,
    from: number,
    to: number,
  ): Promise<PlaceFigure[]> => {
    if (places.length === 0) return [];
    const task = { scenario: plan.scenario, surroundings: works.surroundings, seed: "", group: group.id };
    const found = await works.pool.run(
      spotsTask,
      { ...task, places: writePlaces(places), skyRows, from: 0, to: places.length },
      {
        ...(works.signal === undefined ? {} : { signal: works.signal }),
        onProgress: (done, of) => works.onProgress?.(from + ((to - from) * done) / of),
      },
    );
    if (!found.ok) throw new SpotsRefused(found.problems);
    return figuresOf(found.part);
  };

  const coarseFigures = await looked(placed(first), COARSE_SKY_ROWS, 0, 0.05);
  if (works.early !== undefined) {
    const named = await namedSpots(plan, first, coarseFigures, (places) => looked(places, SKY_ROWS, 0.05, 0.06));
    works.early(reportOf(plan, coarse, coarseFigures, named, null, true));
  }
  if (works.signal?.aborted) throw new TaskCancelled("cancelled");
  // What was looked at first is known.
  const isFirst = new Map(first.map((spot, k) => [keyOf(spot), k]));
  const rest = whole.filter((spot) => !isFirst.has(keyOf(spot)));
  const restFigures = await looked(placed(rest), COARSE_SKY_ROWS, 0.06, 0.9);
  let next = 0;
  const figures = whole.map((spot) => {
    const k = isFirst.get(keyOf(spot));
    return k === undefined ? restFigures[next++]! : coarseFigures[k]!;
  });
  const named = await namedSpots(plan, whole, figures, (places) => looked(places, SKY_ROWS, 0.9, 0.92));
  const heading = await headingStrip(plan, (places) => looked(places, SKY_ROWS, 0.92, 1));
  works.onProgress?.(1);
  return reportOf(plan, grid, figures, named, heading, false);
}

/** Positions are kept to the millimetre. */
const rounded = (metres: number) => Math.round(metres * 1000) / 1000;
const onSite = ({ eastM, northM }: Spot) => ({ eastM: rounded(eastM), northM: rounded(northM) });
const keyOf = (spot: Spot) => `${rounded(spot.eastM)} ${rounded(spot.northM)}`;

interface NamedSpots {
  readonly here: SpotFigure;
  readonly best: SpotFigure;
  readonly asGood: SpotFigure;
  readonly beyond: SpotFigure | null;
}

/** Looks the spots up that a report names, and says of each what its lead takes. */
async function namedSpots(
  { group, lead, isTaken }: SpotsPlan,
  spots: readonly Spot[],
  figures: readonly PlaceFigure[],
  looked: (places: readonly Place[]) => Promise<PlaceFigure[]>,
): Promise<NamedSpots> {
  const all = spots.map((spot, k) => ({ spot, dayWh: figures[k]!.dayWh, leadM: lead.at(spot) }));
  const free = all.filter(({ spot }) => !isTaken(spot));
  const { at: here } = group;
  const within = free.filter(({ leadM }) => leadM <= lead.statedM + 1e-6);
  const from = lead.reachM === null ? here : { eastM: 0, northM: 0 };
  const awayM = ({ spot }: (typeof all)[number]) => Math.hypot(spot.eastM - from.eastM, spot.northM - from.northM);
  const most = (of: typeof all) => of.reduce((a, b) => (b.dayWh > a.dayWh ? b : a));
  // Where they are now they stand, whatever else is there; that is one of the spots.
  const gapM = ({ spot }: (typeof all)[number]) => Math.hypot(spot.eastM - here.eastM, spot.northM - here.northM);
  const hereNow = { ...all.reduce((a, b) => (gapM(b) < gapM(a) ? b : a)), spot: here, leadM: lead.at(here) };
  const best = most([hereNow, ...within]);
  const nearest = [hereNow, ...within]
    .filter(({ dayWh }) => dayWh >= best.dayWh * (1 - AS_GOOD))
    .reduce((a, b) => (awayM(b) < awayM(a) - 1e-9 ? b : a));
  const farther = free.length === 0 ? best : most([best, ...free]);
  const beyond = farther.dayWh > best.dayWh * (1 + AS_GOOD) ? farther : null;
  const named = [hereNow, best, nearest, ...(beyond === null ? [] : [beyond])];
  const found = await looked(named.map(({ spot, leadM }) => ({ ...onSite(spot), leadM })));
  const [hereFigure, bestFigure, asGood, beyondFigure] = named.map(
    ({ spot, leadM }, n): SpotFigure => ({ ...onSite(spot), leadM, ...found[n]! }),
  );
  return { here: hereFigure!, best: bestFigure!, asGood: asGood!, beyond: beyondFigure ?? null };
}

/** The roof with its vehicle turned about where it stands; null for panels that are carried. */
async function headingStrip(
  { group, lead }: SpotsPlan,
  looked: (places: readonly Place[]) => Promise<PlaceFigure[]>,
): Promise<HeadingStrip | null> {
  const { mount, at } = group;
  if (lead.reachM !== null || mount.kind !== "flat") return null;
  const headingDeg = Array.from({ length: 360 / TURN_DEG }, (_, k) => k * TURN_DEG);
  const place = { eastM: at.eastM, northM: at.northM, leadM: lead.statedM };
  const figures = await looked([
    ...headingDeg.map((heading): Place => ({ ...place, mount: { kind: "flat", headingDeg: heading } })),
    ...headingDeg.map(
      (heading): Place => ({ ...place, mount: { kind: "fixed", tiltDeg: RAISED_DEG, azimuthDeg: heading } }),
    ),
  ]);
  const wh = figures.map(({ dayWh }) => dayWh);
  const round = (of: readonly number[]) => [...of, of[0]!];
  return {
    nowDeg: mount.headingDeg,
    headingDeg: [...headingDeg, 360],
    flatWh: round(wh.slice(0, headingDeg.length)),
    tiltDeg: RAISED_DEG,
    tiltedWh: round(wh.slice(headingDeg.length)),
  };
}

function reportOf(
  { group, time, lead }: SpotsPlan,
  grid: SpotGrid,
  figures: readonly PlaceFigure[],
  named: NamedSpots,
  heading: HeadingStrip | null,
  isCoarse: boolean,
): SpotsReport {
  return {
    group: { id: group.id, name: group.name },
    days: wholeDays(time).length,
    lead: { statedM: lead.statedM, reachM: lead.reachM },
    ...named,
    grid,
    dayWh: figures.map(({ dayWh }) => dayWh),
    leadLossShare: figures.map(({ leadLossShare }) => leadLossShare),
    heading,
    isCoarse,
  };
}
