import { csvText } from "../../csvText.ts";
import type { HarvestLine, Ledger, LedgerLine } from "../../run/ledger.ts";
import { figure } from "../../words/numbers.ts";
import { type Column, csvRowsOf } from "../column.ts";
import type { RunPicture } from "../run/runPicture.ts";

const tenth = (value: number) => String(Math.round(value * 10) / 10);

/** A number of a line, whole where it is read. */
const whole = <Line>(head: string, of: (line: Line) => number): Column<Line> => ({
  head,
  cell: (line) => figure(of(line)),
  raw: (line) => tenth(of(line)),
});

/** What each load got over the whole event. */
export const LOADS = {
  name: { head: "What took it", cell: ({ name }) => name, isWords: true },
  always: whole("Always on, Wh", ({ alwaysWh }) => alwaysWh),
  used: whole("When used, Wh", ({ usedWh }) => usedWh),
  total: whole("Together, Wh", ({ totalWh }) => totalWh),
  share: whole("Share, %", ({ share }) => 100 * share),
} satisfies Record<string, Column<LedgerLine>>;

/** All loads, as one line more. */
export function allLoads({ alwaysWh, usedWh }: Ledger): LedgerLine {
  return { id: "sum", name: "All that the loads got", alwaysWh, usedWh, totalWh: alwaysWh + usedWh, share: 1 };
}

/** What became of each group's light. */
export const HARVEST = {
  name: { head: "Panels", cell: ({ name }) => name, isWords: true },
  unshaded: whole("Unshaded, Wh", ({ unshadedWh }) => unshadedWh),
  shade: whole("Shade took, Wh", ({ shadeLossWh }) => shadeLossWh),
  offered: whole("At the bank, Wh", ({ offeredWh }) => offeredWh),
  modules: whole("Lost in modules, Wh", ({ lossesWh }) => lossesWh),
  cable: whole("In the cable, Wh", ({ cableLossWh }) => cableLossWh),
  controller: whole("In the controller, Wh", ({ controllerLossWh }) => controllerLossWh),
  limited: whole("Over its limit, Wh", ({ limitedWh }) => limitedWh),
} satisfies Record<string, Column<HarvestLine>>;

/** What each load got, for a sheet of one's own. */
export function ledgerCsv({ ledger }: RunPicture): string {
  return csvText(csvRowsOf(Object.values<Column<LedgerLine>>(LOADS), ledger.loads));
}
