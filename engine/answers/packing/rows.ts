import { csvText } from "../../csvText.ts";
import type { PackedSet } from "../../packing/packingReport.ts";
import type { PackLine } from "../../packing/packList.ts";
import { PACK_ORDERS, type PackOrder } from "../../packing/thingPrice.ts";
import { displayUnit } from "../../words/displayUnits.ts";
import { inHundred } from "../../words/oddsWords.ts";
import { type Column, csvRowsOf } from "../column.ts";
import type { PackingPicture } from "./packingPicture.ts";
import { remarkOf, setWords, totalCell, totalFigure, totalHead } from "./packingWords.ts";

/** A set of the frontier with its place there. */
export interface FrontierRow {
  readonly set: PackedSet;
  readonly place: number;
}

const total = <Row>(order: PackOrder, of: (row: Row) => PackedSet): Column<Row> => ({
  get head() {
    return totalHead(order); // as the unit is shown when it is read
  },
  cell: (row) => totalCell(of(row).totals, order),
  raw: (row) => totalCell(of(row).totals, order),
});

/** The frontier as a table. */
export function frontierColumns(picture: PackingPicture): Column<FrontierRow>[] {
  return [
    {
      head: "None is less in every respect than these",
      cell: ({ set, place }) => `${place + 1}. ${setWords(set, picture.things)}`,
      isWords: true,
    },
    { head: "holds", cell: ({ set }) => (set.holds === null ? "" : inHundred(set.holds)) },
    ...PACK_ORDERS.map((order) => total<FrontierRow>(order, ({ set }) => set)),
    { head: "remark", cell: ({ set, place }) => remarkOf(set, place, picture), isWords: true },
  ];
}

export const frontierRows = ({ report }: PackingPicture): FrontierRow[] =>
  report.frontier.map((set, place) => ({ set, place }));

const OUTCOMES = { reaches: "reaches it", fails: "fails", beaten: "not run" } as const;

/** Every set for a sheet of one's own; of sets that are too many to be told, the frontier. Shares run 0 to 1, masses are kg. */
export function packingCsv(picture: PackingPicture): string {
  const { report, things } = picture;
  const rows = report.sets ?? report.frontier;
  const columns: Column<PackedSet>[] = [
    ...things.map((thing, t): Column<PackedSet> => ({ head: thing.name, cell: ({ take }) => String(take[t]!) })),
    { head: "holds", cell: ({ holds }) => holds?.share.toFixed(4) ?? "not run to the end" },
    ...PACK_ORDERS.flatMap((order): Column<PackedSet>[] => [
      {
        head: { mass: "kg", minutes: "min", money: "money" }[order],
        cell: ({ totals }) => (isUnsaid(totals[order]) ? "not stated" : String(totals[order].sum)),
      },
      {
        head: `${{ mass: "kg", minutes: "min", money: "money" }[order]} not stated of`,
        cell: ({ totals }) => String(totals[order].notStated),
      },
    ]),
    { head: "target", cell: ({ outcome }) => OUTCOMES[outcome] },
    { head: "within the limits", cell: (set) => (set.isWithin ? "yes" : "no") },
    { head: "frontier", cell: ({ key }) => placeOf(picture, key) },
  ];
  return csvText(csvRowsOf(columns, rows));
}

const isUnsaid = ({ sum, notStated }: PackedSet["totals"]["mass"]) => sum === 0 && notStated > 0;

function placeOf({ report }: PackingPicture, key: number): string {
  const place = report.frontier.findIndex((set) => set.key === key);
  return place < 0 ? "" : String(place + 1);
}

/** What to pack, and what stays, line by line. */
export const LIST_COLUMNS: readonly Column<PackLine>[] = [
  { head: "what", cell: ({ name }) => name, isWords: true },
  { head: "how many", cell: ({ count }) => String(count) },
  {
    get head() {
      return displayUnit("kg");
    },
    cell: ({ massKg, isTypical }) =>
      massKg === null ? "not stated" : `${totalFigure(massKg, "mass")}${isTypical ? ", usual" : ""}`,
  },
  { head: "who brings", cell: ({ who }) => who ?? "not stated", isWords: true },
];
