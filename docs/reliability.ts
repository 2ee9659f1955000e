import { readFileSync } from "node:fs";
import {
  CLASSES,
  cameUnder,
  type Fed,
  heldByOdds,
  type KeptReliability,
  overRecords,
} from "../tests/truth/climate/reliabilityTable.ts";
import { SEASONS, STATED } from "../tests/truth/climate/windowReliability.ts";
import { mdTable } from "./mdTable.ts";

const percent = (share: number) => `${Math.round(100 * share)}`;
const FED: readonly { readonly fed: Fed; readonly plans: "plansByPosition" | "plansByOwn"; readonly name: string }[] = [
  { fed: "position", plans: "plansByPosition", name: "position alone" },
  { fed: "own", plans: "plansByOwn", name: "the site's own figures" },
];

export function keptReliability(): KeptReliability {
  return JSON.parse(readFileSync(new URL("../tests/truth/data/reliability.json", import.meta.url), "utf8"));
}

/** The chapter of the accuracy page that says how often what is stated comes. */
export function reliabilityText(kept: KeptReliability): string {
  const windows = overRecords(kept, "own").reduce((sum, one) => sum + one.windows, 0);
  return [
    "## Does it come as often as it is stated?",
    `Every four days running of ${kept.records.length} long records (${windows.toLocaleString("en")} of them) are held against the light that drawn members have on the same dates: were every stated share true, a tenth of the real ones would lie under the members' lowest tenth, half under their middle. *Position alone*: the climate tables with everything within 30 km of the record left out. *The site's own figures*: mean, spread and correlation of the record, month by month. Below them plans: 100 W of panel on the level, an LFP bank of 50 Ah that starts at 60 % and a steady load, four days in the middle of January, April, July and October, with odds between 5 and 95 of 100, each run through the same dates of every year of the record.`,
    "![Two reliability diagrams. Left: the share of real four-day windows under each stated share of the members. Right: how often plans held, by their odds. On the diagonal what is stated comes](pictures/reliability.svg)",
    mdTable(
      ["of 100 four-day windows, duller than the stated share of members", ...STATED.map((share) => percent(share))],
      FED.flatMap(({ fed, name }) => [
        [`**all records, ${name}**`, ...cameUnder(overRecords(kept, fed)).map(percent)],
        ...CLASSES.map(({ name: kind, ids }) => [
          `${kind}, ${name}`,
          ...cameUnder(overRecords(kept, fed, ids)).map(percent),
        ]),
      ]),
    ),
    mdTable(
      ["of 100 windows under the lowest tenth", ...SEASONS],
      FED.flatMap(({ fed, name }) =>
        CLASSES.map(({ name: kind, ids }) => [
          `${kind}, ${name}`,
          ...overRecords(kept, fed, ids).map((season) => percent(season.under[0]! / season.windows)),
        ]),
      ),
    ),
    mdTable(
      ["odds of plans, of 100", ...FED.flatMap(({ name }) => [`stated, ${name}`, "held", "plans × years"])],
      binRows(kept),
    ),
    "Worked out by `npx tsx docs/fits/climate.ts`; what is behind it, and where it fails: [the fit](fits/climate.md).",
  ].join("\n\n");
}

function binRows(kept: KeptReliability): string[][] {
  const columns = FED.map(({ plans }) => heldByOdds(kept.records.flatMap((one) => one[plans])));
  return columns[0]!.map(({ from, to }, k) => [
    `${percent(from)} to ${percent(to)}`,
    ...columns.flatMap((bins) => {
      const { stated, held, plans, years } = bins[k]!;
      return [percent(stated), percent(held), `${plans} × ${Math.round(years / Math.max(1, plans))}`];
    }),
  ]);
}

const SIDE = 300;
const MARGIN = 56;
const GAP = 70;
const MARKS = [0, 0.25, 0.5, 0.75, 1];

