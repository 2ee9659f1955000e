import { createMemo, createSignal, For, Show } from "solid-js";
import { acceptCorrection } from "../../../engine/actual/acceptCorrection.ts";
import type { Correction, CorrectionName } from "../../../engine/actual/fitCorrection.ts";
import { FIGURE_HEADS, figureRow, openWords, takeable } from "../../../engine/answers/actual/actualWords.ts";
import type { Change } from "../../../engine/scenario/change.ts";
import { readScenario } from "../../../engine/scenario/readScenario.ts";
import type { ScenarioInput } from "../../../engine/scenario/scenario.ts";

/** By how much the log would correct the plan's figures; those that are ticked go into a new scenario. */
export function CorrectionTable(props: {
  correction: Correction;
  document: ScenarioInput | null;
  isStale: boolean;
  onAccept: (changes: readonly Change[], name: string, remarks: readonly string[]) => void;
}) {
  const usual = createMemo(() =>
    takeable(props.correction)
      .filter(({ status }) => status === "found")
      .map(({ name }) => name),
  );
  const [picked, setPicked] = createSignal<readonly CorrectionName[] | null>(null);
  const taken = () => picked() ?? usual();
  const canTake = (name: CorrectionName) => takeable(props.correction).some((each) => each.name === name);
  const tick = (name: CorrectionName, isOn: boolean) =>
    setPicked(isOn ? [...taken(), name] : taken().filter((each) => each !== name));
  const accept = () => {
    const read = props.document === null ? null : readScenario(props.document);
    if (!read?.ok) return;
    const accepted = acceptCorrection(read.scenario, props.correction, taken().filter(canTake));
    props.onAccept(accepted.changes, accepted.name, accepted.remarks);
  };
  return (
    <>
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls must be reachable by keyboard */}
      <section class="wide" tabIndex={0} aria-label="What the log says of the plan's figures">
        <table class="miss-table">
          <caption>What the log says of the plan's figures</caption>
          <thead>
            <tr>
              <For each={FIGURE_HEADS}>{(head) => <th scope="col">{head}</th>}</For>
              <th scope="col" class="no-print">
                Take it
              </th>
            </tr>
          </thead>
          <tbody>
            <For each={props.correction.figures}>
              {(figure) => (
                <tr>
                  <th scope="row">{figureRow(figure).name}</th>
                  <For each={figureRow(figure).figures}>{(text) => <td>{text}</td>}</For>
                  <td class="no-print">
                    <Show when={canTake(figure.name)}>
                      <input
                        type="checkbox"
                        aria-label={`Take ${figureRow(figure).name} into the new scenario`}
                        checked={taken().includes(figure.name)}
                        onChange={(event) => tick(figure.name, event.currentTarget.checked)}
                      />
                    </Show>
                  </td>
                </tr>
              )}
            </For>
          </tbody>
        </table>
      </section>
      <For each={[...openWords(props.correction), ...props.correction.remarks]}>
        {(sentence) => <p class="more">{sentence}</p>}
      </For>
      <p class="acts-row no-print">
        <button
          type="button"
          class="act"
          disabled={props.isStale || props.document === null || taken().filter(canTake).length === 0}
          onClick={accept}
        >
          Accept into a new scenario
        </button>
      </p>
    </>
  );
}
