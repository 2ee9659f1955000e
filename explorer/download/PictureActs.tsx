import { createSignal, Show } from "solid-js";
import { kindOf } from "../../engine/answers/kinds.ts";
import type { Entry } from "../../engine/notebook/notebook.ts";
import type { ReportPage } from "../../engine/report/reportPage.ts";
import { fileName, saveFile } from "./saveFile.ts";

/** An entry's picture as a file, drawn or painted, and the difference of two scenarios as figures. */
export function PictureActs(props: { page: ReportPage; entry: Entry }) {
  const [failed, setFailed] = createSignal("");
  const save = async (kind: "svg" | "png") => {
    // What draws is fetched when somebody wants a file.
    const { kind: name, doc, title } = props.entry;
    const [{ drawing: draw }, { pngOf, svgOf }] = await Promise.all([kindOf(name).tell(), import("./pictureFile.ts")]);
    const drawing = draw?.(props.page, doc) ?? null;
    if (drawing === null) {
      setFailed("Not worked out yet.");
      return;
    }
    setFailed("");
    const file = `${fileName(title)}.${kind}`;
    if (kind === "svg") saveFile(file, "image/svg+xml", svgOf(drawing));
    else saveFile(file, "image/png", await pngOf(drawing));
  };
  const attempt = (kind: "svg" | "png") =>
    save(kind).catch((error: unknown) => setFailed(`No picture: ${error instanceof Error ? error.message : error}.`));
  return (
    <Show when={kindOf(props.entry.kind).isDrawn === true}>
      <Show when={failed()}>{(sentence) => <span role="status">{sentence()}</span>}</Show>
      <button type="button" class="act" onClick={() => void attempt("svg")}>
        SVG
      </button>
      <button type="button" class="act" onClick={() => void attempt("png")}>
        PNG
      </button>
    </Show>
  );
}
