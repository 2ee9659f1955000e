import { createMemo, createSignal, Show } from "solid-js";
import { sunCsv } from "../../../engine/answers/shade/sunCsv.ts";
import { sunDrawing } from "../../../engine/answers/shade/sunDrawing.ts";
import type { Sunlight } from "../../../engine/answers/shade/sunlight.ts";
import { fileName, saveFile } from "../../download/saveFile.ts";
import type { SheetRoom } from "../../notebook/notebookPage.ts";
import { ShadeTable } from "./ShadeTable.tsx";
import { SunStrip } from "./SunStrip.tsx";

/** Who sees the sun: as a strip on the ruler, as a table, as a file. */
export function SunStripBlock(props: {
  name: string;
  light: Sunlight;
  room: SheetRoom;
  chosenMs: number;
  onChoose: (ms: number) => void;
}) {
  const [isTableOpen, setTableOpen] = createSignal(false);
  const drawing = createMemo(() => sunDrawing(props.light, props.room));
  return (
    <>
      <div class="shade-head">
        <h3 class="unseen">Who sees the sun, clear sky</h3>
        <p class={props.room.isShort ? "shade-how" : "unseen"}>
          height: share of the beam; solid: open; hatched: in part; line: panel dark; dots: sun behind it or panel away
        </p>
        <span class="shade-acts">
          <button type="button" class="act" aria-expanded={isTableOpen()} onClick={() => setTableOpen(!isTableOpen())}>
            Table
          </button>
          <button
            type="button"
            class="act"
            onClick={() => saveFile(`${fileName(props.name)}-sun.csv`, "text/csv", sunCsv(props.light))}
          >
            CSV
          </button>
        </span>
      </div>
      <SunStrip drawing={drawing()} isPhone={props.room.isPhone} chosenMs={props.chosenMs} onChoose={props.onChoose} />
      <Show when={isTableOpen()}>
        <div class="shade-inset">
          <ShadeTable light={props.light} />
        </div>
      </Show>
    </>
  );
}
