import type { CorrectionName } from "../../../engine/actual/fitCorrection.ts";
import { nextNormal, nextUnit, openStream, STREAM_WORDS, wordsFor } from "../../../engine/chance/stream.ts";
import { makeMemberRoom } from "../../../engine/ensemble/makeMemberRoom.ts";
import type { PreparedEnsemble } from "../../../engine/ensemble/prepareEnsemble.ts";
import { stepMember } from "../../../engine/ensemble/stepMember.ts";
import {
  CANOPY_REACH,
  crownLean,
  FIGURE_CAPACITY_SHARE,
  FIGURE_IDLE_SHARE,
  FIGURE_START_SHARE,
  FIGURE_YIELD_SHARE,
  SURENESS_SPREAD,
} from "../../../engine/run/memberFigures.ts";
import { runRecord } from "../../../engine/run/runRecord.ts";

/** How an invented meter writes its log. */
export interface LogStyle {
  /** Minutes from row to row; the ensemble's own step or a multiple of it. */
  readonly rowMinutes: number;
  readonly columns: readonly ("charge" | "bankV" | "bankA" | "pvW" | "loadW")[];
  /** Share of the event that is lost in gaps of two hours. */
  readonly lostShare: number;
}

/** A log of which everything behind it is known. */
export interface SyntheticLog {
  readonly text: string;
  readonly truth: Readonly<Record<CorrectionName, number>>;
}

const TITLES = { charge: "charge %", bankV: "bank V", bankA: "bank A", pvW: "PV W", loadW: "load W" };
const GAP_H = 2;

/**
 * Writes what a meter with a gain error of 1 % a channel, a zero error of 0.03 A and a display of half percents would log of a member: sky,
 * operators and figures are the member's.
 */
export function syntheticLog(ensemble: PreparedEnsemble, member: number, style: LogStyle): SyntheticLog {
  const { prepared } = ensemble;
  const { grid, loads, converterShare, bank } = prepared;
  const room = makeMemberRoom(ensemble);
  stepMember(ensemble, member, room);
  const record = runRecord(prepared, room.run);
  const state = new Uint32Array(STREAM_WORDS);
  openStream(state, wordsFor(ensemble.words, "the meter in the field"), member, "start");
  const gain = () => 1 + 0.01 * nextNormal(state);
  const [pvGain, bankGain, loadGain] = [gain(), gain(), gain()];
  const zeroA = 0.03 * nextNormal(state);
  const per = Math.round(style.rowMinutes / (grid.stepH * 60));
  const rows: string[] = [];
  const perGap = Math.round(GAP_H / (grid.stepH * per));
  let lostLeft = 0;
  let [sent, plan] = [0, 0];
  const { figures } = room.inputs;
  for (let i = 0; i + per <= grid.steps; i += per) {
    if (lostLeft === 0 && nextUnit(state) < style.lostShare / perGap) lostLeft = perGap;
    if (lostLeft > 0) {
      lostLeft--;
      continue;
    }
    const mean = (of: (step: number) => number) => {
      let sum = 0;
      for (let k = i; k < i + per; k++) sum += of(k);
      return sum / per;
    };
    for (let k = i; k < i + per; k++) {
      sent += room.inputs.wantedW[k]! - (figures[FIGURE_IDLE_SHARE]! * loads.quietW[k]!) / converterShare;
      plan += (loads.wantedW[k]! - loads.quietW[k]!) / converterShare;
    }
    const read = {
      charge: Math.round(200 * (record.storedAh[i]! / bank.fullAh)) / 2,
      bankV: mean((k) => record.bankV[k]!) + 0.01 * nextNormal(state),
      bankA: mean((k) => record.bankA[k]!) * bankGain + zeroA,
      pvW: mean((k) => record.solarW[k]! - record.spilledW[k]!) * pvGain,
      loadW: mean((k) => record.servedW[k]! - prepared.controllersW) * loadGain,
    };
    const at = new Date(grid.startMs + i * grid.stepMs).toISOString().slice(0, 16);
    rows.push([`${at}Z`, ...style.columns.map((column) => read[column].toFixed(2))].join(","));
  }
  const spread = SURENESS_SPREAD.canopy[prepared.scenario.sureness.canopy];
  return {
    text: [["time", ...style.columns.map((column) => TITLES[column])].join(","), ...rows, ""].join("\n"),
    truth: {
      idle: figures[FIGURE_IDLE_SHARE]!,
      sending: plan > 0 ? sent / plan : 1,
      yield: figures[FIGURE_YIELD_SHARE]!,
      shade: Math.max(0, 1 + spread * CANOPY_REACH * crownLean(figures)),
      capacity: figures[FIGURE_CAPACITY_SHARE]!,
      start: figures[FIGURE_START_SHARE]!,
    },
  };
}
