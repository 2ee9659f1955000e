import { type HarvestLine, type LedgerLine, ledger } from "../run/ledger.ts";
import { tracePrepared } from "../run/trace.ts";
import { percent, wattHours } from "./figures.ts";
import { openPrepared } from "./openScenario.ts";
import { textTable } from "./textTable.ts";
import type { Verb } from "./verb.ts";

export const ledgerVerb: Verb = {
  name: "ledger",
  usage: "ledger SCENARIO [--variant ID] [--json]",
  purpose: "Says where the energy went, device by device, largest first, and what became of the light.",
  options: { json: { type: "boolean", help: "print it as JSON" } },
  run: async ({ scenario, variant, values, print }) => {
    const opened = await openPrepared(scenario, variant);
    if (!opened.ok) return opened;
    const book = ledger(tracePrepared(opened.value));
    if (values.json === true) {
      print(JSON.stringify({ format: "duskline-ledger", version: 1, ...book }));
      return { ok: true };
    }
    const perDay = (wh: number) => wattHours((wh / book.hours) * 24);
    print(
      [
        `${opened.value.scenario.name}: where the energy went in ${book.hours} h`,
        "",
        textTable<LedgerLine>(
          [
            ...book.loads,
            {
              id: "sum",
              name: "All loads",
              alwaysWh: book.alwaysWh,
              usedWh: book.usedWh,
              totalWh: book.alwaysWh + book.usedWh,
              share: 1,
            },
          ],
          [
            { head: "load", cell: (line) => line.name, isWords: true },
            { head: "always on Wh", cell: (line) => wattHours(line.alwaysWh) },
            { head: "when used Wh", cell: (line) => wattHours(line.usedWh) },
            { head: "total Wh", cell: (line) => wattHours(line.totalWh) },
            { head: "Wh a day", cell: (line) => perDay(line.totalWh) },
            { head: "share", cell: (line) => percent(line.share) },
          ],
        ),
        "",
        textTable<HarvestLine>(book.harvest, [
          { head: "panels", cell: (line) => line.name, isWords: true },
          { head: "unshaded Wh", cell: (line) => wattHours(line.unshadedWh) },
          { head: "shade took", cell: (line) => wattHours(line.shadeLossWh) },
          { head: "at the bank", cell: (line) => wattHours(line.offeredWh) },
          { head: "lost in modules", cell: (line) => wattHours(line.lossesWh) },
          { head: "cable", cell: (line) => wattHours(line.cableLossWh) },
          { head: "controller", cell: (line) => wattHours(line.controllerLossWh) },
          { head: "over its limit", cell: (line) => wattHours(line.limitedWh) },
        ]),
        "",
        ...book.sources.map(
          (source) =>
            `${source.name}: ${wattHours(source.wh)} Wh${source.fuelL > 0 ? `, ${source.fuelL.toFixed(1)} L of fuel` : ""}`,
        ),
        `Sun offered ${wattHours(book.solarWh)} Wh, of which ${wattHours(book.spilledWh)} Wh were spilled; loads went without ${wattHours(book.unservedWh)} Wh.`,
        `Bank: ${wattHours(book.bankInWh)} Wh in, ${wattHours(book.bankOutWh)} Wh out, ${wattHours(book.bankLossWh)} Wh lost in it; it held ${wattHours(book.storedStartWh)} Wh at the start and ${wattHours(book.storedEndWh)} Wh at the end.`,
      ].join("\n"),
    );
    return { ok: true };
  },
};
