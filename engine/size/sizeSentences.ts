import { inHundred, sampleRange, wilson, Z95 } from "../odds/wilson.ts";
import { localMoment } from "../run/localClock.ts";
import type { Scenario } from "../scenario/scenario.ts";
import type { SizeAxis } from "./sizeAxis.ts";
import type { SizeMap } from "./sizeMap.ts";
import { isSize, missesByLoads, type SizeOutcome, type SizeRow, type SizeTally } from "./sizeTally.ts";

const number = (value: number) => String(Number(value.toPrecision(4)));
const round = (value: number) => value.toFixed(0);

/** A value of one direction of the map, as a person would say it. */
export function sizeWords({ at }: SizeAxis, value: number, scenario: Scenario): string {
  if (at === "bank.blockAh") {
    const { inSeries, inParallel } = scenario.bank;
    const blocks = inSeries * inParallel;
    return blocks === 1 ? `a bank of ${number(value)} Ah` : `${blocks} blocks of ${number(value)} Ah`;
  }
  const [, id, field] = /^panels\.([^.]+)\.(count|module\.ratedW)$/.exec(at) ?? [];
  const group = scenario.panels.find((each) => each.id === id);
  if (group === undefined) return `${at} ${number(value)}`;
  if (field === "module.ratedW") return `${group.count} modules of ${number(value)} W (${group.name})`;
  if (value === 0) return `no modules in ${group.name}`;
  const modules = value === 1 ? "1 module" : `${number(value)} modules`;
  return `${modules} of ${group.module.ratedW} W in ${group.name}`;
}

/** A cell, as a person would say it. */
export function sizeCellWords({ x, y, base }: SizeMap, cell: SizeOutcome): string {
  const across = sizeWords(x, cell.x, base.scenario);
  return y === null ? across : `${across} with ${sizeWords(y, cell.y!, base.scenario)}`;
}

/** A cell that the answer names, and why. */
export interface SizeOption {
  readonly cell: SizeOutcome;
  readonly sentence: string;
}

/** The cheapest and the lightest way to the target; where nothing says what they cost or weigh, the least of both numbers. */
export function sizeOptions({ smallest, cheapest, lightest }: SizeTally, map: SizeMap): SizeOption[] {
  if (cheapest !== null || lightest !== null) {
    const isOne = cheapest !== null && lightest !== null && cheapest.x === lightest.x && cheapest.y === lightest.y;
    const cost = cheapest === null ? "" : `for ${number(cheapest.cost!)}`;
    const mass = lightest === null ? "" : `${number(lightest.massKg!)} kg`;
    if (isOne) {
      const sentence = `Cheapest and lightest that does: ${sizeCellWords(map, cheapest)}, ${cost}, ${mass}.`;
      return [{ cell: cheapest, sentence }];
    }
    return [
      ...(cheapest === null
        ? []
        : [{ cell: cheapest, sentence: `Cheapest that does: ${sizeCellWords(map, cheapest)}, ${cost}.` }]),
      ...(lightest === null
        ? []
        : [{ cell: lightest, sentence: `Lightest that does: ${sizeCellWords(map, lightest)}, ${mass}.` }]),
    ];
  }
  if (smallest === null || map.y === null || !isSize(map.x) || !isSize(map.y)) return [];
  const sentence = `Least of both, measured by what the plan has now: ${sizeCellWords(map, smallest)}. No cheapest or lightest is named, because bring does not say what more of them costs or weighs.`;
  return [{ cell: smallest, sentence }];
}

/** What a map says, in sentences: the answer first. */
export function sizeSentences(report: SizeTally, map: SizeMap): string[] {
  const { rows } = report;
  const { scenario, grid } = map.base;
  const end = localMoment(grid, grid.startMs + grid.steps * grid.stepMs).words;
  const target = report.targetShare === 1 ? "every sky" : `${number(100 * report.targetShare)} of 100 skies`;
  const cellWords = (cell: SizeOutcome) => sizeCellWords(map, cell);
  const oddsWords = ({ holds }: SizeOutcome) =>
    `${inHundred(holds.share)} of 100, ${sampleRange(holds, " to ")} by the size of the sample`;
  const all = rows.flatMap((row) => row.cells);
  const said: string[] = [];
  const { smallest } = report;
  const areSizes = isSize(map.x) && (map.y === null || isSize(map.y));
  if (smallest === null) {
    const best = all.reduce((most, cell) => (cell.holds.count > most.holds.count ? cell : most));
    said.push(
      `No ${areSizes ? "size" : "cell"} looked at holds to ${end} in ${target}; the best is ${cellWords(best)} (${oddsWords(best)}). ${areSizes ? "Look at larger ones, or take something off the loads." : "Look at other values."}`,
    );
  } else {
    const row = map.y === null ? rows[0]! : presentRow(report);
    const where = map.y === null || row === null ? "" : `With ${sizeWords(map.y, row.y!, scenario)}, as now, `;
    const hold = `hold to ${end} in ${target}`;
    if (row?.smallest === null) said.push(`${where}nothing looked at holds to ${end} in ${target}.`);
    else if (row !== null && isSize(map.x)) {
      const takes = `it takes ${sizeWords(map.x, row.smallest.x, scenario)} to ${hold} (${oddsWords(row.smallest)}).`;
      said.push(capital(where + takes));
    } else if (row !== null) {
      const present = map.y === null ? "" : `${sizeWords(map.y, row.y!, scenario)}, as now, and `;
      said.push(`With ${present}${rangeWords(map.x, row)}, the bank holds to ${end} in ${target}.`);
    } else if (areSizes) said.push(`To ${hold} it takes ${cellWords(smallest)} (${oddsWords(smallest)}).`);
    said.push(...sizeOptions(report, map).map(({ sentence }) => sentence));
    if (all.every((cell) => cell.meets)) {
      said.push(areSizes ? "Every size looked at does; look at smaller ones." : "Every value looked at does.");
    }
  }
  for (const row of rows.filter((each) => isSize(map.x) && each.failsAgainAt.length > 0)) {
    const where = map.y === null ? "" : `With ${sizeWords(map.y, row.y!, scenario)}, `;
    said.push(
      `${where}${map.x.at} ${row.failsAgainAt.map(number).join(", ")} fails where the smaller ${number(row.smallest!.x)} does not: one of the cases in which more does not mean better (generator, disconnect, selector, volts).`,
    );
  }
  const darkest = all.filter((cell) => missesByLoads(cell, report.targetShare));
  if (darkest.length > 0) {
    said.push(
      `Marked *: the charge keeps its reserve often enough, but loads go without (disconnect, current or cold), so ${darkest.length === 1 ? "that size is" : "those sizes are"} not counted as enough.`,
    );
  }
  said.push(...sampleWords(report));
  said.push(...handbookWords(report, map));
  return said;
}

