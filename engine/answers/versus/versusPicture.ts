import type { PreparedEnsemble } from "../../ensemble/prepareEnsemble.ts";
import type { OddsReport, Spread } from "../../odds/odds.ts";
import type { OddsPart } from "../../odds/oddsPart.ts";
import type { Odds } from "../../odds/wilson.ts";
import { type TimePicture, timePicture } from "../../ruler/timePicture.ts";
import { localMoment } from "../../run/localClock.ts";
import { hoursIn } from "../../scenario/clockWindow.ts";
import { type Burden, type BurdenMore, burdenMore, burdenOf } from "../../versus/burden.ts";
import { type PairedCharge, pairedCharge } from "../../versus/pairedCharge.ts";
import { type Flips, type PairedDifference, versus } from "../../versus/versus.ts";

/** Charge that the second scenario has put by more than the first, Ah, at each step's start and at the end. */
export interface PairedBands {
  readonly p5: Float64Array;
  readonly p50: Float64Array;
  readonly p95: Float64Array;
}

/** What is known of one scenario that is compared. */
export interface Side {
  readonly holds: Odds;
  readonly dark: Odds;
  readonly dropouts: Odds;
  readonly lowestShare: Spread;
  readonly endShare: Spread;
  readonly unservedWh: Spread;
  readonly solarWh: Spread;
  readonly demandWh: Spread;
  readonly fuelL: Spread;
  /** Whether something burns fuel. */
  readonly burnsFuel: boolean;
  readonly reserveShare: number;
  readonly failsMostly: OddsReport["failsMostly"];
  readonly unservedByDevice: OddsReport["unservedByDevice"];
  /** Hours that somebody is planned to operate at each station. */
  readonly onAir: readonly { readonly id: string; readonly name: string; readonly hours: number }[];
  readonly burden: Burden;
}

/** Two scenarios held against one another, member by member. */
export interface VersusPicture {
  readonly time: TimePicture;
  readonly members: number;
  /** When the event ends, on the local clock: "Sun 11 Oct 16:00". */
  readonly end: string;
  readonly first: Side;
  readonly second: Side;
  readonly holds: PairedDifference;
  readonly margin: PairedDifference;
  /** What the second takes more to bring than the first. */
  readonly more: BurdenMore;
  readonly tally: {
    readonly both: number;
    readonly onlySecond: number;
    readonly onlyFirst: number;
    readonly neither: number;
  };
  /** Members that hold only with the second, and only with the first, and why. */
  readonly gained: Flips;
  readonly lost: Flips;
  /** Null where the two do not last equally long, or nobody draws it. */
  readonly paired: PairedBands | null;
}

/** Pairs from which the picture of the difference is drawn; odds and intervals come from all of them. */
const PAIRED_MEMBERS = 200;

interface Contestant {
  readonly ensemble: PreparedEnsemble;
  readonly part: OddsPart;
}

/**
 * Holds the second scenario against the first, member by member.
 * @param paired the first members of both, run in pairs; left out, they are run here; null where the two do not last equally long
 */
export function versusPicture(
  first: Contestant,
  second: Contestant,
  paired: PairedCharge | null = pairedCharge(
    first.ensemble,
    second.ensemble,
    0,
    Math.min(PAIRED_MEMBERS, first.part.to - first.part.from),
  ),
): VersusPicture {
  const [from, to] = [first.ensemble.prepared, second.ensemble.prepared];
  const { grid } = from;
  const report = versus([
    { name: "first", ...first },
    { name: "second", ...second },
  ]);
  const other = report.others[0]!;
  const { both, onlyThis, onlyFirst, neither } = other.tally;
  return {
    time: timePicture(first.ensemble),
    members: report.members,
    end: localMoment(grid, grid.startMs + grid.steps * grid.stepMs).words,
    first: side(report.first.report, from, burdenOf(from.scenario, grid)),
    second: side(other.report, to, burdenOf(to.scenario, to.grid, from.scenario)),
    more: burdenMore(from.scenario, to.scenario, [grid, to.grid]),
    holds: other.holds,
    margin: other.margin,
    tally: { both, onlySecond: onlyThis, onlyFirst, neither },
    gained: other.gained,
    lost: other.lost,
    paired: paired === null ? null : pairedBands(paired),
  };
}

function side(report: OddsReport, { scenario, grid }: PreparedEnsemble["prepared"], burden: Burden): Side {
  const { holds, dark, dropouts, lowestShare, endShare, unservedWh, solarWh, demandWh, fuelL } = report;
  const { reserveShare, failsMostly, unservedByDevice } = report;
  return {
    ...{ holds, dark, dropouts, lowestShare, endShare, unservedWh, solarWh, demandWh, fuelL },
    ...{ reserveShare, failsMostly, unservedByDevice },
    burnsFuel: scenario.sources.some(({ kind }) => kind === "generator"),
    onAir: scenario.stations.map(({ id, name, staffed }) => ({ id, name, hours: hoursIn(grid, staffed) })),
    burden,
  };
}

/** The difference at every step over pairs of members. */
function pairedBands({ from, to, moments, moreAh }: PairedCharge): PairedBands {
  const members = to - from;
  const row = new Float64Array(members);
  const [p5, p50, p95] = [0.05, 0.5, 0.95].map(() => new Float64Array(moments)) as [
    Float64Array,
    Float64Array,
    Float64Array,
  ];
  const at = (share: number) => Math.round(share * (members - 1));
  for (let i = 0; i < moments; i++) {
    for (let member = 0; member < members; member++) row[member] = moreAh[member * moments + i]!;
    row.sort();
    p5[i] = row[at(0.05)]!;
    p50[i] = row[at(0.5)]!;
    p95[i] = row[at(0.95)]!;
  }
  return { p5, p50, p95 };
}
