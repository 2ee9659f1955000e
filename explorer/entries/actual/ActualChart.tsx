import { createMemo } from "solid-js";
import { actualDrawing } from "../../../engine/answers/actual/actualDrawing.ts";
import type { ActualPicture } from "../../../engine/answers/actual/actualPicture.ts";
import { actualInstant } from "../../../engine/answers/actual/actualWords.ts";
import type { OddsPicture } from "../../../engine/answers/forecast/oddsPicture.ts";
import type { Look } from "../../../engine/words/look.ts";
import { RulerChart } from "../../charts/RulerChart.tsx";
import type { NotebookPage } from "../../notebook/notebookPage.ts";

/** What was metered over what was planned: charge in the band of all skies, load, and sun. */
export function ActualChart(props: {
  page: NotebookPage;
  picture: ActualPicture;
  odds: OddsPicture | null;
  name: string;
  look: Look;
  isStale: boolean;
}) {
  const drawing = createMemo(() => {
    const room = props.page.room();
    return actualDrawing(props.picture, props.odds, props.name, props.look, room, room.isPhone ? 176 : 220);
  });
  return (
    <RulerChart
      page={props.page}
      drawing={drawing()}
      words={(ms) => actualInstant(props.picture, ms)}
      faded={props.isStale}
    />
  );
}
