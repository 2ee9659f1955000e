import { createSignal, Show } from "solid-js";
import type { Entry } from "../notebook/notebook.ts";
import type { ReportPage } from "../report/reportPage.ts";
import { PICTURED_KINDS } from "./picturedKinds.ts";
import { fileName, saveFile } from "./saveFile.ts";

/** An entry's picture as a file, drawn or painted, and the difference of two scenarios as figures. */
export function PictureActs(props: { page: ReportPage; entry: Entry }) {
  const [failed, setFailed] = createSignal("");
  const save = async (kind: "svg" | "png") => {
    // What draws is fetched when somebody wants a file.
    const [{ entryPicture }, { pngOf, svgOf }] = await Promise.all([
      import("./entryPicture.ts"),
      import("./pictureFile.ts"),
    ]);
    const drawing = entryPicture(props.page, props.entry);
    if (drawing === null) {
      setFailed("Not worked out yet.");
      return;
    }
    setFailed("");
    const name = `${fileName(props.entry.title)}.${kind}`;
    if (kind === "svg") saveFile(name, "image/svg+xml", svgOf(drawing));
    else saveFile(name, "image/png", await pngOf(drawing));
  };
  const attempt = (kind: "svg" | "png") =>
    save(kind).catch((error: unknown) => setFailed(`No picture: ${error instanceof Error ? error.message : error}.`));
  return (
    <Show when={PICTURED_KINDS.has(props.entry.kind)}>
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
