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
            { title: "load", cell: (line) => line.name, align: "left" },
            { title: "always on Wh", cell: (line) => wattHours(line.alwaysWh) },
            { title: "when used Wh", cell: (line) => wattHours(line.usedWh) },
            { title: "total Wh", cell: (line) => wattHours(line.totalWh) },
            { title: "Wh a day", cell: (line) => perDay(line.totalWh) },
            { title: "share", cell: (line) => percent(line.share) },
          ],
        ),
        "",
        textTable<HarvestLine>(book.harvest, [
          { title: "panels", cell: (line) => line.name, align: "left" },
          { title: "unshaded Wh", cell: (line) => wattHours(line.unshadedWh) },
          { title: "shade took", cell: (line) => wattHours(line.shadeLossWh) },
          { title: "at the bank", cell: (line) => wattHours(line.offeredWh) },
          { title: "lost in modules", cell: (line) => wattHours(line.lossesWh) },
          { title: "cable", cell: (line) => wattHours(line.cableLossWh) },
          { title: "controller", cell: (line) => wattHours(line.controllerLossWh) },
          { title: "over its limit", cell: (line) => wattHours(line.limitedWh) },
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
