import { lane, targetLine } from "../../../engine/answers/reach/reachDrawing.ts";
import type { ReachReport, ReachRow } from "../../../engine/reach/reachReport.ts";

const HEIGHT_PX = 34;

/** A lever's lane under the line of the target: drawn as in a report. */
export function Lane(props: { row: ReachRow; report: ReachReport; lengthPx: number }) {
  const drawn = () =>
    `${targetLine(props.report.targetShare, props.lengthPx, 0, HEIGHT_PX)}${lane(props.row, props.report.base.share, props.lengthPx, HEIGHT_PX / 2)}`;
  return (
    <svg
      viewBox={`0 0 ${props.lengthPx} ${HEIGHT_PX}`}
      width={props.lengthPx}
      height={HEIGHT_PX}
      aria-hidden="true"
      innerHTML={drawn()}
    />
  );
}
