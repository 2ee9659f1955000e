import { readdirSync, readFileSync } from "node:fs";
import { runOdds } from "../engine/cli/pool.ts";
import { prepareEnsemble } from "../engine/ensemble/prepareEnsemble.ts";
import { USUAL_MEMBERS, USUAL_SEED } from "../engine/library/askOptions.ts";
import { oddsReport } from "../engine/odds/odds.ts";
import type { Odds } from "../engine/odds/wilson.ts";
import { loadClimateTables } from "../engine/place/loadClimateTables.ts";
import { readScenario, readVariant } from "../engine/scenario/readScenario.ts";
import { mdTable } from "./mdTable.ts";

const TITLES = ["plan", "holds, of 100", "dark, of 100", "lowest charge: one in twenty below, half below", "sun"];

/** The odds of the example scenarios and each of their variants, as the command `odds` gives them when told nothing else. */
export async function exampleOdds(): Promise<string> {
  const climate = await loadClimateTables();
  const names = readdirSync("scenarios").filter((name) => name.endsWith(".json"));
  const rows: string[][] = [];
  for (const name of names.sort()) {
    const text = readFileSync(`scenarios/${name}`, "utf8");
    const { variants = [] } = JSON.parse(text) as { variants?: { id: string; name: string }[] };
    for (const variant of [undefined, ...variants]) {
      const read = variant === undefined ? readScenario(text) : readVariant(text, variant.id);
      if (!read.ok) throw new Error(`${name}: ${read.problems[0]!.message}`);
      const ready = prepareEnsemble(read.scenario, { climate }, USUAL_SEED);
      const run = await runOdds(read.scenario, { climate }, USUAL_SEED, 0, USUAL_MEMBERS);
      if (!ready.ok || !run.ok) throw new Error(`${name} cannot be run`);
      const { holds, dark, lowestShare, solarWh } = oddsReport(ready.ensemble, run.part);
      rows.push([
        variant === undefined ? `**${read.scenario.name}**` : variant.name,
        inHundred(holds),
        inHundred(dark),
        `${percent(lowestShare.p5)}, ${percent(lowestShare.p50)}`,
        `${kiloWattHours(solarWh.p50)} kWh (${kiloWattHours(solarWh.p5)} to ${kiloWattHours(solarWh.p95)})`,
      ]);
    }
  }
  return [
    `Seed \`${USUAL_SEED}\`, ${USUAL_MEMBERS} members; in brackets what the size of the sample leaves open. Sun: half of the members get less; nine in ten lie in the range.`,
    mdTable(TITLES, rows),
  ].join("\n\n");
}

const kiloWattHours = (wh: number) => (wh / 1000).toFixed(1);
const percent = (share: number) => `${(100 * share).toFixed(0)} %`;
const inHundred = ({ share, low, high }: Odds) =>
  `${(100 * share).toFixed(1)} (${(100 * low).toFixed(1)} to ${(100 * high).toFixed(1)})`;
