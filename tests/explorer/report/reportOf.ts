import type { Notebook } from "../../../engine/notebook/notebook.ts";
import { loadClimateTables } from "../../../engine/place/loadClimateTables.ts";
import { serveTasks } from "../../../engine/pool/task.ts";
import { makeTaskPool } from "../../../engine/pool/taskPool.ts";
import { type ReportMade, reportOfText } from "../../../engine/report/reportOfText.ts";

const turn = () => new Promise<void>((resolve) => setImmediate(resolve));

/** Makes a report in this thread, as the command does on all cores. */
export function reportOf(notebook: object): Promise<ReportMade> {
  const pool = makeTaskPool(1, (reply) => ({ post: serveTasks(reply, turn), keep: () => {}, stop: () => {} }));
  return reportOfText(JSON.stringify(notebook), {
    pool,
    turn,
    surroundings: async () => ({ climate: await loadClimateTables() }),
  });
}

/** The report's HTML. @throws Error where there is none */
export async function htmlOf(notebook: Notebook): Promise<string> {
  const made = await reportOf(notebook);
  if (!made.ok) throw new Error(made.sentences.join(" "));
  return made.html;
}
