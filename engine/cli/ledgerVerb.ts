import type { Column } from "../answers/column.ts";
import { allLoads, HARVEST, LOADS } from "../answers/ledger/rows.ts";
import { workPicture } from "../answers/run/work.ts";
import type { HarvestLine, Ledger, LedgerLine } from "../run/ledger.ts";
import { answerBy } from "./answerTo.ts";
import { wattHours } from "./figures.ts";
import { openDocument } from "./openScenario.ts";
import { textTable } from "./textTable.ts";
import type { Verb } from "./verb.ts";

export const ledgerVerb: Verb = {
  name: "ledger",
  usage: "ledger SCENARIO [--variant ID] [--json]",
  purpose: "Says where the energy went, device by device, largest first, and what became of the light.",
  options: { json: { type: "boolean", help: "print it as JSON" } },
  run: async ({ scenario, variant, values, context, print }) => {
    const opened = await openDocument(scenario, variant, context);
    if (!opened.ok) return opened;
    const found = await answerBy(workPicture, [opened.value], {});
    if (!found.ok) return found;
    const { name, ledger } = found.value;
    print(
      values.json === true
        ? JSON.stringify({ format: "duskline-ledger", version: 1, ...ledger })
        : ledgerText(name, ledger),
    );
    return { ok: true };
  },
};

function ledgerText(name: string, book: Ledger): string {
  const { share, ...columns } = LOADS;
  const perDay: Column<LedgerLine> = {
    head: "Wh a day",
    cell: ({ totalWh }) => wattHours((totalWh / book.hours) * 24),
  };
  return [
    `${name}: where the energy went in ${book.hours} h`,
    "",
    textTable<LedgerLine>([...book.loads, allLoads(book)], [...Object.values(columns), perDay, share]),
    "",
    textTable(book.harvest, Object.values<Column<HarvestLine>>(HARVEST)),
    "",
    ...book.sources.map(
      (source) =>
        `${source.name}: ${wattHours(source.wh)} Wh${source.fuelL > 0 ? `, ${source.fuelL.toFixed(1)} L of fuel` : ""}`,
    ),
    `Sun offered ${wattHours(book.solarWh)} Wh, of which ${wattHours(book.spilledWh)} Wh were spilled; loads went without ${wattHours(book.unservedWh)} Wh.`,
    `Bank: ${wattHours(book.bankInWh)} Wh in, ${wattHours(book.bankOutWh)} Wh out, ${wattHours(book.bankLossWh)} Wh lost in it; it held ${wattHours(book.storedStartWh)} Wh at the start and ${wattHours(book.storedEndWh)} Wh at the end.`,
  ].join("\n");
}
