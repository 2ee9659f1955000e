import { For, Show } from "solid-js";
import { CAUTIONS, cautionTitle, LEFT_OUT, NO_PERMIT } from "../../../engine/answers/cautions/cautionWords.ts";
import type { Caution } from "../../../engine/checks/cautions.ts";

/** What a plan is not, and what can hurt somebody who carries it out. @param cautions those of the scenarios; null until they are known */
export function Cautions(props: { cautions: readonly Caution[] | null; remarks: readonly string[] }) {
  const others = () => props.cautions?.filter(({ id }) => id !== "permit") ?? null;
  return (
    <footer class="cautions">
      <p>
        <strong>{NO_PERMIT.head}</strong> {NO_PERMIT.rest}
      </p>
      <ul>
        <Show when={others()} fallback={<For each={CAUTIONS}>{(caution) => <li>{caution}</li>}</For>}>
          {(known) => (
            <For each={known()}>
              {(caution) => (
                <li>
                  <strong>{cautionTitle(caution)}.</strong> {caution.words}
                </li>
              )}
            </For>
          )}
        </Show>
      </ul>
      <p>{LEFT_OUT}</p>
      <For each={props.remarks}>{(remark) => <p>{remark}</p>}</For>
    </footer>
  );
}
