import { createMemo } from "solid-js";
import { actualDrawing } from "../../../engine/answers/actual/actualDrawing.ts";
import type { ActualPicture } from "../../../engine/answers/actual/actualPicture.ts";
import { actualInstant } from "../../../engine/answers/actual/actualWords.ts";
import { oddsOf } from "../../../engine/answers/forecast/ask.ts";
import { RulerChart } from "../../charts/RulerChart.tsx";
import type { NotebookPage } from "../../notebook/notebookPage.ts";

/** What was metered over what was planned: charge in the band of all skies, load, and sun. */
export function ActualChart(props: {
  page: NotebookPage;
  picture: ActualPicture;
  scenario: string;
  name: string;
  isStale: boolean;
}) {
  const drawing = createMemo(() => {
    const { page, scenario, picture, name } = props;
    const [room, odds] = [page.room(), oddsOf(page, scenario).result];
    return actualDrawing(picture, odds, name, page.look(scenario), room, room.isPhone ? 176 : 220);
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
