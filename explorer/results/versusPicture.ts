import {
  type Burden,
  burdenOf,
  makeMemberRoom,
  type OddsPart,
  type OddsReport,
  type PreparedEnsemble,
  versus,
} from "../../engine/index.ts";
import { ROW_STORED_AH } from "../../engine/run/runRows.ts";
import { type MemberRoom, stepMember } from "../../engine/run/stepMember.ts";
import type { PairedBands, Side, VersusPicture } from "./answers.ts";
import { timePicture } from "./oddsPicture.ts";

/** Pairs from which the picture of the difference is drawn; odds and intervals come from all of them. */
const PAIRED_MEMBERS = 200;

interface Contestant {
  readonly ensemble: PreparedEnsemble;
  readonly part: OddsPart;
}

/** Holds the second scenario against the first, member by member. */
export function versusPicture(first: Contestant, second: Contestant): VersusPicture {
  const scenarios = [first.ensemble.prepared.scenario, second.ensemble.prepared.scenario] as const;
  const report = versus([
    { name: "first", ...first },
    { name: "second", ...second },
  ]);
  const other = report.others[0]!;
  const { both, onlyThis, onlyFirst, neither } = other.tally;
  return {
    time: timePicture(first.ensemble),
    members: report.members,
    first: side(report.first.report, burdenOf(scenarios[0])),
    second: side(other.report, burdenOf(scenarios[1])),
    holds: other.holds,
    margin: other.margin,
    tally: { both, onlySecond: onlyThis, onlyFirst, neither },
    paired: pairedBands(first, second, Math.min(PAIRED_MEMBERS, report.members)),
  };
}

function side({ holds, dark, lowestShare, solarWh, unservedWh }: OddsReport, burden: Burden): Side {
  return { holds, dark, lowestShare, solarWh, unservedWh, burden };
}

/** Runs pairs of members once more and keeps the difference at every step. */
function pairedBands(first: Contestant, second: Contestant, members: number): PairedBands | null {
  const { steps, startMs, stepMs } = first.ensemble.prepared.grid;
  const other = second.ensemble.prepared.grid;
  if (steps !== other.steps || startMs !== other.startMs || stepMs !== other.stepMs) return null;
  const [roomA, roomB] = [makeMemberRoom(first.ensemble), makeMemberRoom(second.ensemble)];
  const rows = Array.from({ length: steps + 1 }, () => new Float64Array(members));
  for (let member = 0; member < members; member++) {
    stepMember(first.ensemble, member, roomA);
    stepMember(second.ensemble, member, roomB);
    for (let i = 0; i <= steps; i++) rows[i]![member] = storedAh(roomB, i, steps) - storedAh(roomA, i, steps);
  }
  const at = (share: number) => Math.round(share * (members - 1));
  const sorted = rows.map((row) => row.sort());
  const band = (share: number) => Float64Array.from(sorted, (row) => row[at(share)]!);
  return { p5: band(0.05), p50: band(0.5), p95: band(0.95) };
}

/** Charge at the start of step `i`; after the last one, at the end. */
function storedAh({ run }: MemberRoom, i: number, steps: number): number {
  return i < steps ? run.rows[i * run.stride + ROW_STORED_AH]! : run.state[0]!;
}
