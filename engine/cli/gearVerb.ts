import {
  GEAR_AT_V,
  type GearRange,
  type GenericGear,
  type Measurement,
  measuredDoubts,
  nearGear,
  onShelf,
  readMeasuredGear,
  searchGear,
} from "../gear/index.ts";
import type { CallContext } from "./callContext.ts";
import type { Opened } from "./openScenario.ts";
import { textTable } from "./textTable.ts";
import type { Verb } from "./verb.ts";

export const gearVerb: Verb = {
  name: "gear",
  usage: "gear WORDS [--measured FILE.json] [--confirm] [--json]",
  purpose: `Looks on the shelf of generic gear: what such a thing usually takes, from where to where, and the source. "all" lists everything.`,
  takes: "WORDS",
  takesSeveral: true,
  options: {
    measured: {
      type: "string",
      takes: "FILE",
      help: "what you measured yourself and your own kinds, saved by the page (duskline-gear)",
    },
    confirm: { type: "boolean", help: "what was measured is really so, however odd it looks" },
    json: { type: "boolean", help: "print the gear as JSON" },
  },
  run: async ({ scenario, others, values, context, print }) => {
    const query = [scenario, ...others].join(" ");
    const read = await measuredIn(values.measured, values.confirm === true, context);
    if (!read.ok) return read;
    const { measured, own } = read.value;
    const found = searchGear(query === "all" ? "" : query, own);
    const near = found.length === 0 ? nearGear(query, own) : [];
    const measuredOf = ({ id }: GenericGear) => measured.find(({ gear }) => gear === id);
    if (values.json === true) {
      const json = (gear: readonly GenericGear[]) =>
        gear.map((each) => ({ ...each, measured: measuredOf(each) ?? null }));
      const head = { format: "duskline-gear-list", version: 1, atV: GEAR_AT_V };
      print(JSON.stringify({ ...head, gear: json(found), near: json(near) }));
      return { ok: true };
    }
    if (found.length > 0) print(tableOf(found, measuredOf));
    else if (near.length === 0) print(`Nothing on the shelf answers to "${query}"; "all" lists everything.`);
    else print(`Nothing on the shelf answers to "${query}"; near it:\n\n${tableOf(near, measuredOf)}`);
    return { ok: true };
  },
};

interface Own {
  readonly measured: readonly Measurement[];
  readonly own: readonly GenericGear[];
}

async function measuredIn(
  path: string | boolean | undefined,
  isConfirmed: boolean,
  context: CallContext,
): Promise<Opened<Own>> {
  if (typeof path !== "string") return { ok: true, value: { measured: [], own: [] } };
  const read = readMeasuredGear(await context.textOf(path));
  const refused = (sentences: readonly string[]) => ({
    ok: false as const,
    problems: sentences.map((message) => ({ code: "measured", path: [], message })),
  });
  if (!read.ok) return refused(read.sentences);
  const doubts = isConfirmed ? [] : measuredDoubts(read.measured);
  if (doubts.length > 0)
    return refused(
      doubts.map((doubt) => `${doubt} Correct it, give it "isConfirmed": true, or confirm all with --confirm.`),
    );
  return { ok: true, value: { measured: read.measured, own: read.own.map(onShelf) } };
}

function tableOf(found: readonly GenericGear[], measuredOf: (gear: GenericGear) => Measurement | undefined): string {
  const words = (range: GearRange | null, unit: string) => {
    if (range === null) return "–";
    const { low, usual, high } = range;
    return low === high ? `${usual} ${unit}` : `${usual} ${unit} (${low} to ${high})`;
  };
  const mine = (gear: GenericGear) => {
    const measured = measuredOf(gear);
    return measured === undefined ? "" : `${measured.idle ?? "–"} / ${measured.working ?? "–"}`;
  };
  const sources = found.map(({ name, source }) => `  ${name}: ${source}.`);
  return [
    textTable(found, [
      { head: "gear", cell: ({ name }) => name, isWords: true },
      {
        head: "for new --gear",
        cell: ({ id, radio, words: called }) => (radio === null && called !== "own" ? id : ""),
        isWords: true,
      },
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