/** The two diagrams as SVG that is legible on white and on dark paper; no script, no font of its own. */
export function reliabilitySvg(kept: KeptReliability): string {
  const width = 2 * SIDE + 2 * MARGIN + GAP;
  const height = SIDE + 2 * MARGIN + 24;
  const windows = FED.map(({ fed, name }) => ({
    name,
    points: STATED.map((stated, k) => ({ stated, came: cameUnder(overRecords(kept, fed))[k]! })),
  }));
  const plans = FED.map(({ plans: which, name }) => ({
    name,
    points: heldByOdds(kept.records.flatMap((one) => one[which]))
      .filter(({ years }) => years > 0)
      .map(({ stated, held }) => ({ stated, came: held })),
  }));
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${width} ${height}" width="${width}" height="${height}" role="img" font-family="sans-serif" font-size="13">`,
    "<title>What was stated and what came, of 100</title>",
    `<rect width="${width}" height="${height}" fill="#fff"/>`,
    panel(MARGIN, "Four days running: duller than stated", windows),
    panel(MARGIN + SIDE + GAP, "Plans: held, by their odds", plans),
    "</svg>",
    "",
  ].join("\n");
}

interface Line {
  readonly name: string;
  readonly points: readonly { readonly stated: number; readonly came: number }[];
}

function panel(left: number, title: string, lines: readonly Line[]): string {
  const x = (share: number) => (left + share * SIDE).toFixed(1);
  const y = (share: number) => (MARGIN + (1 - share) * SIDE).toFixed(1);
  const marks = MARKS.flatMap((mark) => [
    `<path d="M${x(mark)} ${y(0)}V${y(1)}M${x(0)} ${y(mark)}H${x(1)}" stroke="#ddd" fill="none"/>`,
    `<text x="${x(mark)}" y="${Number(y(0)) + 18}" text-anchor="middle" fill="#333">${percent(mark)}</text>`,
    `<text x="${Number(x(0)) - 8}" y="${Number(y(mark)) + 4}" text-anchor="end" fill="#333">${percent(mark)}</text>`,
  ]);
  return [
    `<text x="${x(0)}" y="${MARGIN - 18}" font-weight="bold" fill="#111">${title}</text>`,
    ...marks,
    `<path d="M${x(0)} ${y(0)}L${x(1)} ${y(1)}" stroke="#888" stroke-dasharray="4 4" fill="none"/>`,
    ...lines.map(({ points }, k) =>
      drawnLine(
        points.map(({ stated, came }) => [x(stated), y(came)] as const),
        k,
      ),
    ),
    ...lines.map(({ name }, k) => {
      const at = Number(y(0)) - 34 + 18 * k;
      const from = left + 0.42 * SIDE;
      return `${drawnLine([[from.toFixed(1), at.toFixed(1)]], k)}<text x="${(from + 12).toFixed(1)}" y="${at + 4}" fill="#111">${name}</text>`;
    }),
    `<text x="${left + SIDE / 2}" y="${Number(y(0)) + 38}" text-anchor="middle" fill="#333">stated, of 100</text>`,
    `<text x="${left - 40}" y="${MARGIN + SIDE / 2}" text-anchor="middle" fill="#333" transform="rotate(-90 ${left - 40} ${MARGIN + SIDE / 2})">came, of 100</text>`,
  ].join("\n");
}

/** Told apart by shape as well as by colour: circles joined by a line, squares joined by dashes. */
function drawnLine(points: readonly (readonly [string, string])[], which: number): string {
  const path = points.map(([px, py], k) => `${k === 0 ? "M" : "L"}${px} ${py}`).join("");
  const colour = which === 0 ? "#b3400f" : "#0b5394";
  const dash = which === 0 ? "" : ' stroke-dasharray="7 3"';
  const dots = points.map(([px, py]) =>
    which === 0
      ? `<circle cx="${px}" cy="${py}" r="4.5" fill="${colour}"/>`
      : `<rect x="${Number(px) - 4}" y="${Number(py) - 4}" width="8" height="8" fill="${colour}"/>`,
  );
  return `<path d="${path}" stroke="${colour}" stroke-width="2" fill="none"${dash}/>${dots.join("")}`;
}
