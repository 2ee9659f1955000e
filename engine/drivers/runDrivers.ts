import type { PreparedEnsemble } from "../ensemble/prepareEnsemble.ts";
import type { TaskOptions, TaskPool, TaskRun } from "../task/taskRun.ts";
import { endsOf, requireDriversRows } from "./drivers.ts";
import { type DriversReport, driversReport } from "./driversReport.ts";
import { driversRowsTask, driversWhatIfsTask } from "./driversTasks.ts";

/**
 * What `drivers` gives, worked out by a pool.
 * @param ensemble of the scenario that the workers will prepare for themselves
 * @param members rows of the sample
 * @throws what `TaskPool.run` throws, and RangeError if `members` is out of range
 */
export async function runDrivers(
  pool: TaskPool,
  ensemble: PreparedEnsemble,
  members: number,
  { onProgress, ...options }: TaskOptions = {},
): Promise<TaskRun<DriversReport>> {
  requireDriversRows(members);
  const { prepared, surroundings, seed } = ensemble;
  const rowsOf = { scenario: prepared.scenario, surroundings, seed, of: members, from: 0, to: members };
  const half = (before: number) => (done: number, of: number) => onProgress?.(before + done, 2 * of);
  const rows = await pool.run(driversRowsTask, rowsOf, { ...options, onProgress: half(0) });
  if (!rows.ok) return rows;
  const ends = endsOf(ensemble, rows.part);
  const whatIfs = await pool.run(driversWhatIfsTask, { ...rowsOf, ends }, { ...options, onProgress: half(members) });
  return whatIfs.ok ? { ok: true, part: driversReport(ensemble, rows.part, ends, whatIfs.part) } : whatIfs;
}
