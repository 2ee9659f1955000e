import type { Drawing } from "../../drawing/drawing.ts";
import { html, type Markup } from "../../drawing/html.ts";
import type { Box } from "../../drawing/nameRoom.ts";
import { type PlacedLabel, placeLabels, type WantedLabel } from "../../drawing/placeLabels.ts";
import type { Obstacle } from "../../scenario/obstacle.ts";
import { displayUnit, fromDisplay, inUnits } from "../../words/displayUnits.ts";
import { figure, THIN } from "../../words/numbers.ts";
import { boxFootprint } from "./boxFootprint.ts";
import { spotsContours } from "./spotsContours.ts";
import { type SpotsLayout, spotsLayout } from "./spotsLayout.ts";
import type { SpotsPicture } from "./spotsPicture.ts";
import { type SpotRow, spotRows } from "./spotsRows.ts";
import { leadWords, spotsSentence } from "./spotsWords.ts";

/** A map of spots, and where its places lie on it. */
export interface SpotsDrawing extends Drawing {
  readonly layout: SpotsLayout;
}

export const SPOTS_PX: readonly [number, number] = [606, 606];
/** On the ring the lead's name stands towards the south-west, where there is seldom anything else. */
const RING_NAME_DEG = 225;
const SCALE_FOOT_PX = 16;

/** The site as lines of equal watt-hours a day, with what stands about, how far the lead reaches, and the spots that are named. */
export function spotsDrawing(
  picture: SpotsPicture,
  [mostPx, highestPx]: readonly [number, number] = SPOTS_PX,
): SpotsDrawing {
  const layout = spotsLayout(picture, mostPx, highestPx);
  const rows = spotRows(picture.report);
  const names = namesOf(picture, rows, layout);
  const taken = [...names.map(({ box }) => box), ...rows.map((row) => about(row, layout, 10)), ...corners(layout)];
  const lines = spotsContours(picture.report, layout, taken);
  const along = lines.flatMap(({ name, wh }) =>
    name === null
      ? []
      : [
          html`<text class="spots-value" text-anchor="middle" dy="5" transform="translate(${name.x} ${name.y}) rotate(${name.turnDeg})">${String(wh)}</text>`,
        ],
  );
  const { widthPx, heightPx } = layout;
  return {
    body: html`<svg class="spots-map" width="${widthPx}" height="${heightPx}" viewBox="0 0 ${widthPx} ${heightPx}"><rect class="spots-ground" width="${widthPx}" height="${heightPx}"/>${lines.map(({ area }) => html`<path class="spots-area" d="${area}"/>`)}${lines.map(({ line }) => html`<path class="spots-line" d="${line}"/>`)}${picture.obstacles.map((each) => standing(each, layout))}${along}${leadsOf(picture, rows, layout)}${picture.others.map(
      (each) =>
        html`<rect class="spots-panels" x="${layout.x(each.eastM) - 4}" y="${layout.y(each.northM) - 4}" width="8" height="8"/>`,
    )}${rows.map((row) => mark(row, layout))}${names.map(nameAt)}${compass(layout)}${scaleBar(layout)}<rect class="spots-frame" x="0.5" y="0.5" width="${widthPx - 1}" height="${heightPx - 1}"/></svg>`,
    widthPx,
    heightPx,
    label: `The site from above as watt-hours a day of ${picture.report.group.name}. ${spotsSentence(picture)
      .map(({ text }) => text)
      .join("")}`,
    layout,
  };
}

function standing(obstacle: Obstacle, layout: SpotsLayout): Markup | null {
  if (obstacle.kind === "horizon") return null;
  const [x, y] = [layout.x(obstacle.eastM), layout.y(obstacle.northM)];
  if (obstacle.kind === "tree")
    return html`<circle class="spots-crown" cx="${x}" cy="${y}" r="${obstacle.crownRadiusM * layout.pxPerM}"/><circle class="spots-trunk" cx="${x}" cy="${y}" r="${Math.max(2, obstacle.trunkRadiusM * layout.pxPerM)}"/>`;
  const corners = boxFootprint(obstacle).map(
    ({ eastM, northM }) => `${layout.x(eastM).toFixed(1)} ${layout.y(northM).toFixed(1)}`,
  );
  return html`<path class="spots-wall" d="M${corners.join("L")}Z"/>`;
}

/** How far the stated lead reaches, and the leads to where the panels are and to where they would be as good. */
function leadsOf({ report }: SpotsPicture, rows: readonly SpotRow[], layout: SpotsLayout): Markup | null {
  const { reachM } = report.lead;
  if (reachM === null) return null;
  const middle = `M${layout.x(0)} ${layout.y(0)}`;
  const to = ({ eastM, northM }: SpotRow) => `${middle}L${layout.x(eastM).toFixed(1)} ${layout.y(northM).toFixed(1)}`;
  return html`<circle class="spots-reach" cx="${layout.x(0)}" cy="${layout.y(0)}" r="${reachM * layout.pxPerM}"/>${rows.map(
    (row) => html`<path class="${row.name === "here now" ? "spots-lead" : "spots-lead spots-other"}" d="${to(row)}"/>`,
  )}`;
}

