import type { LimitsReport } from "../../checks/limits.ts";
import type { WiringRun } from "../../checks/wiringRuns.ts";
import { figure, THIN } from "../../words/numbers.ts";
import type { Column } from "../column.ts";
import { VERDICTS } from "./limitsWords.ts";

/** "16 A", "6.6 A". */
export const amps = (value: number) => `${figure(value, value < 10 && value % 1 !== 0 ? 1 : 0)}${THIN}A`;

/** Whether a run has to be put right. */
export const isOver = ({ verdict }: WiringRun) => verdict === "over";

/** "50 A"; "none" where one is needed and none is stated, a dash where none is needed. */
export const fuseWords = ({ fuseA, needsFuse }: WiringRun) => (fuseA !== null ? amps(fuseA) : needsFuse ? "none" : "–");

/** The columns of the wiring sheet. */
export const WIRING_COLUMNS: readonly Column<WiringRun>[] = [
  { head: "Run", cell: ({ number, name }) => `${number}. ${name}` },
  { head: "lasting", cell: ({ lastingA }) => amps(lastingA) },
  { head: "peak", cell: ({ peakA }) => amps(peakA) },
  { head: "fuse", cell: fuseWords },
  { head: "wire", cell: ({ size, isAssumed }) => `${size ?? "none will do"}${isAssumed ? "*" : ""}` },
  { head: "one way", cell: ({ oneWayM }) => (oneWayM === null ? "–" : `${+oneWayM.toFixed(2)}${THIN}m`) },
  { head: "drop", cell: ({ dropShare }) => (dropShare === null ? "–" : `${figure(100 * dropShare, 1)}${THIN}%`) },
  { head: "state", cell: ({ verdict }) => VERDICTS.find((each) => each.verdict === verdict)!.word },
];

/** What the dashes and stars of sheet and drawing mean. */
export const WIRING_NOTE =
  "Dashed: no fuse stated. * not stated: a wire that would do, or is usual. Currents at worst; lasting: ten minutes and more.";

const NUMBERS = ["no", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten"];
const inWords = (count: number) => NUMBERS[count] ?? String(count);

/** "ten runs, four to put right" */
export function wiringTitle({ wiring }: Pick<LimitsReport, "wiring">): string {
  const over = wiring.filter(isOver).length;
  const runs = `${inWords(wiring.length)} ${wiring.length === 1 ? "run" : "runs"}`;
  return over === 0 ? `${runs}, none over its limits` : `${runs}, ${inWords(over)} to put right`;
}

/** What to put right: the numbers that it holds for, and what to do; last what belongs to no single conductor. */
export function toPutRight({ wiring, lines }: Pick<LimitsReport, "wiring" | "lines">) {
  const said = new Map<string, string[]>();
  const add = (where: string, change: string) => said.set(change, [...(said.get(change) ?? []), where]);
  for (const { number, changes } of wiring) for (const change of changes) add(String(number), change);
  for (const { run, verdict, about, quantity, change } of lines)
    if (run === null && verdict === "over") add(`${about}, ${quantity}`, change);
  return [...said].map(([change, where]) => ({ where: where.join(", "), change }));
}

/** A caution in the few words that a sheet has room for, by its id. */
const CARE: Readonly<Record<string, string>> = {
  fire: "Work from the bank's end last; cover the posts, rings and watches off.",
  lithium: "Never charge this bank at 0 °C or below, unless its maker allows it.",
  lead: "Charging lead gives off hydrogen: air above and below, no flame, no switch in the box.",
  shock: "Panels are live by day: cover them first, and never pull a plug under load.",
  roof: "Tie panels down for the gust; nobody alone on a ladder.",
  fumes: "Generator outdoors, 6 m from anything people breathe in.",
  mains: "Mains leads are for licensed people, with residual-current protection.",
  vehicle: "Fuse the lead at the vehicle's battery too: it has a source at either end.",
};

/** What can hurt whoever wires this plan, short. */
export const takeCare = ({ cautions }: Pick<LimitsReport, "cautions">): string[] =>
  cautions.flatMap(({ id }) => (CARE[id] === undefined ? [] : [CARE[id]]));
