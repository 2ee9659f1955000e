import { csvText } from "../../csvText.ts";
import { REACH_ORDERS, type ReachOrder } from "../../reach/reachOrder.ts";
import type { ReachReport, ReachRow, ReachWay } from "../../reach/reachReport.ts";
import { inHundred } from "../../words/oddsWords.ts";
import { type Column, csvRowsOf } from "../column.ts";
import { besideWords, partWords, priceCell, priceFigure, priceHead, wayWords } from "./reachWords.ts";

const four = (value: number) => value.toFixed(4);

/** One of the four figures of a price, for rows of one lever and of several. */
function price<Row extends Pick<ReachRow, "price">>(order: ReachOrder): Column<Row> {
  return {
    get head() {
      return priceHead(order); // as the unit is shown when it is read
    },
    cell: (row) => priceCell(row.price, order),
    raw: (row) => {
      const value = priceFigure(row.price, order);
      return value === null ? "not stated" : String(Number(value.toPrecision(6)));
    },
  };
}
export const prices = <Row extends Pick<ReachRow, "price">>() => REACH_ORDERS.map((order) => price<Row>(order));

const HOLDS = {
  head: "holds",
  cell: ({ holds }: Pick<ReachRow, "holds">) => inHundred(holds),
  raw: ({ holds }: Pick<ReachRow, "holds">) => four(holds.share),
};

/** One lever by itself. */
export const ALONE = {
  name: { head: "One thing alone", cell: ({ name }) => name, isWords: true },
  words: { head: "How much", cell: ({ words }) => words, isWords: true },
  holds: HOLDS,
  next: {
    head: "Next smaller",
    cell: ({ reaches, holds, next }) => (reaches ? besideWords({ holds, next }) : ""),
    raw: ({ next }) => four(next.holds.share),
  },
  lock: { head: "Locked", cell: ({ isLocked }) => (isLocked ? "locked" : ""), isWords: true },
  why: { head: "Why", cell: ({ why }) => why, isWords: true },
} satisfies Record<string, Column<ReachRow>>;

/** What can be left away, and what may not. */
export const SPARE = {
  name: { ...ALONE.name, head: "What can stay at home" },
  words: ALONE.words,
  holds: HOLDS,
  next: { head: "One further", cell: ({ reaches, holds, next }) => (reaches ? besideWords({ holds, next }) : "") },
} satisfies Record<string, Column<ReachRow>>;

/** Several levers together. */
export const TOGETHER = {
  name: { head: "Together", cell: wayWords, isWords: true },
  holds: HOLDS,
} satisfies Record<string, Column<ReachWay>>;

/** Every row for a sheet of one's own: shares run 0 to 1, what is not stated says so. */
export function reachCsv({ alone, pairs, threes, spare, base, targetShare }: ReachReport): string {
  const id: Column<ReachRow> = { head: "lever", cell: (row) => row.id };
  const reaches: Column<ReachRow> = { head: "reaches the target", cell: (row) => (row.reaches ? "yes" : "no") };
  const rows = alone.length > 0 ? alone : spare;
  const ways: Column<ReachWay>[] = [
    { head: "levers", cell: ({ parts }) => parts.map((part) => part.id).join(" + ") },
    { ...TOGETHER.name, cell: ({ parts }) => parts.map(partWords).join(" + ") },
    TOGETHER.holds,
    ...prices<ReachWay>(),
  ];
  return csvText([
    ["holds as it stands", four(base.share), "target", four(targetShare), "members", String(base.of)],
    [],
    ...csvRowsOf([id, ...Object.values<Column<ReachRow>>(ALONE), reaches, ...prices<ReachRow>()], rows),
    ...(pairs.length + threes.length > 0 ? [[], ...csvRowsOf(ways, [...pairs, ...threes])] : []),
  ]);
}