/** A filled dot where the panels are, a ring where they would be. */
function mark(row: SpotRow, layout: SpotsLayout): Markup {
  const look = row.name === "here now" ? "spots-here" : "spots-there";
  return html`<circle class="${look}" cx="${layout.x(row.eastM)}" cy="${layout.y(row.northM)}" r="6.5"/>`;
}

const about = ({ eastM, northM }: { eastM: number; northM: number }, layout: SpotsLayout, halfPx: number): Box => ({
  left: layout.x(eastM) - halfPx,
  right: layout.x(eastM) + halfPx,
  top: layout.y(northM) - halfPx,
  bottom: layout.y(northM) + halfPx,
});

/** Where the arrow to the north and the scale stand. */
const corners = ({ widthPx, heightPx }: SpotsLayout): Box[] => [
  { left: widthPx - 48, right: widthPx, top: 0, bottom: 56 },
  { left: 0, right: 140, top: heightPx - 52, bottom: heightPx },
];

type SpotsName = PlacedLabel & { readonly isHeavy: boolean };

/** Names of the spots first, then of what stands about and of the lead, each where there is room. */
function namesOf(picture: SpotsPicture, rows: readonly SpotRow[], layout: SpotsLayout): SpotsName[] {
  const { report, obstacles, others } = picture;
  const wanted = (
    text: string,
    short: string,
    at: { eastM: number; northM: number },
    clearPx: number,
  ): WantedLabel => ({
    text,
    short,
    best: "beside",
    x: layout.x(at.eastM),
    y: layout.y(at.northM),
    clearPx,
  });
  const spots = rows.map((row) => wanted(`${row.name}, ${figure(row.dayWh)}`, figure(row.dayWh), row, 11));
  const things = obstacles.flatMap((each) => {
    const name = each.name ?? each.id;
    return each.kind === "horizon" || !isIn(each, layout) ? [] : [wanted(name, name, each, 9)];
  });
  const panels = others.filter((each) => isIn(each, layout)).map((each) => wanted(each.name, each.name, each, 9));
  const { reachM, statedM } = report.lead;
  const turn = (RING_NAME_DEG * Math.PI) / 180;
  const onRing = reachM === null ? null : { eastM: reachM * Math.sin(turn), northM: reachM * Math.cos(turn) };
  const ring =
    onRing !== null && isIn(onRing, layout)
      ? [wanted(`${leadWords(statedM)} of lead`, leadWords(statedM), onRing, 6)]
      : [];
  const all = [...spots, ...ring, ...panels, ...things];
  const frame = { left: 4, right: layout.widthPx - 4, top: 4, bottom: layout.heightPx - 4 };
  const marks = [...rows, ...others].map((each) => about(each, layout, 8));
  const trunks = obstacles.flatMap((each) => (each.kind === "tree" ? [about(each, layout, 4)] : []));
  const placed = placeLabels(all, frame, [...corners(layout), ...marks, ...trunks]);
  return placed.flatMap((label, k) => (label === null ? [] : [{ ...label, isHeavy: k < spots.length }]));
}

function isIn({ eastM, northM }: { eastM: number; northM: number }, { x, y, widthPx, heightPx }: SpotsLayout): boolean {
  return x(eastM) >= 0 && x(eastM) <= widthPx && y(northM) >= 0 && y(northM) <= heightPx;
}

function nameAt({ text, x, y, anchor, leader, isHeavy }: SpotsName): Markup {
  const look = isHeavy ? "spots-name spots-heavy" : "spots-name";
  return html`${leader !== "" && html`<path class="spots-leader" d="${leader}"/>`}<text class="${look}" x="${x}" y="${y}" text-anchor="${anchor}">${text}</text>`;
}

function compass({ widthPx }: SpotsLayout): Markup {
  return html`<g class="spots-north" transform="translate(${widthPx - 18} 12)"><path d="M0 34V2M-5 10L0 1L5 10"/><text class="spots-name spots-heavy" x="-10" y="32" text-anchor="end">N</text></g>`;
}

/** A stretch of so many whole metres, or feet, as the page shows them. */
function scaleBar({ pxPerM, heightPx }: SpotsLayout): Markup {
  const unit = displayUnit("m");
  const [length] = [5, 10, 20, 50, 100].filter((each) => fromDisplay(each, "m") * pxPerM >= 50);
  const lengthM = fromDisplay(length ?? 100, "m");
  const y = heightPx - SCALE_FOOT_PX;
  const words = unit === "m" ? inUnits(lengthM, "m", 0) : `${length ?? 100}${THIN}${unit}`;
  return html`<path class="spots-scale" d="M16 ${y - 5}v10m0 -5h${lengthM * pxPerM}m0 -5v10"/><text class="spots-name" x="${16 + (lengthM * pxPerM) / 2}" y="${y - 10}" text-anchor="middle">${words}</text>`;
}
