import { prepareEnsemble } from "../../../engine/ensemble/prepareEnsemble.ts";
import { loadClimateTables } from "../../../engine/place/loadClimateTables.ts";
import { readScenario } from "../../../engine/scenario/readScenario.ts";
import type { ScenarioInput } from "../../../engine/scenario/scenario.ts";
import { type LogStyle, syntheticLog } from "../../engine/actual/syntheticLog.ts";
import { EXAMPLE } from "../exampleRun.ts";

const STYLE: LogStyle = { rowMinutes: 15, columns: ["charge", "bankV", "bankA", "pvW", "loadW"], lostShare: 0.05 };

/** An invented meter's log of one member of the example, and what stands behind it. */
export async function exampleLog(member = 3, style: LogStyle = STYLE, document: ScenarioInput = EXAMPLE) {
  const read = readScenario(document);
  if (!read.ok) throw new Error("the example reads");
  const ready = prepareEnsemble(read.scenario, { climate: await loadClimateTables() }, "the field");
  if (!ready.ok) throw new Error("the example prepares");
  return syntheticLog(ready.ensemble, member, style);
}

/** The same log as a meter abroad writes it: semicolons, decimal commas, day first, the clock on UTC without saying so. */
export function writtenAbroad(text: string): string {
  const [titles, ...rows] = text.trim().split("\n");
  const turned = rows.map((row) => {
    const [time, ...figures] = row.split(",");
    const [, year, month, day, clock] = /^(\d+)-(\d+)-(\d+)T(\d+:\d+)Z$/.exec(time!)!;
    return [`${day}.${month}.${year} ${clock}`, ...figures.map((figure) => figure.replace(".", ","))].join(";");
  });
  return [titles!.replaceAll(",", ";"), ...turned, ""].join("\n");
}
