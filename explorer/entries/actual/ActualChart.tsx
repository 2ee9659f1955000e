import { createMemo, Show } from "solid-js";
import { actualAxis, actualLabels, actualLayout, brokenLine } from "../../../engine/answers/actual/actualLayout.ts";
import type { ActualPicture } from "../../../engine/answers/actual/actualPicture.ts";
import { actualInstant } from "../../../engine/answers/actual/actualWords.ts";
import type { OddsPicture } from "../../../engine/answers/forecast/oddsPicture.ts";
import { bandArea } from "../../../engine/drawing/bandPaths.ts";
import { ReserveLine } from "../../charts/ReserveLine.tsx";
import { RulerChart } from "../../charts/RulerChart.tsx";
import type { NotebookPage } from "../../notebook/notebookPage.ts";

/** What was metered over what was planned: charge in the band of all skies, load, and sun. */
export function ActualChart(props: {
  page: NotebookPage;
  picture: ActualPicture;
  odds: OddsPicture | null;
  name: string;
  isStale: boolean;
}) {
  const isPhone = () => props.page.room().isPhone;
  const layout = createMemo(() => actualLayout(props.picture, isPhone() ? 176 : 220));
  const time = () => props.picture.time;
  const scale = createMemo(() => props.page.scale(time()));
  const axis = createMemo(() => actualAxis(props.picture, layout(), isPhone()));
  const labels = createMemo(() => actualLabels(props.picture, layout(), scale()));
  const y = (share: number) => layout().charge.y(share);
  const path = (values: Float64Array, at: (value: number) => number) => brokenLine(time(), scale(), at, values);
  /** The band, where it belongs to the event as it is drawn. */
  const band = () =>
    props.odds !== null && props.odds.startMs === time().startMs && props.odds.steps === time().steps
      ? props.odds
      : null;
  return (
    <RulerChart
      page={props.page}
      time={time()}
      scale={scale()}
      heightPx={layout().heightPx}
      axis={axis()}
      labels={labels()}
      label={`Charge, load and sun of ${props.name} as planned, and as the meter has them.`}
      words={(ms) => actualInstant(props.picture, ms)}
      faded={props.isStale}
    >
      <Show when={band()}>
        {(odds) => (
          <g class="data series-first">
            <path class="band-wide" d={bandArea(time(), scale(), y, odds().charge.p5, odds().charge.p95)} />
            <path class="band-close" d={bandArea(time(), scale(), y, odds().charge.p25, odds().charge.p75)} />
          </g>
        )}
      </Show>
      <ReserveLine
        time={time()}
        reserveShare={props.picture.reserveShare}
        fullAh={props.picture.fullAh}
        y={y}
        scale={scale()}
      />
      <g class="data series-first">
        <path class="median-halo" d={path(props.picture.plan.chargeShare, y)} />
        <path class="median" d={path(props.picture.plan.chargeShare, y)} />
        <path class="actual-thin" d={path(props.picture.plan.loadW, layout().load.y)} />
        <path class="actual-thin" d={path(props.picture.plan.sunW, layout().sun.y)} />
      </g>
      <g class="data series-second">
        <Show when={props.picture.actual.chargeShare}>
          {(share) => (
            <>
              <path class="median-halo" d={path(share(), y)} />
              <path class="median" d={path(share(), y)} />
            </>
          )}
        </Show>
        <Show when={props.picture.actual.loadW}>
          {(watts) => <path class="actual-thin" d={path(watts(), layout().load.y)} />}
        </Show>
        <Show when={props.picture.actual.sunW}>
          {(watts) => <path class="actual-thin" d={path(watts(), layout().sun.y)} />}
        </Show>
      </g>
    </RulerChart>
  );
}
