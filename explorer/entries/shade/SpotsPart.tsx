import { createMemo, For, Show } from "solid-js";
import { spotsOf } from "../../../engine/answers/shade/ask.ts";
import { spotsCsv } from "../../../engine/answers/shade/spotsRows.ts";
import { ofWhichSky, spotsSentence } from "../../../engine/answers/shade/spotsWords.ts";
import type { EntryProps } from "../../notebook/entryKind.ts";
import { CsvButton } from "../../parts/CsvButton.tsx";
import { Problems, Progress } from "../../parts/EntryState.tsx";
import { fadesWhile } from "../../parts/fadesWhile.ts";
import { SaidWords } from "../../parts/SaidWords.tsx";
import { SpotsView } from "./SpotsView.tsx";
import "../../../engine/drawing/spots.css";

/** Where to put it: for one panel group at a time, asked for by a press. */
export function SpotsPart(props: EntryProps<"shade">) {
  const groups = createMemo(
    () =>
      (props.page.document(props.doc.scenario)?.panels ?? [])
        .filter(({ count }) => count > 0)
        .map(({ id, name }) => ({ id, name })),
    [],
    { equals: (a, b) => JSON.stringify(a) === JSON.stringify(b) },
  );
  const found = () => spotsOf(props.page, props.doc);
  const picture = createMemo(() => (props.doc.spots === undefined ? null : found().result));
  const choose = (id: string) => {
    const { spots, ...rest } = props.doc;
    props.edit(spots === id ? rest : { ...rest, spots: id }, "where to put");
  };
  return (
    <Show when={groups().length > 0 || props.doc.spots !== undefined}>
      <div class="margin-left spots">
        <div class="spots-head">
          <h3>Where to put it</h3>
          <p class="choices no-print">
            <For each={groups()}>
              {({ id, name }) => (
                <button type="button" class="act" aria-pressed={props.doc.spots === id} onClick={() => choose(id)}>
                  {name}
                </button>
              )}
            </For>
            <Show when={props.doc.spots !== undefined}>
              <CsvButton
                name={props.page.scenario(props.doc.scenario)?.name ?? "plan"}
                what="spots"
                result={picture()}
                csv={spotsCsv}
              />
            </Show>
          </p>
        </div>
        <Show
          when={props.doc.spots !== undefined}
          fallback={
            <p class="spots-note">What each group would bring at every spot of the site, and the best of them.</p>
          }
        >
          <Progress of={[found()]} />
          <Problems of={[found()]} />
          <Show when={picture()}>
            {(known) => (
              <div ref={fadesWhile(() => found().stale)}>
                <p class="verdict data">
                  <SaidWords words={spotsSentence(known())} />
                </p>
                <p class="spots-note">
                  <b>Watt-hours {known().report.days > 0 ? "a day" : "over the event"}</b> at every spot,{" "}
                  {ofWhichSky(known())}.
                  <Show when={known().report.isCoarse}>
                    {" "}
                    A first look, a spot every {known().report.grid.stepM} m; all of them follow.
                  </Show>
                </p>
                <SpotsView {...props} picture={known()} />
              </div>
            )}
          </Show>
        </Show>
      </div>
    </Show>
  );
}
