import { differenceInWords, differences } from "../scenario/differences.ts";
import { type Burden, type Comparison, type Contender, type VersusReport, versus } from "../versus/versus.ts";
import { CallError } from "./callError.ts";
import { orDash, percent } from "./figures.ts";
import { seedOf } from "./memberRange.ts";
import { type Opened, openEnsemble } from "./openScenario.ts";
import { runOnAllCores } from "./runOnAllCores.ts";
import { textTable } from "./textTable.ts";
import type { Verb } from "./verb.ts";

export const versusVerb: Verb = {
  name: "versus",
  usage: "versus SCENARIO [SCENARIO …] [--variants ID,ID] [--members N|FROM:TO] [--seed TEXT] [--json]",
  purpose: "Holds scenarios, or a scenario and its variants, against the first under the same skies and operators.",
  takesSeveral: true,
  options: {
    variants: { type: "string", help: "variants of the first scenario; all of them when only one scenario is named" },
    members: { type: "string", help: "how many, or which, such as 500:1000 (1000 when left out)" },
    seed: { type: "string", help: "any text; the same seed gives the same members" },
    json: { type: "boolean", help: "print it as JSON" },
  },
  run: async ({ scenario, others, variant, values, print }) => {
    const seed = seedOf(values.seed);
    const contenders: Contender[] = [];
    const add = async (path: string, id: string | undefined, name?: string): Promise<Opened<null>> => {
      const opened = await openEnsemble(path, id, seed);
      if (!opened.ok) return opened;
      const ensemble = opened.value;
      const run = await runOnAllCores(ensemble, values.members);
      if (!run.ok) return run;
      contenders.push({ name: name ?? ensemble.prepared.scenario.name, ensemble, part: run.value });
      return { ok: true, value: null };
    };
    const isAlone = others.length === 0 && variant === undefined;
    const first = await add(scenario, variant, isAlone ? "the plan as it is" : undefined);
    if (!first.ok) return first;
    const known = contenders[0]!.ensemble.prepared.scenario.variants;
    const ids =
      typeof values.variants === "string"
        ? values.variants.split(",")
        : others.length === 0
          ? known.map((each) => each.id)
          : [];
    for (const id of ids) {
      const added = await add(scenario, id, known.find((each) => each.id === id)?.name);
      if (!added.ok) return added;
    }
    for (const path of others) {
      const added = await add(path, undefined);
      if (!added.ok) return added;
    }
    if (contenders.length < 2) {
      throw new CallError("versus needs something to compare with: name a second scenario, or one that has variants.");
    }
    const report = versus(contenders);
    const changed = contenders.slice(1).map(({ ensemble }) => {
      return differences(contenders[0]!.ensemble.prepared.scenario, ensemble.prepared.scenario).map(differenceInWords);
    });
    print(values.json === true ? JSON.stringify(versusJson(report, changed)) : versusText(report, changed));
    return { ok: true };
  },
};

/** What `versus --json` prints; bands stay with `odds`. */
function versusJson(report: VersusReport, changed: readonly (readonly string[])[]): unknown {
  const short = ({
    holds,
    dark,
    dropouts,
    lowestShare,
    endShare,
    unservedWh,
    solarWh,
    demandWh,
  }: Comparison["report"]) => {
    return { holds, dark, dropouts, lowestShare, endShare, unservedWh, solarWh, demandWh };
  };
  return {
    format: "duskline-versus",
    version: 1,
    seed: report.seed,
    members: report.members,
    first: { ...report.first, report: short(report.first.report) },
    others: report.others.map((other, k) => ({ ...other, report: short(other.report), changes: changed[k] })),
  };
}

interface Row {
  readonly name: string;
  readonly report: Comparison["report"];
  readonly burden: Burden;
}

function versusText(report: VersusReport, changed: readonly (readonly string[])[]): string {
  const stated = (value: number | null, digits = 0) => orDash(value === null ? null : value.toFixed(digits));
  const rows: Row[] = [report.first, ...report.others];
  const signed = (share: number) => `${share >= 0 ? "+" : "−"}${Math.abs(100 * share).toFixed(1)}`;
  return [
    ...report.others.map((other) => other.sentence),
    "",
    textTable(rows, [
      { title: "scenario", cell: (row) => row.name, align: "left" },
      { title: "holds", cell: (row) => percent(row.report.holds.share) },
      {
        title: "95 % of samples",
        cell: (row) => `${percent(row.report.holds.low)} to ${percent(row.report.holds.high)}`,
      },
      { title: "ever dark", cell: (row) => percent(row.report.dark.share) },
      { title: "lowest, half", cell: (row) => percent(row.report.lowestShare.p50) },
      { title: "one in twenty", cell: (row) => percent(row.report.lowestShare.p5) },
      { title: "cost", cell: (row) => stated(row.burden.cost) },
      { title: "kg", cell: (row) => stated(row.burden.massKg, 1) },
      { title: "min of work", cell: (row) => stated(row.burden.setupMinutes) },
    ]),
    ...report.others.flatMap((other, k) => [
      "",
      `${other.name}, against ${report.first.name}:`,
      ...changed[k]!.map((line) => `  ${line}`),
      `  holds ${signed(other.holds.mean)} in 100 (${signed(other.holds.low)} to ${signed(other.holds.high)}); lowest charge ${signed(other.margin.mean)} points (${signed(other.margin.low)} to ${signed(other.margin.high)})`,
      `  of ${report.members}: ${other.tally.both} hold either way, ${other.tally.onlyThis} only with it, ${other.tally.onlyFirst} only without, ${other.tally.neither} neither way`,
      ...(other.gained.members.length > 0
        ? [`  members that then hold: ${other.gained.members.slice(0, 8).join(", ")}…, ${other.gained.why}`]
        : []),
      ...(other.lost.members.length > 0
        ? [`  members that then fail: ${other.lost.members.slice(0, 8).join(", ")}…, ${other.lost.why}`]
        : []),
    ]),
    "",
    `The same ${report.members} members each, seed ${report.seed}. Cost, mass and work are those stated for blocks, panels and sources.`,
  ].join("\n");
}
