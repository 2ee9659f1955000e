import type { MeterMapping, MeterQuantity } from "./meterMapping.ts";
import { isClockOnly, isDated, isEpoch } from "./meterTime.ts";
import { unitOf } from "./meterUnits.ts";

const WORDS = {
  bank: ["bat", "batt", "battery", "bank", "shunt", "batterie", "akku", "accu", "main"],
  pv: ["pv", "solar", "panel", "panels", "array", "sun", "module"],
  load: ["load", "loads", "consumption", "consumers", "demand", "verbrauch", "last", "house"],
  volts: ["v", "volt", "volts", "voltage", "spannung"],
  amperes: ["a", "amp", "amps", "ampere", "amperes", "current", "strom"],
  watts: ["w", "watt", "watts", "power", "leistung"],
  charge: ["%", "soc", "charge", "ladezustand", "percent"],
  ampereHours: ["ah", "amphours", "amperehours"],
} as const;

/** A title as its words in lower case, its unit by the plain one: "PV power (mW)" gives pv, power, w. */
function wordsOf(title: string, unit: string | null): string[] {
  const said = unit === null ? title : `${title.replace(unit, " ")} ${unit.replace(/^[mkMµu](?=[AVWavw])/, "")}`;
  return said
    .replace(/([a-z])([A-Z])/g, "$1 $2")
    .toLowerCase()
    .replace(/amp(ere)?[\s-]*hours?/g, "ah")
    .split(/[^\p{L}%]+/u)
    .filter((word) => word !== "");
}

/**
 * Suggests which column holds what, from the titles' words and, for times, from the first cells.
 * @param sample some rows of data; @param units what a row of units under the titles says
 */
export function suggestColumns(
  titles: readonly string[],
  sample: readonly (readonly string[])[],
  units: readonly string[] = [],
): NonNullable<MeterMapping["columns"]> {
  const found: NonNullable<MeterMapping["columns"]> = {};
  const share = (column: number, test: (cell: string) => boolean) => {
    const cells = sample.map((row) => row[column] ?? "").filter((cell) => cell.trim() !== "");
    return cells.length === 0 ? 0 : cells.filter(test).length / cells.length;
  };
  const times = titles.map((_, c) => c).filter((c) => share(c, (cell) => isDated(cell) || isEpoch(cell)) > 0.6);
  const named = times.find((c) =>
    wordsOf(titles[c]!, null).some((word) => /^(time|date|timestamp|datetime|zeit|datum|epoch)/.test(word)),
  );
  const first = named ?? times[0];
  const clock = titles.findIndex((_, c) => share(c, isClockOnly) > 0.6);
  if (clock >= 0 && first !== undefined && share(first, (cell) => isDated(cell) && !/:/.test(cell)) > 0.6) {
    found.date = titles[first]!;
    found.time = titles[clock]!;
  } else if (first !== undefined) found.time = titles[first]!;

  const take = (quantity: MeterQuantity, title: string) => {
    if (found[quantity] === undefined) found[quantity] = title;
  };
  // Columns that name the bank go before those that name nothing.
  for (const isNamed of [true, false]) {
    for (const [c, title] of titles.entries()) {
      if (title === found.time || title === found.date) continue;
      const unit = units[c] || unitOf(title);
      // Watt-hours are no watts, however much the title speaks of power.
      if (unit !== null && /wh$/i.test(unit)) continue;
      const words = wordsOf(title, unit);
      const has = (list: readonly string[]) => words.some((word) => list.includes(word));
      const [pv, load] = [has(WORDS.pv), has(WORDS.load)];
      const bank = !pv && !load;
      if (bank && has(WORDS.bank) !== isNamed) continue;
      if (!bank && !isNamed) continue;
      if (has(WORDS.ampereHours)) {
        if (bank) take("usedAh", title);
      } else if (bank && (words.includes("%") || has(["soc", "ladezustand", "percent"]))) take("charge", title);
      else if (has(WORDS.volts)) {
        if (bank) take("bankV", title);
      } else if (has(WORDS.amperes)) {
        if (bank) take("bankA", title);
        else if (load) take("loadA", title);
      } else if (has(WORDS.watts)) take(pv ? "pvW" : load ? "loadW" : "bankW", title);
      else if (bank && has(WORDS.charge)) take("charge", title);
    }
  }
  // A column that says panels or load, and not of what, holds watts on every controller's own log.
  for (const [c, title] of titles.entries()) {
    if (Object.values(found).includes(title) || units[c]) continue;
    const words = wordsOf(title, null);
    if (words.length !== 1) continue;
    if (WORDS.pv.some((word) => word === words[0])) take("pvW", title);
    else if (WORDS.load.some((word) => word === words[0])) take("loadW", title);
  }
  return found;
}
