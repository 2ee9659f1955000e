import type { PreparedEnsemble } from "../ensemble/prepareEnsemble.ts";
import type { MemberRoom } from "../ensemble/stepMember.ts";
import { BANK_A, BANK_CONNECTED, BANK_SLOTS, ROW_SLOTS, ROW_STORED_AH } from "../run/runRows.ts";
import { CONNECTED, LAST_A, STORED_AH } from "../run/stepState.ts";

/** How particles stand at some steps of their runs, so that they can be gone on from there. */
export interface Snapshots {
  /** The steps, rising. */
  readonly steps: Int32Array;
  /** For each particle and each of the steps: charge as a share of full, current of the last step, disconnect. */
  readonly chargeShare: Float64Array;
  readonly lastA: Float64Array;
  readonly connected: Float64Array;
  /** For each particle, step and source. */
  readonly running: Float64Array;
  readonly fuelL: Float64Array;
  /** For each particle: clear-sky index of the steps `skyFrom` to `skyFrom + skySteps`. */
  readonly skyFrom: number;
  readonly skySteps: number;
  readonly sky: Float64Array;
  /** For each particle and each day: see `Particles`. */
  readonly skyNormal: Float64Array;
  readonly skyIndex: Float64Array;
  readonly fileDay: Int32Array;
  readonly dayKeenness: Float64Array;
}

/** Room for snapshots of `count` particles. @param steps where; rising, each 1…steps */
export function makeSnapshots({ prepared }: PreparedEnsemble, count: number, steps: readonly number[]): Snapshots {
  const { grid, sources } = prepared;
  const days = grid.dates.length;
  const skyFrom = grid.localDay.indexOf(grid.localDay[steps[0]! - 1]!);
  const next = grid.localDay.indexOf(grid.localDay[steps.at(-1)! - 1]! + 1);
  const skySteps = (next < 0 ? grid.steps : next) - skyFrom;
  return {
    steps: Int32Array.from(steps),
    chargeShare: new Float64Array(count * steps.length),
    lastA: new Float64Array(count * steps.length),
    connected: new Float64Array(count * steps.length),
    running: new Float64Array(count * steps.length * sources.length),
    fuelL: new Float64Array(count * steps.length * sources.length),
    skyFrom,
    skySteps,
    sky: new Float64Array(count * skySteps),
    skyNormal: new Float64Array(count * days),
    skyIndex: new Float64Array(count * days),
    fileDay: new Int32Array(count * days),
    dayKeenness: new Float64Array(count * days),
  };
}

/** Takes snapshots of a particle whose run is finished. */
export function takeSnapshots(ensemble: PreparedEnsemble, room: MemberRoom, p: number, out: Snapshots): void {
  const { prepared, skies, operators } = ensemble;
  const { grid, sources, bank } = prepared;
  const { run } = room;
  const days = grid.dates.length;
  out.steps.forEach((step, n) => {
    const at = p * out.steps.length + n;
    const before = (step - 1) * BANK_SLOTS;
    const isEnd = step >= grid.steps;
    const storedAh = isEnd ? run.state[STORED_AH]! : run.rows[step * ROW_SLOTS + ROW_STORED_AH]!;
    out.chargeShare[at] = storedAh / bank.fullAh;
    out.lastA[at] = isEnd ? run.state[LAST_A]! : run.bankRows[before + BANK_A]!;
    out.connected[at] = isEnd ? run.state[CONNECTED]! : run.bankRows[before + BANK_CONNECTED]!;
    for (let s = 0; s < sources.length; s++) {
      // What a generator burnt later is put back; one that burnt fuel in the last step is running.
      let laterL = 0;
      for (let i = step; i < grid.steps; i++) laterL += run.parts[i * run.partStride + run.fuelAt + s]!;
      out.fuelL[at * sources.length + s] = run.fuelLeftL[s]! + laterL;
      out.running[at * sources.length + s] = run.parts[(step - 1) * run.partStride + run.fuelAt + s]! > 0 ? 1 : 0;
    }
  });
  for (let i = 0; i < out.skySteps; i++) out.sky[p * out.skySteps + i] = skies.indexOfStep[out.skyFrom + i]!;
  out.skyNormal.set(skies.normalOfDay, p * days);
  out.skyIndex.set(skies.indexOfDay, p * days);
  out.dayKeenness.set(operators.dayNormal, p * days);
  if (skies.blocks !== null) out.fileDay.set(skies.blocks.chosen, p * days);
}
