import { createMemo } from "solid-js";
import { learnedDrawing } from "../../../engine/answers/readings/learnedDrawing.ts";
import type { LearnedPicture } from "../../../engine/answers/readings/learnedPicture.ts";
import { learnedInstant } from "../../../engine/answers/readings/learnedWords.ts";
import { RulerChart } from "../../charts/RulerChart.tsx";
import type { NotebookPage } from "../../notebook/notebookPage.ts";

/** The forecast from the last reading on, over what was forecast before it, with the readings themselves. */
export function LearnedChart(props: {
  page: NotebookPage;
  picture: LearnedPicture;
  name: string;
  doc: { readonly scenario: string };
  isStale: boolean;
}) {
  const drawing = createMemo(() => {
    const room = props.page.room();
    return learnedDrawing(
      props.picture,
      props.name,
      props.page.look(props.doc.scenario),
      room,
      room.isPhone ? 176 : 220,
    );
  });
  return (
    <RulerChart
      page={props.page}
      drawing={drawing()}
      words={(ms) => learnedInstant(props.picture, ms)}
      faded={props.isStale}
    />
  );
}
