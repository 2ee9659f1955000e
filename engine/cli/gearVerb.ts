import {
  GEAR_AT_V,
  type GearRange,
  type GenericGear,
  type Measurement,
  readMeasuredGear,
  searchGear,
} from "../gear/index.ts";
import { textOf } from "./openScenario.ts";
import { textTable } from "./textTable.ts";
import type { Verb } from "./verb.ts";

export const gearVerb: Verb = {
  name: "gear",
  usage: "gear WORDS [--measured FILE.json] [--json]",
  purpose: `Looks on the shelf of generic gear: what such a thing usually takes, from where to where, and the source. "all" lists everything.`,
  takes: "WORDS",
  takesSeveral: true,
  options: {
    measured: { type: "string", help: "what you measured yourself, saved by the page (duskline-gear)" },
    json: { type: "boolean", help: "print the gear as JSON" },
  },
  run: async ({ scenario, others, values, print }) => {
    const query = [scenario, ...others].join(" ");
    const read = await measuredIn(values.measured);
    if (!read.ok) {
      return { ok: false, problems: read.sentences.map((message) => ({ code: "measured", path: [], message })) };
    }
    const found = searchGear(query === "all" ? "" : query);
    const measuredOf = ({ id }: GenericGear) => read.measured.find(({ gear }) => gear === id);
    if (values.json === true) {
      const gear = found.map((each) => ({ ...each, measured: measuredOf(each) ?? null }));
      print(JSON.stringify({ format: "duskline-gear-list", version: 1, atV: GEAR_AT_V, gear }));
      return { ok: true };
    }
    print(
      found.length === 0
        ? `Nothing on the shelf answers to "${query}"; "all" lists everything.`
        : tableOf(found, measuredOf),
    );
    return { ok: true };
  },
};

async function measuredIn(path: string | boolean | undefined): Promise<ReturnType<typeof readMeasuredGear>> {
  return typeof path === "string" ? readMeasuredGear(await textOf(path)) : { ok: true, measured: [] };
}

function tableOf(found: readonly GenericGear[], measuredOf: (gear: GenericGear) => Measurement | undefined): string {
  const words = (range: GearRange | null, unit: string) =>
    range === null ? "–" : `${range.usual} ${unit} (${range.low} to ${range.high})`;
  const mine = (gear: GenericGear) => {
    const measured = measuredOf(gear);
    return measured === undefined ? "" : `${measured.idle ?? "–"} / ${measured.working ?? "–"}`;
  };
  const sources = found.map(({ name, source }) => `  ${name}: ${source}.`);
  return [
    textTable(found, [
      { head: "gear", cell: ({ name }) => name, isWords: true },
      { head: "receive or idle", cell: ({ idle, unit }) => words(idle, unit), isWords: true },
      { head: "at work", cell: ({ working, unit }) => words(working, unit), isWords: true },
      { head: "measured", cell: mine, isWords: true },
    ]),
    "",
    `Usual, and from where to where across makes; amperes at ${GEAR_AT_V} V. Your own meter goes before any of it.`,
    "",
    ...sources,
  ].join("\n");
}
