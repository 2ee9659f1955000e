import type { Price } from "../../reach/lever.ts";
import { inside } from "../../reach/openPanels.ts";
import type { ReachOrder } from "../../reach/reachOrder.ts";
import type { ReachReport, ReachRow, ReachWay } from "../../reach/reachReport.ts";
import { displayUnit, toDisplay } from "../../words/displayUnits.ts";
import type { Look } from "../../words/look.ts";
import { figure } from "../../words/numbers.ts";
import { inHundred } from "../../words/oddsWords.ts";
import type { Words } from "../../words/said.ts";

export const ORDER_WORDS: Readonly<Record<ReachOrder, string>> = {
  money: "money",
  mass: "weight",
  minutes: "minutes",
  hours: "hours on the air",
};

const LEAST: Readonly<Record<ReachOrder, string>> = {
  money: "The cheapest",
  mass: "The lightest",
  minutes: "The least work",
  hours: "The one that keeps most hours on the air",
};

const NUMBERS = [
  "none",
  "one",
  "two",
  "three",
  "four",
  "five",
  "six",
  "seven",
  "eight",
  "nine",
  "ten",
  "eleven",
  "twelve",
];
const numberWords = (count: number) => NUMBERS[count] ?? String(count);
const capital = (text: string) => text.charAt(0).toUpperCase() + text.slice(1);

/** "A bigger bank, 440 Ah, was 280" */
export const partWords = ({ name, words }: { readonly name: string; readonly words: string }) =>
  words === "" ? name : `${name}: ${words}`;

/** "2 of 120 W, folding panels in the meadow + fridge at home" */
export const wayWords = ({ parts }: ReachWay) => parts.map(partWords).join(" + ");

/** Levers that do it by themselves and may be talked about; a smaller reserve is a choice and stands for none. */
export const openRows = ({ alone }: ReachReport): ReachRow[] =>
  alone.filter(({ reaches, isLocked, kind }) => reaches && !isLocked && kind !== "reserve");

const heavy = (text: string): Words => ({ text, as: "figure" });
const of100 = (holds: { readonly share: number }) => heavy(`${inHundred(holds)} of 100`);

/** The answer in two or three sentences. */
export function reachSentence(report: ReachReport, name: string, look: Look): Words[] {
  const { base, targetShare } = report;
  const target = `${figure(100 * targetShare, 1)} of 100`;
  const now: Words[] = [{ text: name, as: look }, { text: " holds in " }, of100(base), { text: " skies" }];
  if (report.reaches) return [...now, { text: `, and ${target} are asked for. ` }, ...spareWords(report)];
  return [...now, { text: `; ${target} are asked for. ` }, ...cureWords(report)];
}

function cureWords(report: ReachReport): Words[] {
  const rows = openRows(report);
  if (rows.length > 0) {
    const [first] = rows;
    const count =
      rows.length === 1
        ? "One thing does it by itself"
        : `${capital(numberWords(rows.length))} things do it, each by itself`;
    const isStated = priceFigure(first!.price, report.order) !== null;
    const which = rows.length === 1 ? "" : isStated ? `. ${LEAST[report.order]}` : ". The first of them";
    return [
      { text: `${count}${which}: ` },
      heavy(inside(partWords(first!))),
      { text: ", " },
      of100(first!.holds),
      { text: "." },
    ];
  }
  if (report.isOpen.together) return [{ text: "No one thing does it; what two do together is being worked out." }];
  const [way] = [...report.pairs, ...report.threes];
  if (way !== undefined) {
    const together =
      way.parts.length === 2 ? "No one thing does it, but two together do: " : "It takes three things together: ";
    return [{ text: together }, heavy(inside(wayWords(way))), { text: ", " }, of100(way.holds), { text: "." }];
  }
  const nearest = nearestRow(report);
  if (nearest === null) return [{ text: "Nothing here brings it any nearer." }];
  return [
    { text: "Nothing here reaches it; the nearest is " },
    heavy(inside(partWords(nearest))),
    { text: ", " },
    of100(nearest.holds),
    { text: "." },
  ];
}

/** What comes nearest to the target of what may be talked about. */
export function nearestRow({ alone }: ReachReport): ReachRow | null {
  const open = alone.filter(({ isLocked, kind, reaches }) => !isLocked && kind !== "reserve" && !reaches);
  return open.reduce<ReachRow | null>(
    (best, row) => (best === null || row.holds.count > best.holds.count ? row : best),
    null,
  );
}

function spareWords({ spare }: ReachReport): Words[] {
  const can = spare.filter(({ reaches }) => reaches);
  if (can.length === 0) return [{ text: "Nothing of it can stay at home." }];
  const more =
    can.length === 1
      ? "One thing can stay at home or be left undone: "
      : "What can stay at home or be left undone, first of all: ";
  return [{ text: more }, heavy(inside(partWords(can[0]!))), { text: ", " }, of100(can[0]!.holds), { text: "." }];
}

/**
 * How often the amount beside one that reaches the target holds. Where both would round to the same, a tenth tells them apart: 94.9 beside 95 does
 * not reach it.
 */
export function besideWords({ holds, next }: Pick<ReachRow, "holds" | "next">): string {
  const rounded = inHundred(next.holds);
  return rounded === inHundred(holds) ? figure(100 * next.holds.share, 1) : rounded;
}

/** One of the four figures of a price; null where it is not stated. */
export function priceFigure({ cost, massKg, minutes, onAirH }: Price, order: ReachOrder): number | null {
  if (order === "money") return cost;
  if (order === "mass") return massKg;
  return order === "minutes" ? minutes : onAirH;
}

/** "435", "−30", "not stated"; weights in the unit that is shown. */
export function priceCell(price: Price, order: ReachOrder): string {
  const value = priceFigure(price, order);
  if (value === null) return "not stated";
  if (order === "mass") return figure(toDisplay(value, "kg"), Math.abs(value) < 10 ? 1 : 0);
  return figure(value, order === "hours" ? 1 : 0);
}

/** What stands over each figure of a price. */
export function priceHead(order: ReachOrder): string {
  if (order === "mass") return displayUnit("kg");
  return { money: "money", minutes: "min", hours: "on air, h" }[order];
}
