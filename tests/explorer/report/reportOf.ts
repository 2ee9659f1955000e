import { loadClimateTables, type PreparedEnsemble, runMembers } from "../../../engine/index.ts";
import type { Notebook } from "../../../explorer/notebook/notebook.ts";
import { type ReportMade, reportOfText } from "../../../explorer/report/reportOfText.ts";

/** Makes a report in this thread, as the command does on all cores. */
export function reportOf(notebook: object): Promise<ReportMade> {
  return reportOfText(JSON.stringify(notebook), {
    surroundings: async () => ({ ok: true, value: { climate: await loadClimateTables() } }),
    run: async (ensemble: PreparedEnsemble, members: number) => ({
      ok: true,
      value: runMembers(ensemble, 0, members),
    }),
  });
}

/** The report's HTML. @throws Error where there is none */
export async function htmlOf(notebook: Notebook): Promise<string> {
  const made = await reportOf(notebook);
  if (!made.ok) throw new Error(made.sentences.join(" "));
  return made.html;
}