const capital = (text: string) => text.charAt(0).toUpperCase() + text.slice(1);

/** Which values of x meet the target in a row, for fields of which more may be worse. */
function rangeWords({ at }: SizeAxis, { smallest, largest, cells }: SizeRow): string {
  const [low, high] = [smallest!.x, largest!.x];
  const missing = cells.filter((cell) => cell.x > low && cell.x < high && !cell.meets).map((cell) => number(cell.x));
  const but = missing.length > 0 ? `, but not ${missing.join(", ")}` : "";
  return low === high ? `${at} ${number(low)}` : `${at} from ${number(low)} to ${number(high)}${but}`;
}

/** The row that stands as the scenario has it now. */
function presentRow(report: SizeTally): SizeRow | null {
  return report.rows.find((row) => row.y !== null && row.y === report.y?.present) ?? null;
}

/** What the sample can show. */
function sampleWords({ targetShare, membersToShow, members }: SizeTally): string[] {
  if (membersToShow === null) {
    const left = 100 * (1 - wilson(members, members).low);
    const bound = Math.ceil((Z95 * Z95 * 0.999) / 0.001);
    return [
      `No sample shows 100 in 100: ${members} members without a failure leave room for ${left.toPrecision(2)} in 100, and it takes ${bound} to bring that under 1 in 1000. A size counts as enough here when no member fails.`,
    ];
  }
  if (members >= membersToShow) return [];
  return [
    `${members} members are too few to show ${number(100 * targetShare)} in 100 even where none fails; that takes ${membersToShow}.`,
  ];
}

/** A plan that wants nothing has a handbook's bank of 0 Ah, and nothing is so many times that. */
const LEAST_HANDBOOK_AH = 0.5;

function handbookWords(report: SizeTally, map: SizeMap): string[] {
  const { handbook } = report;
  const { bank } = map.base.scenario;
  const cold =
    handbook.temperatureFactor > 1
      ? `, times ${handbook.temperatureFactor.toFixed(2)} for lead at ${round(handbook.coldestBankC)} °C`
      : "";
  const said = [
    `By the handbook, no sun counted: ${number(handbook.autonomyDays)} ${handbook.autonomyDays === 1 ? "day" : "days"} at ${round(handbook.dailyAh)} Ah a day, used down to the ${round(100 * (1 - handbook.maxDepthShare))} % reserve${cold}, ask for ${round(handbook.bankAh)} Ah at ${bank.nominalV} V.`,
  ];
  const eventDays = (map.base.grid.steps * map.base.grid.stepH) / 24;
  if (eventDays > 1.05 * handbook.autonomyDays) {
    said.push(
      `The event lasts ${eventDays.toFixed(1)} days: a bank that bridged all of it without sun would have ${round((handbook.bankAh * eventDays) / handbook.autonomyDays)} Ah.`,
    );
  }
  const isAh = map.x.at === "bank.blockAh";
  const found = (map.y === null ? report.rows[0] : presentRow(report))?.smallest;
  if (isAh && found != null) {
    const mapAh = found.x * bank.inParallel;
    const ratio = mapAh / handbook.bankAh;
    const size =
      handbook.bankAh < LEAST_HANDBOOK_AH
        ? ""
        : ratio > 1.1
          ? `, ${ratio.toFixed(1)} times the handbook's`
          : ratio < 0.9
            ? `, ${round(100 * ratio)} % of the handbook's`
            : ", about the handbook's";
    said.push(`The map asks for ${number(mapAh)} Ah with the panels as they are${size}.`);
  }
  return said;
}
