import { For } from "solid-js";
import {
  ODDS_HEIGHT_PX,
  ODDS_LEFT_PX,
  oddsAnchor,
  oddsRows,
  oddsRowWords,
  oddsX,
} from "../../../engine/answers/versus/oddsRows.ts";
import type { VersusPicture } from "../../../engine/answers/versus/versusPicture.ts";
import { inHundred, oddsRange } from "../../../engine/words/oddsWords.ts";

/** Odds of both, each with the interval that its sample leaves open: a filled dot for the one that is judged, an open ring for the other. */
export function OddsBars(props: { picture: VersusPicture; names: { first: string; second: string }; widthPx: number }) {
  const x = (share: number) => oddsX(share, props.widthPx);
  const rows = () => oddsRows(props.picture);
  const words = () => oddsRowWords(props.picture, props.names);
  return (
    <svg
      class="odds-bars"
      width={props.widthPx}
      height={ODDS_HEIGHT_PX}
      role="img"
      aria-label={`Of 100 skies. ${words()}.`}
    >
      <text class="axis-value" x={ODDS_LEFT_PX - 14} y={16} text-anchor="end">
        Of 100
      </text>
      <For each={[0, 0.25, 0.5, 0.75, 1]}>
        {(share) => (
          <>
            <line class="axis-line" x1={x(share)} x2={x(share)} y1={22} y2={152} />
            <text class="axis-value" x={x(share)} y={16} text-anchor="middle">
              {share * 100}
            </text>
          </>
        )}
      </For>
      <For each={rows()}>
        {(row) => (
          <>
            <text class="end-figure" x={ODDS_LEFT_PX - 14} y={row.y + 21} text-anchor="end">
              {row.name}
            </text>
            <g class="series-first">
              <path class="interval" d={`M${x(row.second.low)} ${row.y}H${x(row.second.high)}`} />
              <circle class="odds-dot" cx={x(row.second.share)} cy={row.y} r={5} />
              <text
                class="odds-figure"
                x={x(row.second.share)}
                y={row.y + 22}
                text-anchor={oddsAnchor(row.second.share)}
              >
                {inHundred(row.second)} ({oddsRange(row.second)})
              </text>
            </g>
            <g class="series-second">
              <path class="interval" d={`M${x(row.first.low)} ${row.y + 32}H${x(row.first.high)}`} />
              <circle class="odds-ring" cx={x(row.first.share)} cy={row.y + 32} r={5} />
              <text
                class="odds-figure"
                x={x(row.first.share) + (row.first.share > 0.5 ? -12 : 12)}
                y={row.y + 37}
                text-anchor={row.first.share > 0.5 ? "end" : "start"}
              >
                {inHundred(row.first)} ({oddsRange(row.first)})
              </text>
            </g>
          </>
        )}
      </For>
    </svg>
  );
}
