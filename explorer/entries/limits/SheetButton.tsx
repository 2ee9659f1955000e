import { createSignal, Show } from "solid-js";
import type { LimitsPicture } from "../../../engine/answers/limits/ask.ts";
import { fileName, saveFile } from "../../download/saveFile.ts";

/** Saves the wiring sheet: one page to print, which opens in any browser. What draws it is fetched when somebody wants it. */
export function SheetButton(props: { name: string; report: LimitsPicture | null }) {
  const [failed, setFailed] = createSignal("");
  const save = async (report: LimitsPicture) => {
    const { wiringSheet } = await import("../../../engine/answers/limits/wiringSheet.ts");
    setFailed("");
    saveFile(`${fileName(props.name)}-wiring.html`, "text/html", wiringSheet(report));
  };
  return (
    <>
      <button
        type="button"
        class="act no-print"
        disabled={props.report === null}
        onClick={() =>
          void save(props.report!).catch((error: unknown) =>
            setFailed(`No sheet: ${error instanceof Error ? error.message : error}.`),
          )
        }
      >
        Wiring sheet
      </button>
      <Show when={failed()}>{(sentence) => <span role="status">{sentence()}</span>}</Show>
    </>
  );
}
